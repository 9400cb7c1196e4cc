/** What closes a cavity: plates on a face, and covers in seats of their own. */
import type { CutId } from '../facts/cuts.ts';
import { cutId, cutsOf, isCavity } from '../facts/cuts.ts';
import { namesOf } from '../facts/row.ts';
import type { Model } from '../facts/spec.generated.ts';
import { regionArea } from '../geometry/measure.ts';
import { intersection } from '../geometry/offset.ts';
import type { Polygon } from '../geometry/polygon.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';

export interface Cover {
  readonly name: string;
  readonly at: string;
  readonly place: string;
  readonly fact: string;
  readonly face: string;
  readonly polygon: Polygon;
  /** The cut it lies in, of a cover in a seat. */
  readonly own?: CutId;
}

/** The number that says how large a shape is. */
const sizeOf = ({ length, diameter }: Model.Shape, otherwise: string): string =>
  length?.id ?? diameter?.id ?? otherwise;

/** Plates, and seats of covers. */
export function coversOf({ subject: { spec }, facts }: Bench): Cover[] {
  const plates = namesOf(spec.covers).flatMap((id) => {
    const { face, at, shape } = spec.covers![id]!;
    const fact = `cover.${id}.drawn` as const;
    const seen = look(facts, (use) => ({ face: use(face), drawn: use.fact(fact) }));
    return seen?.drawn.ok
      ? [{ name: id, at: sizeOf(shape, at.x.id), place: at.x.id, fact, face: seen.face, polygon: seen.drawn.polygon }]
      : [];
  });
  const seats = cutsOf(spec)
    .filter(isCavity)
    .flatMap((cut) => {
      const fact = `${cutId(cut)}.void` as const;
      const seen = look(facts, (use) => ({ purpose: use(spec.cavities![cut.id]!.purpose), own: use.fact(fact) }));
      if (seen?.purpose !== 'recess' || seen.own.kind !== 'pocket') return [];
      const [polygon] = seen.own.region;
      return [
        {
          name: cut.id,
          at: sizeOf(spec.cavities![cut.id]!.shape, cut.place.id),
          place: cut.place.id,
          fact,
          face: seen.own.opens,
          polygon: polygon!,
          own: cutId(cut),
        },
      ];
    });
  return [...plates, ...seats];
}

/** Such a cavity it covers: what lies less than half under it is another's. */
export const isMostlyUnder = (cavity: Polygon, cover: Polygon): boolean =>
  regionArea(intersection([cavity], [cover])) > regionArea([cavity]) / 2;
