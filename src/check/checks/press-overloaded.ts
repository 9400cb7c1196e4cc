/** Neither the gauge nor the force of the press goes above what its rating plate allows. */
import type { Use } from '../../facts/facts.ts';
import { machineAt } from '../../facts/press-row.ts';
import type { Subject } from '../../facts/subject.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';
import { dial, line, plan, ring } from '../sketch.ts';

const check: Check = {
  id: 'press-overloaded',
  stage: 'derived',
  severity: 'error',
  why: 'A press above its rated maximum can burst a line or throw its load: no number of a card may ask for it.',
  mend: 'Put fewer stacks side by side, or press this model on a bigger press.',
  example: { file: 'models/plant/plant.yaml', passes: 'gauge-most: 14 MPa', fails: 'gauge-most: 11 MPa' },
  sketch: plan(dial(0.97, 0.25, 0.75), line('M 7 -8.6 L 11.4 -11'), ring(10.6, 4.4, 3.4)),
  run: ({ subject, facts }) => {
    if (!partsOf(subject.spec).includes('cap')) return [];
    const seen = look(facts, (use) => ({
      stacks: use.fact('press.side-by-side').value,
      gauge: use.fact('press.stack.gauge'),
      most: use.fact('press.gauge-most'),
      force: use.fact('press.stack.force'),
      capacity: use.fact('press.capacity'),
      scale: scaleOf(subject, use),
    }));
    if (!seen) return [];
    const { gauge, most, force, capacity, scale } = seen;
    const limits: readonly Limit[] = [
      { at: scale ?? 'press.gauge-most', of: 'the gauge may show', one: gauge, allowed: most.value },
      { at: 'press.capacity', of: 'the press is rated for', one: force, allowed: capacity.value },
    ];
    // What one stack is too much for is not said of several once more.
    const first = [...new Set([1, seen.stacks])].map((stacks) => limits.flatMap((limit) => fault(limit, stacks)));
    return first.find((faults) => faults.length > 0) ?? [];
  },
};
export default check;

/** Where the scale of the gauge ends, if that is less than it is rated for. */
function scaleOf(subject: Subject, use: Use): string | undefined {
  const press = machineAt(subject, use, 'press');
  const full = press.need('gauge-full-scale', (row) => row['gauge-full-scale']);
  return use(full).value < use(press.need('gauge-most', (row) => row['gauge-most'])).value ? full.id : undefined;
}

interface Limit {
  readonly at: string;
  readonly of: string;
  /** With one stack; forces of stacks side by side add, and so does the gauge. */
  readonly one: Quantity;
  readonly allowed: number;
}

function fault({ at, of, one, allowed }: Limit, stacks: number): Fault[] {
  const ofOne = one.high ?? one.value;
  if (stacks * ofOne <= allowed) return [];
  const fewer = Math.floor(allowed / ofOne);
  const by = stacks === 1 ? 'One stack' : `${stacks} stacks side by side`;
  return [
    {
      at,
      what: `${by} would need up to ${sayAs(one, stacks * ofOne)}, and ${of} ${sayAs(one, allowed)} at most.`,
      mend:
        fewer >= 1
          ? fewer === 1
            ? 'Press one stack at a time.'
            : `Put no more than ${fewer} side by side.`
          : 'Press this model on a bigger press. Never raise the maximum above its rating plate.',
      against: [{ at: 'press.joint-pressure', text: 'the pressure on the joint' }],
      hangsOn: ['press.stack.gauge', 'press.side-by-side'],
    },
  ];
}
