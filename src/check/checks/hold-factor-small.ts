/** The plant's factor of hold-down is not below the least that is asked for. */
import { LEAST_HOLD_FACTOR, LEAST_HOLD_FACTOR_SOURCE } from '../../reference/hold-down.ts';
import { formatNumber } from '../../units/format.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { heldByVacuum } from '../zones.ts';

const check: Check = {
  id: 'hold-factor-small',
  stage: 'derived',
  severity: 'error',
  why: 'Leaks, dust under the body and a dull cutter are in that factor: without room for them the first of them throws the body.',
  mend: 'Set the factor to two at least; three or four where the fixtures are old.',
  example: { file: 'models/plant/plant.yaml', passes: 'hold-factor: 3', fails: 'hold-factor: 1.5' },
  run: (bench) => {
    const leaf = bench.subject.plant.plant?.['hold-factor'];
    if (!leaf || heldByVacuum(bench).length === 0) return [];
    const factor = look(bench.facts, (use) => use(leaf));
    if (!factor || factor.value >= LEAST_HOLD_FACTOR) return [];
    const least = formatNumber(LEAST_HOLD_FACTOR, '', 0);
    return [
      {
        at: leaf.id,
        what: `A safety factor of ${formatNumber(factor.value, '', factor.decimals)} is less than ${least} (${LEAST_HOLD_FACTOR_SOURCE}).`,
        mend: `Set the factor to ${least} or more.`,
        against: [],
      },
    ];
  },
};
export default check;
