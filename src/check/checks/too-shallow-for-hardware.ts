/** A hole or cavity is deep enough for its part, at the worst and once the top is sanded. */
import { against, depthAt, fittedParts, lowOf } from '../hardware.ts';
import { cavityOfPart } from '../../facts/fitted.ts';
import { highestPoint } from '../../facts/parts.ts';
import type { Length } from '../../units/quantity.ts';
import type { Bench, Check } from '../check.ts';
import { look } from '../check.ts';
import type { Part } from '../hardware.ts';
import { offBy, say } from '../say.ts';
import { cut, cuts, gap, plate, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'too-shallow-for-hardware',
  stage: 'derived',
  severity: 'error',
  why: 'The part stands up: a ring on stilts, a bushing that is not flush, a cover that does not close.',
  mend: 'Cut it deeper, or fit a shorter part.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'depth: 12.0..36.0',
    fails: 'depth: 30.0..40.0',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 18, to: 42, depth: 7 })),
    shape(rect(19, -4, 41, 6.7), 'metal', 'edge'),
    plate(12, 48, -4, 1.6),
    gap(15, -4, 0, 'end'),
  ),
  run: (bench) =>
    fittedParts(bench).flatMap((part) => {
      const { fitted, id, name, row } = part;
      const depth = `fitted.${id}.depth.least` as const;
      const seen = against(bench, depth, row.depth);
      if (!seen || lowOf(seen.found) >= seen.asked.low!) return [];
      const { found, asked, at } = seen;
      return [
        {
          at: depthAt(bench, part),
          what: `${name} finds a depth of ${say(asked, found.value)} in ${fitted.id} as drawn${offBy(found)}: as little as ${say(asked, lowOf(found))}. It needs at least ${say(asked, asked.low!)}.`,
          mend: `Cut ${fitted.id} ${say(asked, asked.low! - lowOf(found))} deeper, or fit another part.`,
          against: [
            { at: fitted.hardware.id, text: 'the part that goes in' },
            { at, text: `the depth ${name} needs` },
            { at: fitted.place.id, text: `where ${fitted.id} lies` },
            ...topOf(bench, part, asked),
          ],
          hangsOn: [depth],
        },
      ];
    }),
};
export default check;

/** How thick the body is; what shapes its top, where the part would be deep enough under the full height. */
function topOf({ subject: { spec }, facts }: Bench, { fitted, id }: Part, asked: Length) {
  const { crown, recurve, bevel } = spec.carve;
  const full = look(facts, (use) => {
    if (use.fact(`fitted.${id}.face`) !== 'top') return undefined;
    const cut = fitted.kind === 'hole' ? (`hole.${fitted.id}` as const) : cavityOfPart(spec, use, fitted);
    const own = cut && use.fact(`${cut}.void`);
    if (own?.kind !== 'pocket') return undefined;
    return use.fact(`thickness.body.white.${highestPoint(spec)}`).value - own.floor.zMm * 1e6;
  });
  if (full === undefined) return [];
  const shaped = full < asked.low! ? [] : [crown?.from, recurve?.depth, bevel?.width];
  return [
    { at: `thickness.body.white.${highestPoint(spec)}`, text: 'how thick the white body is' },
    ...shaped.flatMap((leaf) => (leaf ? [{ at: leaf.id, text: 'what shapes the top' }] : [])),
  ];
}
