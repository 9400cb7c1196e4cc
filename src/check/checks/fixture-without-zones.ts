/** A fixture that holds by vacuum says which zones it has: else nobody can say what holds the body. */
import type { Check } from '../check.ts';
import { heldByVacuum } from '../zones.ts';

const check: Check = {
  id: 'fixture-without-zones',
  stage: 'derived',
  severity: 'error',
  why: 'Without its zones nobody knows what holds the body, nor which cut sets it free: a body that comes loose is thrown.',
  mend: 'Give the zones of the fixture, each with the area inside its gasket, or say what else holds the body.',
  example: { file: 'models/tarn.yaml', passes: 'hold: clamps', fails: 'hold: vacuum' },
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
