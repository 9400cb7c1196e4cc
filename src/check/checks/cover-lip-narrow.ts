/** Every cover lies on wood all round the cavity it covers: a plate on the face, or a cover in its seat. */
import { cutId, cutsOf, isCavity } from '../../facts/cuts.ts';
import { row } from '../../facts/row.ts';
import { distanceToEdge } from '../../geometry/nearness.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import { forEachEdge } from '../../geometry/polygon.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import type { Cover } from '../covers.ts';
import { coversOf, isMostlyUnder } from '../covers.ts';
import { liesInside } from '../../geometry/lies-inside.ts';
import { say, sayPoint } from '../say.ts';
import { across, cut, cuts, plate, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'cover-lip-narrow',
  stage: 'derived',
  severity: 'error',
  why: 'The cover falls in, or its screws split the edge they stand in.',
  mend: 'Make the cover or its seat larger, or the cavity smaller.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'shape: { kind: rectangle, length: 78, width: 86 }',
    fails: 'shape: { kind: rectangle, length: 66, width: 86 }',
    also: ['hole-left-in-white', 'wall-too-thin'],
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 11, to: 49, depth: 2 }), cut({ from: 12.4, to: 47.6, depth: 12 })),
    plate(11.6, 48.4, 2, 1.6),
    across(6, 10.4, 12.4),
  ),
  run: (bench) => {
    const { spec, plant } = bench.subject;
    const lip = look(bench.facts, (use) => {
      const leaf = row(plant.lines, use(spec.line), 'plant.lines')['cover-lip'];
      return leaf && { at: leaf.id, value: use(leaf) };
    });
    if (!lip) return [];
    return coversOf(bench).flatMap((cover) =>
      cavitiesUnder(bench, cover).flatMap((cavity): Fault[] => {
        const { left, x, y } = lipOf(cavity.polygon, cover.polygon);
        if (left * 1e6 >= lip.value.value) return [];
        const short = left < 0 ? 'does not reach the wood' : `lies on only ${say(lip.value, left * 1e6)} of wood`;
        return [
          {
            at: cover.at,
            what: `The cover ${cover.name} ${short} beside the cavity ${cavity.name}, at ${sayPoint({ x, y }, bench.subject.hand)}. It must lie on at least ${say(lip.value, lip.value.value)} all round.`,
            mend: `Let its edge reach ${say(lip.value, Math.ceil((lip.value.value - left * 1e6) / 10_000) * 10_000)} further there: make it larger, or move it over the middle of the cavity.`,
            against: [
              { at: cavity.at, text: `where ${cavity.name} lies` },
              { at: cover.place, text: `where ${cover.name} lies` },
              { at: lip.at, text: 'the least wood a cover must lie on' },
            ],
            hangsOn: [cover.fact, cavity.fact],
          },
        ];
      }),
    );
  },
};
export default check;

/** Cavities that open to the face and lie mostly under it. */
function cavitiesUnder({ subject: { spec }, facts }: Bench, cover: Cover) {
  return cutsOf(spec)
    .filter(isCavity)
    .flatMap((cut) => {
      const fact = `${cutId(cut)}.void` as const;
      const seen = look(facts, (use) => ({ purpose: use(spec.cavities![cut.id]!.purpose), own: use.fact(fact) }));
      if (!seen || seen.own.kind !== 'pocket' || seen.own.opens !== cover.face || cutId(cut) === cover.own) return [];
      if (seen.purpose === 'recess' || !isMostlyUnder(seen.own.region[0]!, cover.polygon)) return [];
      return [{ name: cut.id, at: cut.place.id, fact, polygon: seen.own.region[0]! }];
    });
}

/** How far the cavity's edge is inside the cover's, where that is least; below zero where it sticks out. */
function lipOf(cavity: Polygon, cover: Polygon): { left: number; x: number; y: number } {
  let least = { left: Infinity, x: 0, y: 0 };
  const sign = liesInside([cavity], [cover]) ? 1 : -1;
  forEachEdge(cavity, (x, y) => {
    const left = sign * distanceToEdge(cover, x, y);
    if (left < least.left) least = { left, x, y };
  });
  return least;
}
