/** A cutter goes down no further at a time than it is thick, and than it can cut; it stands out of its holder that far. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { cut, cuts, cutter, gap, ideal, section, slab } from '../sketch.ts';
import type { UsedCutter } from '../used-cutters.ts';
import { cuttersOnce } from '../used-cutters.ts';

const check: Check = {
  id: 'step-too-deep',
  stage: 'derived',
  severity: 'error',
  why: 'Deeper than it is thick the cutter bends and breaks, and deeper than its flutes it burns; the holder hits the wood.',
  mend: 'Take smaller steps, or set the cutter further out of its holder.',
  example: { file: 'models/plant/plant.yaml', passes: 'step-down: 8', fails: 'step-down: 18' },
  sketch: section(
    slab(),
    cuts(cut({ from: 8, to: 34, depth: 14 })),
    ideal('M 34 4.6 H 58 M 34 9.3 H 58'),
    cutter({ x: 30.5, tip: 14, width: 7, flutes: 12 }),
    gap(16, 0, 14),
  ),
  run: (bench) => cuttersOnce(bench).flatMap((used) => fault(bench, used)),
};
export default check;

function fault({ facts }: Bench, { cutter, named }: UsedCutter): Fault[] {
  const { row, id } = cutter;
  const seen = look(facts, (use) => ({
    kind: use(row.kind),
    diameter: use(row.diameter),
    reach: use(row.reach),
    step: row['step-down'] && { at: row['step-down'].id, q: use(row['step-down']) },
    length: row.length && { at: row.length.id, q: use(row.length) },
  }));
  if (!seen) return [];
  const { kind, diameter, reach, step, length } = seen;
  const against = [{ at: named.id, text: 'where the model cuts with it' }];
  const faults: Fault[] = [];
  // A drill clears its chips along its flutes: how thick it is says nothing about its steps. Common practice, no source.
  const thick = kind === 'drill' ? Infinity : diameter.value;
  const most = Math.min(thick, reach.value);
  if (step && step.q.value > most) {
    const [of, can] =
      most === reach.value
        ? ['how deep it reaches', `reaches only ${say(step.q, most)} deep`]
        : ['diameter of the cutter', `is only ${say(step.q, most)} thick`];
    const limit = most === reach.value ? row.reach.id : row.diameter.id;
    faults.push({
      at: step.at,
      what: `${id} is to go ${say(step.q, step.q.value)} down at a time, and it ${can}.`,
      mend: `Take steps of ${say(step.q, most)} at most.`,
      against: [{ at: limit, text: of }, ...against],
    });
  }
  if (length && length.q.value < reach.value)
    faults.push({
      at: length.at,
      what: `${id} stands ${say(length.q, length.q.value)} out of its holder, and is said to reach ${say(length.q, reach.value)} deep.`,
      mend: `Set it at least ${say(length.q, reach.value)} out, or give the reach it has.`,
      against: [{ at: row.reach.id, text: 'how deep it reaches' }, ...against],
    });
  return faults;
}
