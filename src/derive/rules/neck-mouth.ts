/** Whether the neck can come out of its pocket: wood that stands across the mouth, between the pocket and the edge of the body. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { cutId, cutsOf } from '../../facts/cuts.ts';
import type { Subject } from '../../facts/subject.ts';
import { bounds, regionArea } from '../../geometry/measure.ts';
import { difference, intersection } from '../../geometry/offset.ts';
import type { Region } from '../../geometry/polygon.ts';
import { floorAt } from '../../geometry/solid/solid.ts';
import { translate } from '../../geometry/transform.ts';
import type { Point } from '../../geometry/axes.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { PocketFrame } from '../pocket-frame.ts';
import { pocketFrame } from '../pocket-frame.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

export interface MouthWood {
  /** Along the neck. */
  readonly thick: Length;
  readonly at: Point;
  /** How far the pocket would have to go on towards the neck. */
  readonly short: Length;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'neck.mouth-wood': MouthWood | undefined;
  }
}

const rule: Rule = (subject) =>
  subject.spec.neck?.pocket === undefined
    ? []
    : [
        derivation({
          id: 'neck.mouth-wood',
          label: 'wood across the mouth of the neck pocket',
          formula:
            'as wide as the neck at most, less a stroke of the file at either side, from the middle of the pocket towards the neck: the body, less the pocket and what is cut from the top as deep as it',
          source: byDefinition,
          value: (use) => woodAt(subject, use),
        }),
      ];
export default rule;

/** At either side: what the cutter’s round corner leaves that thin goes with a stroke of the file; common practice, no source. */
const FILE_MM = 0.25;
/** Less is the rounding of a drawing, mm². */
const ROUNDING_MM2 = 0.005;
/** Farther than any body reaches, mm. */
const FAR_MM = 2000;

function woodAt(subject: Subject, use: Use): MouthWood | undefined {
  const frame = pocketFrame(subject, use);
  const outline: Region = [frame.polygon(use.fact('outline.polygon'))];
  const width = subject.spec.neck.width && use(subject.spec.neck.width);
  const wide = width ? (width.high ?? width.value) / 1e6 : Infinity;
  const across = Math.min(wide, frame.box.maxX - frame.box.minX) / 2 - FILE_MM;
  const middle = (frame.box.minX + frame.box.maxX) / 2;
  const low = (frame.box.minY + frame.box.maxY) / 2;
  const [west, east, high] = [middle - across, middle + across, low + FAR_MM];
  const strip = Float64Array.of(west, low, east, low, east, high, west, high);
  const wood = difference(intersection([strip], outline), openBeside(subject, use, frame));
  const left = (up: number): Region => difference(wood, [frame.drawn, translate(frame.drawn, 0, up)]);
  const stands = (up: number): boolean => Math.abs(regionArea(left(up))) > ROUNDING_MM2;
  if (!stands(0)) return undefined;
  const pieces = left(0).map((piece) => bounds(piece)!);
  const { minX, maxX, minY, maxY } = pieces.toSorted((a, b) => b.maxY - b.minY - (a.maxY - a.minY))[0]!;
  return {
    thick: lengthOfMm(maxY - minY, 2),
    at: frame.back({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 }),
    short: lengthOfMm(shortBy(stands, frame.box.maxY - frame.box.minY), 2),
  };
}

/** To a hundredth, upward. */
function shortBy(stands: (up: number) => boolean, most: number): number {
  let [low, high] = [0, most];
  while (high - low > 0.005) {
    const middle = (low + high) / 2;
    if (stands(middle)) low = middle;
    else high = middle;
  }
  return Math.ceil(high * 100) / 100;
}

/** Cavities of the top that are no shallower than the pocket. */
function openBeside({ spec }: Subject, use: Use, frame: PocketFrame): Region {
  const pocket = use.fact(`cavity.${frame.name}.void`);
  if (pocket.kind !== 'pocket') return [];
  return cutsOf(spec)
    .filter(({ kind, id }) => kind === 'cavity' && id !== frame.name)
    .flatMap((cut) => {
      const own = use.fact(`${cutId(cut)}.void`);
      if (own.kind !== 'pocket' || own.opens !== 'top') return [];
      const y = bounds(own.region[0]!)!.maxY;
      return floorAt(own.floor, y) <= floorAt(pocket.floor, y) ? own.region.map(frame.polygon) : [];
    });
}
