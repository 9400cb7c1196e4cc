/** The row of a gauge hangs together: unit, step, uncertainty and reach are of what it reads. */
import type { Kind, Quantity } from '../../units/quantity.ts';
import { kindName } from '../../units/describe.ts';
import { findUnit } from '../../units/unit.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { gaugesSeen } from '../gauges.ts';
import type { GaugeAt } from '../gauges.ts';
import type { Facts } from '../../facts/facts.ts';
import type { Leaf } from '../../facts/leaf.ts';

/** What its unit must be one of, and what its step and its uncertainty are. */
const KINDS: Readonly<Record<string, { readonly unit: Kind; readonly step: Kind }>> = {
  length: { unit: 'length', step: 'length' },
  temperature: { unit: 'temperature', step: 'temperature-difference' },
  humidity: { unit: 'fraction', step: 'fraction' },
  moisture: { unit: 'fraction', step: 'fraction' },
  pressure: { unit: 'pressure', step: 'pressure' },
  time: { unit: 'time', step: 'time' },
  mass: { unit: 'mass', step: 'mass' },
};

const check: Check = {
  id: 'gauge-row-at-odds',
  stage: 'card',
  severity: 'error',
  why: 'Limits would be rounded and drawn in by a number that is of something else.',
  mend: 'Give unit, step and uncertainty of what the gauge reads; class and reach to gauges of lengths alone.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'unit: °C, resolution: 0.1 K, uncertainty: 0.5 K }',
    fails: 'unit: °C, resolution: 0.1 K, uncertainty: 0.5 % }',
  },
  run: (bench) => gaugesSeen(bench).flatMap((one) => faults(bench.facts, one)),
};
export default check;

function faults(facts: Facts, { gauge: { name, row, reads } }: GaugeAt): Fault[] {
  const kinds = KINDS[reads];
  if (!kinds) return [];
  const unit = look(facts, (use) => findUnit(use(row.unit)));
  const off = (leaf: Leaf<Quantity> | undefined, what: string): Fault[] => {
    const q = leaf && look(facts, (use) => use(leaf));
    return !leaf || !q || q.kind === kinds.step ? [] : [fault(leaf, what, kindName(q.kind), kindName(kinds.step))];
  };
  const fault = (leaf: Leaf<unknown>, what: string, is: string, wanted: string): Fault => ({
    at: leaf.id,
    what: `"${name}" reads ${reads}; ${what} is ${is}, not ${wanted}.`,
    mend: `Give ${wanted} here, or say what it reads.`,
    against: [{ at: row.reads.id, text: 'what it reads' }],
  });
  const lengthsAlone = [row.class, row.reach].flatMap((leaf): Fault[] =>
    leaf && reads !== 'length'
      ? [
          {
            at: leaf.id,
            what: `"${name}" reads ${reads}; this is said of gauges of lengths alone.`,
            mend: 'Take it out, or say what it reads.',
            against: [{ at: row.reads.id, text: 'what it reads' }],
          },
        ]
      : [],
  );
  return [
    ...(unit && unit.kind !== kinds.unit
      ? [fault(row.unit, 'its unit', kindName(unit.kind), kindName(kinds.unit))]
      : []),
    ...off(row.resolution, 'its step'),
    ...off(row.uncertainty, 'its uncertainty'),
    ...lengthsAlone,
  ];
}
