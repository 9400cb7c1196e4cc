/** No cutter turns faster than is marked on it, nor faster or slower than the spindle does. */
import { row, wanted } from '../../facts/row.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';
import type { UsedCutter } from '../used-cutters.ts';
import { usedCutters } from '../used-cutters.ts';

const check: Check = {
  id: 'cutter-too-fast',
  stage: 'derived',
  severity: 'error',
  why: 'Above the speed its maker marked, a cutter can fly apart; no number of a card may ask for it.',
  mend: 'Run it slower. Never raise a maximum above what is marked on the tool or on the machine.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'most-speed: 16000 rpm\n    speed: 12000 rpm',
    fails: 'most-speed: 16000 rpm\n    speed: 18000 rpm',
  },
  run: (bench) => {
    const faults = usedCutters(bench).flatMap((used) => fault(bench, used));
    // A cutter of two set-ups on one machine is said once.
    return faults.filter((one, i) => faults.findIndex(({ at, what }) => at === one.at && what === one.what) === i);
  },
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, { cutter, setup, named }: UsedCutter): Fault[] {
  const seen = look(facts, (use) => {
    const machine = use(wanted(spec.setups[setup], `setups.${setup}`).machine);
    const found = row(plant.machines, machine, 'plant.machines');
    const spindle = (end: 'least' | 'most') =>
      wanted(found[`spindle-${end}`], `plant.machines.${machine}.spindle-${end}`);
    const limit = (leaf: ReturnType<typeof spindle>) => ({ id: leaf.id, q: use(leaf) });
    return {
      speed: limit(cutter.need('speed')),
      marked: limit(cutter.need('most-speed')),
      most: limit(spindle('most')),
      least: limit(spindle('least')),
    };
  });
  if (!seen) return [];
  const { speed, marked, most, least } = seen;
  const runs = speed.q.high ?? speed.q.value;
  // The lower of two maxima counts.
  const [top, of] = least2(marked, most);
  const against = [{ at: named.id, text: 'where the model cuts with it' }];
  if (runs > atMost(top.q))
    return [
      {
        at: speed.id,
        what: `${cutter.id} is to turn at ${sayAs(speed.q, runs)}; ${of} is ${sayAs(top.q, atMost(top.q))}.`,
        mend: `Run it at no more than ${sayAs(top.q, atMost(top.q))}. Never raise a maximum above what is marked.`,
        against: [{ at: top.id, text: of }, ...against],
      },
    ];
  const slowest = least.q.high ?? least.q.value;
  const slow = speed.q.low ?? speed.q.value;
  if (slow >= slowest) return [];
  return [
    {
      at: speed.id,
      what: `${cutter.id} is to turn at ${sayAs(speed.q, slow)}; the spindle turns no slower than ${sayAs(least.q, slowest)} under load.`,
      mend: `Run it at ${sayAs(least.q, slowest)} or more, if its maximum allows that, or on another machine.`,
      against: [{ at: least.id, text: 'the slowest the spindle turns' }, ...against],
    },
  ];
}

type Limit = { readonly id: string; readonly q: Quantity<'rotation'> };

const atMost = (q: Quantity<'rotation'>): number => q.low ?? q.value;

const least2 = (marked: Limit, most: Limit): readonly [Limit, string] =>
  atMost(marked.q) <= atMost(most.q) ? [marked, 'the maximum marked on it'] : [most, 'the maximum of the spindle'];
