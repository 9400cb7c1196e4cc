/** A cavity in the back lies under a cover: a plate on the back, or one in its seat. */
import { cutId, cutsOf, isCavity } from '../../facts/cuts.ts';
import { namesOf } from '../../facts/row.ts';
import { regionArea } from '../../geometry/measure.ts';
import { intersection } from '../../geometry/offset.ts';
import type { Region } from '../../geometry/polygon.ts';
import type { Bench, Check } from '../check.ts';
import { look } from '../check.ts';
import { liesInside } from '../../geometry/lies-inside.ts';
import { outline, plan, pocket, rect, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'cavity-left-open',
  stage: 'derived',
  severity: 'error',
  why: 'The body comes to assembly with an open hole in its back, and there is no plate for it.',
  mend: 'Add the cover it belongs under, or move the cavity there.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'shape: { kind: rectangle, length: 42, width: 68 }, at: { x: 0, y: 44 }',
    fails: 'shape: { kind: rectangle, length: 42, width: 68 }, at: { x: 0, y: 104 }',
    also: ['hole-left-in-white'],
  },
  sketch: plan(
    outline(),
    pocket(-16, -6, 2, 6, 1.5),
    shape(rect(-7, -8, 14, 8, 2), 'metal', 'edge'),
    ring(-11.5, 0, 4),
  ),
  run: (bench) => {
    const { spec } = bench.subject;
    return cutsOf(spec)
      .filter(isCavity)
      .flatMap((cut) => {
        const seen = look(bench.facts, (use) => ({
          own: use.fact(`${cutId(cut)}.void`),
          purpose: use(spec.cavities![cut.id]!.purpose),
        }));
        // A seat is what a cover lies in; a neck's pocket is closed by the neck.
        if (seen?.own.kind !== 'pocket' || seen.own.opens !== 'back' || OPEN.includes(seen.purpose)) return [];
        const { own } = seen;
        // One that is off the body is another finding's business.
        const outline = look(bench.facts, (use) => use.fact('outline.polygon'));
        if (outline && !liesInside(own.region, [outline])) return [];
        if (coversOf(bench, cutId(cut)).some((cover) => !cover || isMostlyUnder(own.region, cover))) return [];
        return [
          {
            at: cut.place.id,
            what: `The cavity ${cut.id} is cut from the back, and nothing closes it: no plate lies over it on the back, and no cover in a seat.`,
            mend: 'Add its plate under `covers`, or a seat for its cover, or move the cavity under one that is there.',
            against: namesOf(spec.covers).map((id) => ({
              at: spec.covers![id]!.at.x.id,
              text: `where the cover ${id} lies`,
            })),
            hangsOn: [`${cutId(cut)}.void`],
          },
        ];
      });
  },
};
export default check;

const OPEN = ['recess', 'neck'];

/** Plates on the back and seats in it; undefined of one that cannot be read, which may well lie there. */
function coversOf({ subject: { spec }, facts }: Bench, own: string): readonly (Region | undefined)[] {
  const plates = namesOf(spec.covers).map((id) =>
    look(facts, (use) => {
      const drawn = use.fact(`cover.${id}.drawn`);
      return use(spec.covers![id]!.face) === 'back' && drawn.ok ? [drawn.polygon] : [];
    }),
  );
  const seats = cutsOf(spec)
    .filter((cut) => isCavity(cut) && cutId(cut) !== own)
    .map((cut) =>
      look(facts, (use): Region => {
        const seat = use.fact(`${cutId(cut)}.void`);
        const recess = use(spec.cavities![cut.id]!.purpose) === 'recess';
        return recess && seat.kind === 'pocket' && seat.opens === 'back' ? seat.region : [];
      }),
    );
  return [...plates, ...seats];
}

/** What sticks out from under a cover is the lip’s business. */
const isMostlyUnder = (cavity: Region, cover: Region): boolean =>
  cover.length > 0 && regionArea(intersection(cavity, cover)) > regionArea(cavity) / 2;
