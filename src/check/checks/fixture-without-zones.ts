/** A fixture that holds by vacuum says which zones it has: else nobody can say what holds the body. */
import type { Check } from '../check.ts';
import { ideal, outline, plan, rect, ring, shape } from '../sketch.ts';
import { heldByVacuum } from '../zones.ts';

const check: Check = {
  id: 'fixture-without-zones',
  stage: 'derived',
  severity: 'error',
  why: 'Without its zones nobody knows what holds the body, nor which cut sets it free: a body that comes loose is thrown.',
  mend: 'Give the zones of the fixture, each with the area inside its gasket, or say what else holds the body.',
  example: { file: 'models/tarn.yaml', passes: 'hold: clamps', fails: 'hold: vacuum' },
  sketch: plan(
    shape(rect(-29, -16, 29, 16), 'bed', 'edge'),
    outline(),
    ideal(rect(-18, -7, 2, 7, 2.4)),
    ideal(rect(6, -5, 19, 5, 2.4)),
    ring(-8, 0, 4),
  ),
  run: (bench) =>
    heldByVacuum(bench)
      .filter(({ zones }) => zones.length === 0)
      .map(({ setup, fixture, hold }) => ({
        at: hold,
        what: `Set-up ${setup} is held by vacuum, and its fixture ${fixture.id} has no zones.`,
        mend: `Give ${fixture.id} its zones, or say what else holds the body in set-up ${setup}.`,
        against: [{ at: fixture.title, text: 'the fixture' }],
        hangsOn: [`plant.fixtures.${fixture.id}`],
      })),
};
export default check;
