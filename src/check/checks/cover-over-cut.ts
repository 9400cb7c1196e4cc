/** A cover lies over the cavities it closes, and reaches over no part of another. */
import { cutId, cutsOf, isCavity } from '../../facts/cuts.ts';
import { regionArea } from '../../geometry/measure.ts';
import { intersection } from '../../geometry/offset.ts';
import { formatNumber } from '../../units/format.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import type { Cover } from '../covers.ts';
import { coversOf, isMostlyUnder } from '../covers.ts';
import { sayPoint } from '../say.ts';
import { cut, cuts, plate, ring, section, slab } from '../sketch.ts';

/** What is shared is no more than the rounding of a drawing, mm². */
const ROUNDING_MM2 = 0.5;

/** What stands in them comes up through a plate, which is cut out for it. */
const OPEN = ['neck', 'pickup', 'bridge'];

const check: Check = {
  id: 'cover-over-cut',
  stage: 'derived',
  severity: 'error',
  why: 'Its edge lies over an open cavity: it closes half of it, has no wood under it there, and is in the way of the cover that belongs to it.',
  mend: 'Move the cover off that cavity, make it smaller, or let it close the whole of it.',
  example: {
    file: 'models/tarn.yaml',
    passes: '  battery-plate: {',
    fails:
      '  guard: { face: back, shape: { kind: rectangle, length: 40, width: 30 }, at: { x: 50, y: -60 } }\n  battery-plate: {',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 9, to: 26, depth: 9 }), cut({ from: 33, to: 52, depth: 8 })),
    plate(5, 43),
    ring(43, -0.7, 3.2),
  ),
  run: (bench) => coversOf(bench).flatMap((cover) => faults(bench, cover)),
};
export default check;

function faults(bench: Bench, cover: Cover): Fault[] {
  const { spec, hand } = bench.subject;
  return cutsOf(spec)
    .filter((cut) => isCavity(cut) && cutId(cut) !== cover.own)
    .flatMap((cut): Fault[] => {
      const fact = `${cutId(cut)}.void` as const;
      const seen = look(bench.facts, (use) => ({ purpose: use(spec.cavities![cut.id]!.purpose), own: use.fact(fact) }));
      if (seen?.own.kind !== 'pocket' || seen.own.opens !== cover.face || OPEN.includes(seen.purpose)) return [];
      const [cavity] = seen.own.region;
      const shared = intersection([cavity!], [cover.polygon]);
      const sharedMm2 = Math.abs(regionArea(shared));
      if (sharedMm2 <= ROUNDING_MM2 || isMostlyUnder(cavity!, cover.polygon)) return [];
      // A seat is cut round the cavity under it, and lies over the most of that.
      if (seen.purpose === 'recess' && isMostlyUnder(cover.polygon, cavity!)) return [];
      if (isTold(bench, cover, cut.id)) return [];
      const place = { x: shared[0]![0]!, y: shared[0]![1]! };
      return [
        {
          at: cover.at,
          what: `The cover ${cover.name} lies over a part of the cavity ${cut.id}, ${formatNumber(sharedMm2 / 1e6, 'mm²', 0)} mm² of it, near ${sayPoint(place, hand)}, and does not close it.`,
          mend: `Move ${cover.name} off ${cut.id}, make it smaller, or let it close the whole of it.`,
          against: [
            { at: cover.place, text: `where ${cover.name} lies` },
            { at: cut.place.id, text: `where ${cut.id} lies` },
          ],
          hangsOn: [cover.fact, fact],
        },
      ];
    });
}

/** Where another plate closes that cavity and the two lie on each other, that is the mistake, and is said. */
function isTold(bench: Bench, cover: Cover, cavity: string): boolean {
  return coversOf(bench).some((other) => {
    if (other.own !== undefined || cover.own !== undefined || other.name === cover.name) return false;
    if (other.face !== cover.face) return false;
    const own = look(bench.facts, (use) => use.fact(`cavity.${cavity}.void`));
    if (own?.kind !== 'pocket' || !isMostlyUnder(own.region[0]!, other.polygon)) return false;
    return Math.abs(regionArea(intersection([other.polygon], [cover.polygon]))) > ROUNDING_MM2;
  });
}
