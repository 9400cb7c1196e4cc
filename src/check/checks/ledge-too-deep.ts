/** Under a ledge for a binding there is, at worst, the least wood the line wants, down to the other face. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { capital, drawnAndWorst, say, sayPoint } from '../say.ts';
import { BACK, EDGE, cuts, gap, section, slab } from '../sketch.ts';
import { leastWanted } from '../thin.ts';

const check: Check = {
  id: 'ledge-too-deep',
  stage: 'derived',
  severity: 'error',
  why: 'A thin flange is left under the binding: it breaks off under the cutter, or when the binding is taped on.',
  mend: 'Cut the ledge less deep.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'crown: { from: 95 } }\n',
    fails: 'crown: { from: 95 } }\nedges: { top: { ledge: { width: 1.6, depth: 43.5 }, cutter: mill-16 } }\n',
  },
  sketch: section(
    slab({ right: EDGE }),
    cuts({ wall: 'M 46 0 V 15.2 H 56', air: 'M 46 -0.6 V 15.2 H 57 V -0.6 Z' }),
    gap(51, 15.2, BACK, 'end'),
  ),
  run: (bench) => (['top', 'back'] as const).flatMap((side) => fault(bench, side)),
};
export default check;

function fault(bench: Bench, side: 'top' | 'back'): Fault[] {
  const { spec, hand } = bench.subject;
  const ledge = spec.edges?.[side]?.ledge;
  if (!ledge) return [];
  const seen = look(bench.facts, (use) => ({
    left: use.fact(`edge.under-ledge.${side}`),
    deep: use(ledge.depth),
    least: leastWanted(bench, use, 'least-floor'),
  }));
  if (!seen) return [];
  const { left, deep, least } = seen;
  const { length, xMm, yMm } = left;
  const worst = length.low ?? length.value;
  const wanted = least?.value ?? 0;
  if (worst > 0 && worst >= wanted) return [];
  const other = side === 'top' ? 'back' : 'top';
  const drawn = drawnAndWorst(length, (size, past) => (past ? `it goes ${size} through` : `${size} are left`));
  const shallower = deep.value - (wanted - worst);
  const own = spec.edges?.[other];
  const met = own?.ledge?.depth ?? own?.round;
  return [
    {
      at: ledge.depth.id,
      what: `Under the ledge of the ${side} ${worst > 0 ? `${say(length, worst)} of wood are` : 'no wood is'} left down to the ${other} at worst, at ${sayPoint({ x: xMm, y: yMm }, hand)}. ${capital(drawn)}.${least ? ` At least ${say(length, wanted)} must be left.` : ''}`,
      // Whole hundredths, inward.
      mend:
        shallower > 0
          ? `Cut it no deeper than ${say(deep, Math.floor(shallower / 10_000) * 10_000)}.`
          : `Leave the ledge out, or leave more wood between top and back there.`,
      against: [
        ...(met ? [{ at: met.id, text: `what is cut along the edge of the ${other}` }] : []),
        ...(least ? [{ at: least.at, text: 'the least wood that must be left' }] : []),
      ],
      hangsOn: [`edge.under-ledge.${side}`],
    },
  ];
}
