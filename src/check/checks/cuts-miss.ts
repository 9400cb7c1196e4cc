/** Cuts that are meant to run into each other do, at worst too. */
import { cutId, cutsOf, isNamed, pairsOf } from '../../facts/cuts.ts';
import { offer } from '../../findings/nearest.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint } from '../say.ts';
import { bore, cut, cuts, ring, section, slab } from '../sketch.ts';
import { shapedAt } from '../shaped.ts';

const check: Check = {
  id: 'cuts-miss',
  stage: 'derived',
  severity: 'error',
  why: 'A wire that does not come through, a screw that ends in wood: found at assembly, when the body is painted.',
  mend: 'Cut deeper, or move one of the two, until they meet at worst.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'end: { x: 0, y: 44 }',
    fails: 'end: { x: 0, y: 72 }',
    also: ['pickup-unreached'],
  },
  sketch: section(
    slab(),
    cuts(
      cut({ from: 6, to: 18, depth: 9 }),
      bore({ from: [16, 6], to: [36, 8], width: 2.8 }),
      cut({ from: 43, to: 54, depth: 10 }),
    ),
    ring(39.5, 8.2, 3.6),
  ),
  run: (bench) => {
    const { spec, hand } = bench.subject;
    const { facts } = bench;
    return cutsOf(spec).flatMap((cut) =>
      (cut.spec.into ?? []).flatMap((leaf): Fault[] => {
        const name = look(facts, (use) => use(leaf));
        if (name === undefined) return [];
        const other = cutsOf(spec).find((one) => isNamed(name, one));
        if (!other || cutId(other) === cutId(cut)) {
          const names = cutsOf(spec).map(({ id }) => id);
          const what = `No cut is called ${name}.`;
          return [{ at: leaf.id, what, mend: offer(name, names), against: [] }];
        }
        const pair = pairsOf(spec).find(({ a, b }) => same(a, b, cut, other) || same(b, a, cut, other))!;
        const found = look(facts, (use) => ({ wood: use.fact(pair.left) }));
        if (!found) return [];
        const { wood } = found;
        const most = wood?.wood.high ?? wood?.wood.value ?? Infinity;
        if (most < 0) return [];
        const where = wood
          ? `${say(wood.wood, most)} of wood are left between them at worst, at ${sayPoint({ x: wood.left.xMm, y: wood.left.yMm }, hand)}`
          : 'they lie far apart';
        return [
          {
            at: leaf.id,
            what: `The ${cut.kind} ${cut.id} does not run into the ${other.kind} ${other.id}: ${where}.`,
            mend: wood
              ? `Cut it more than ${say(wood.wood, most)} further, move it, or take the name out here.`
              : 'Move it, or take the name out here.',
            against: [
              ...(cut.kind === 'channel'
                ? [{ at: spec.channels![cut.id]!.end.x.id, text: `where ${cut.id} ends` }]
                : []),
              { at: other.place.id, text: `where ${other.id} lies` },
              ...(wood ? shapedAt(bench, 'top', wood.left.xMm, wood.left.yMm) : []),
            ],
            hangsOn: [pair.left],
          },
        ];
      }),
    );
  },
};
export default check;

const same = (a: Named, b: Named, one: Named, other: Named): boolean =>
  cutId(a) === cutId(one) && cutId(b) === cutId(other);

type Named = Parameters<typeof cutId>[0];
