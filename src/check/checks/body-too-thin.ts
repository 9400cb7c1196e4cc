/** Between its two faces the body is nowhere thinner than a floor may be: contours, bevel and arch leave that much. */
import { namesOf } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint, capital, drawnAndWorst } from '../say.ts';
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
  run: (bench) => {
    const { spec, hand } = bench.subject;
    const least = look(bench.facts, (use) => leastWanted(bench, use, 'least-floor'));
    const found = look(bench.facts, (use) => use.fact('body.between-faces'));
    if (!found) return [];
    const { wood } = found;
    const { xMm, yMm } = found.left;
    const worst = wood.low ?? wood.value;
    if (worst >= Math.max(least?.value ?? 0, 1)) return [];
    const carve = { at: spec.carve.kind.id, text: 'the carve, which shapes the body too' };
    const contours = namesOf(spec.contours).map((id) => ({
      at: spec.contours![id]!.kind.id,
      text: `contour ${id}, which shapes the body too`,
    }));
    const [first, ...others] = [...contours, carve];
    const left = worst > 0 ? `${say(wood, worst)} of wood are left` : 'no wood is left';
    const drawn = drawnAndWorst(wood, (size, past) =>
      past ? `the two faces overlap by ${size}` : `${size} of wood are left`,
    );
    const wants = least ? ` At least ${say(wood, least.value)} must be left.` : '';
    return [
      {
        at: (first ?? carve).at,
        what: `Between top and back ${left} at worst, at ${sayPoint({ x: xMm, y: yMm }, hand)}. ${capital(drawn)}.${wants}`,
        mend: `Make a contour flatter, or begin it nearer to the edge: ${say(wood, (least?.value ?? 0) - worst)} more is needed there.`,
        against: [...others, ...(least ? [{ at: least.at, text: 'the least wood that must be left' }] : [])],
        hangsOn: ['body.between-faces'],
      },
    ];
  },
};
export default check;
