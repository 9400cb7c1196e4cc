/** Joint pressure and the numbers of the press are such as a press is made with: a hand on a wrong unit. */
import type { Facts } from '../../facts/facts.ts';
import type { Leaf } from '../../facts/leaf.ts';
import { laminationAdhesive, machineAt } from '../../facts/press-row.ts';
import { partsOf } from '../../facts/parts.ts';
import { formatNumber, formatQuantity, withUnit } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';
import { systemOf } from '../../units/second.ts';
import { unitsOf } from '../../units/unit.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { plausibles } from '../plausible.ts';

const check: Check = {
  id: 'press-number-implausible',
  stage: 'derived',
  severity: 'error',
  why: 'Pounds taken for kilopascals, or inches for millimetres, are off several times over, and the gauge on the card with them.',
  mend: 'Look at the digits and the unit once more.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'joint-pressure: 700 ±50 kPa',
    fails: 'joint-pressure: 120 ±10 kPa',
  },
  run: ({ subject, facts }) => {
    if (!partsOf(subject.spec).includes('cap')) return [];
    const pressure = look(facts, (use) => plausibles(laminationAdhesive(subject, use).row['joint-pressure']));
    const press = look(facts, (use) => plausibles(machineAt(subject, use, 'press').row));
    return [...(pressure ?? []), ...(press ?? [])].flatMap((leaf) => fault(facts, leaf));
  },
};
export default check;

function fault(facts: Facts, leaf: Leaf<Quantity>): Fault[] {
  const q = look(facts, (use) => use(leaf));
  const { low, high, text } = leaf.asked.plausible!;
  if (!q || (q.value >= low && q.value <= high)) return [];
  const written = (unit: string) => withUnit(formatNumber(q.value, q.unit, q.decimals), unit);
  const base = Number(formatNumber(q.value, q.unit, q.decimals));
  const meant = unitsOf(q.kind).find(
    (unit) => unit.system !== systemOf(q.unit) && unit.toBase(base) >= low && unit.toBase(base) <= high,
  );
  return [
    {
      at: leaf.id,
      what: `${formatQuantity(q)} is outside of what a press is made with: ${text}.`,
      mend: meant
        ? `If ${written(meant.id)} is meant, write the unit after the number.`
        : 'Look at the digits and the unit once more.',
      against: [],
    },
  ];
}
