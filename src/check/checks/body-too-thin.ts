/** Between its two faces the body is nowhere thinner than a floor may be: contours, bevel and arch leave that much. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { shapedAt } from '../shaped.ts';
import { capital, drawnAndWorst, say, sayPoint } from '../say.ts';
import { EDGE, carve, contour, cuts, gap, section, slab } from '../sketch.ts';
import { leastWanted } from '../thin.ts';

const check: Check = {
  id: 'body-too-thin',
  stage: 'derived',
  severity: 'error',
  why: 'Contours of both faces come together: the edge breaks out under the cutter, and there is a hole where the arm lies.',
  mend: 'Make a contour flatter, or begin it nearer to the edge.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'carve: { kind: arched, land: { width: 11 }, recurve: { at: 26, depth: 0.8 }, crown: { from: 95 } }',
    fails:
      'carve: { kind: arched, land: { width: 11 }, recurve: { at: 26, depth: 0.8 }, crown: { from: 95 } }\n\ncontours:\n  belly: { face: back, kind: plane, from: { x: -78, y: -60 }, to: { x: -78, y: 60 }, slope: 46 deg, cutter: ball-20 }',
  },
  sketch: section(
    slab({ right: EDGE }),
    cuts(carve(14, 'C 30 0 34 8 56 8'), contour(20, 'C 34 17 38 10 56 10')),
    gap(47, 7.6, 10.8),
  ),
  run: (bench) => {
    const { spec, hand } = bench.subject;
    const least = look(bench.facts, (use) => leastWanted(bench, use, 'least-floor'));
    const found = look(bench.facts, (use) => use.fact('body.between-faces'));
    if (!found) return [];
    const { wood } = found;
    const { xMm, yMm } = found.left;
    const worst = wood.low ?? wood.value;
    if (worst >= Math.max(least?.value ?? 0, 1)) return [];
    const shaping = (['top', 'back'] as const).flatMap((side) => shapedAt(bench, side, xMm, yMm));
    // A contour is the likelier mistake; where nothing is shaped the body is too thin as a whole.
    const [first, ...others] = [
      ...shaping.filter(({ by }) => by === 'contour'),
      ...shaping.filter(({ by }) => by !== 'contour'),
    ];
    const left = worst > 0 ? `${say(wood, worst)} of wood are left` : 'no wood is left';
    const drawn = drawnAndWorst(wood, (size, past) =>
      past ? `the two faces overlap by ${size}` : `${size} of wood are left`,
    );
    const wants = least ? ` At least ${say(wood, least.value)} must be left.` : '';
    return [
      {
        at: first?.at ?? spec.carve.kind.id,
        what: `Between top and back ${left} at worst, at ${sayPoint({ x: xMm, y: yMm }, hand)}. ${capital(drawn)}.${wants}`,
        mend: `Make a contour flatter, or begin it nearer to the edge: ${say(wood, (least?.value ?? 0) - worst)} more is needed there.`,
        against: [
          ...others.map(({ at, text }) => ({ at, text })),
          ...(least ? [{ at: least.at, text: 'the least wood that must be left' }] : []),
        ],
        hangsOn: ['body.between-faces'],
      },
    ];
  },
};
export default check;
