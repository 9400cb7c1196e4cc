/** What is computed lies where such numbers usually do. */
import { partsOf } from '../../facts/parts.ts';
import type { Likely } from '../../reference/likely.ts';
import { likely } from '../../reference/likely.ts';
import { formatNumber, withUnit } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'result-unlikely',
  stage: 'derived',
  severity: 'caution',
  why: 'A sum can be right and one of its numbers wrong: nothing else asks before a machine is set by it.',
  mend: 'Look at the numbers it comes from once more; if they are meant, permit it with a reason.',
  example: { file: 'models/plant/plant.yaml', passes: 'power: 500 W', fails: 'power: 50 kW' },
  run: (bench) =>
    likely.flatMap((one) =>
      one.fact.includes('{part}')
        ? partsOf(bench.subject.spec).flatMap((part) => fault(bench, one, one.fact.replace('{part}', part), part))
        : fault(bench, one, one.fact),
    ),
};
export default check;

function fault({ facts }: Bench, { low, high, says, onlyGlued }: Likely, id: string, part?: string): Fault[] {
  if (!facts.has(id)) return [];
  const seen = look(facts, (use) => {
    const apart = onlyGlued && use.fact(`edge.${part as 'cap'}.seams`).value === 0;
    return apart ? undefined : { q: use.fact(id) as Quantity, label: facts.fact(id)!.label };
  });
  if (!seen || (seen.q.value >= low && seen.q.value <= high)) return [];
  const { q, label } = seen;
  // The model's numbers are held by other checks: rows of the plant are looked at first.
  const inputs = facts
    .fact(id)!
    .inputs.filter((input) => input.startsWith('plant.') && typeof valueOf(facts, input) !== 'string');
  const text = (value: number): string => withUnit(formatNumber(value, q.unit, q.decimals), q.unit);
  return [
    {
      at: inputs.at(-1) ?? id,
      what: `${label[0]!.toUpperCase()}${label.slice(1)}: ${text(q.value)}. ${says}; ${text(low)} to ${text(high)} is usual.`,
      mend: 'Look at the numbers it comes from once more; if they are meant, permit it with a reason.',
      against: inputs.slice(0, -1).map((at) => ({ at, text: 'a number that goes into it' })),
    },
  ];
}

function valueOf(facts: Bench['facts'], id: string): unknown {
  const state = facts.fact(id)?.state;
  return state?.ok ? state.value : undefined;
}
