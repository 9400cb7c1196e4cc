/** A pickup that lies askew has its treble end nearer to the bridge. */
import { namesOf } from '../../facts/row.ts';
import type { Model } from '../../facts/spec.generated.ts';
import { bounds } from '../../geometry/measure.ts';
import { rotate } from '../../geometry/transform.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';
import { field, ideal, line, plan, polygon, rect, ring, shape } from '../sketch.ts';

/** Askew more than this, one that is to lie across lies along; degrees. */
const ALONG_DEG = 45;
/** Drawn so little askew, it is meant straight; degrees. */
const STRAIGHT_DEG = 0.05;

const check: Check = {
  id: 'slant-other-way',
  stage: 'derived',
  severity: 'caution',
  why: 'The treble end nearer to the bridge is common practice, no source: a sign the wrong way round turns the pickup against its drawing, and the cavity is cut before anybody sees it.',
  mend: 'Turn its `angle` the other way round, or let it stand with `permits` where the drawing has it so.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'at: { x: 0, y: 44 }\n    from: cap-face',
    fails: 'at: { x: 0, y: 44 }\n    angle: 2 deg\n    from: cap-face',
  },
  sketch: plan(
    field(),
    shape(rect(-24, -11, -19, 11, 1), 'metal', 'edge'),
    line('M -22 -6 H 29 M -22 -2 H 29'),
    line('M -22 2 H 29 M -22 6 H 29', 'thin'),
    shape(polygon([-2, -11], [4, -11], [10, 11], [4, 11]), 'metal', 'edge'),
    ideal(polygon([4, -11], [10, -11], [4, 11], [-2, 11])),
    ring(7, 8, 3.6),
  ),
  run: (bench) => namesOf(bench.subject.spec.cavities).flatMap((id) => fault(bench, id)),
};
export default check;

function fault(bench: Bench, id: string): Fault[] {
  const cavity = bench.subject.spec.cavities![id]!;
  const { angle } = cavity;
  if (!angle) return [];
  const seen = look(bench.facts, (use) => ({ purpose: use(cavity.purpose), given: use(angle) }));
  const slant = seen?.purpose === 'pickup' ? slantOf(bench, id, cavity) : undefined;
  if (!seen || slant === undefined || slant <= STRAIGHT_DEG || slant >= ALONG_DEG) return [];
  const { value } = seen.given;
  const other = value - 2 * slant;
  const degrees = (deg: number) => sayAs(seen.given, deg);
  return [
    {
      at: angle.id,
      what: `${id} lies ${degrees(slant)} askew with its bass end nearer to the bridge; as a rule it is the treble end.`,
      mend: `Turn it the other way: \`angle: ${degrees(other)}\`; or let it stand with \`permits\` where the drawing has it so.`,
      against: [],
      hangsOn: [`cavity.${id}.drawn`],
    },
  ];
}

/** By how much its treble end lies nearer to the neck than across, for the right hand; nothing where it is as long as wide. */
function slantOf({ facts, subject: { hand } }: Bench, id: string, { angle }: Model.Cavity): number | undefined {
  return look(facts, (use) => {
    const drawn = use.fact(`cavity.${id}.drawn`);
    if (!drawn.ok || !angle) return undefined;
    const turned = use(angle).value;
    const { minX, maxX, minY, maxY } = bounds(rotate(drawn.polygon, hand === 'left' ? turned : -turned))!;
    const [across, along] = [maxX - minX, maxY - minY];
    if (Math.abs(across - along) < 1e-3) return undefined;
    const axis = across > along ? turned : turned + 90;
    return axis - 180 * Math.round(axis / 180);
  });
}
