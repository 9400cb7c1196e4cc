/** Lists of orders by chance, with dues of all sorts, and a plan held against the rules from their wording alone. */
import type { Floor, Job, Plan } from '../../src/run/sequence.ts';
import type { Seeded } from '../faults/seeded.ts';

export interface Listed {
  readonly jobs: readonly Job[];
  readonly floor: Floor;
}

export interface Sort {
  readonly orders: number;
  readonly stations: number;
  /** Distinct sets of set-ups an order is given one of. */
  readonly setUps: number;
  /** Texts a station may be set up for. */
  readonly texts: number;
  /** Minutes of an order at a station, at the least; up to 30 more by chance. */
  readonly work: number;
  readonly shift: number;
  readonly dues: 'none' | 'loose' | 'mixed' | 'tight';
}

/** Every order passes each station with four chances of five. */
export function listBy(chance: Seeded, { orders, stations, setUps, texts, work, shift, dues }: Sort): Listed {
  const names = Array.from({ length: stations }, (_, i) => `station ${i}`);
  const sets = Array.from(
    { length: setUps },
    () => new Map(names.filter(() => chance.next() < 0.8).map((name) => [name, `set-up ${chance.whole(texts)}`])),
  );
  const undated: Job[] = Array.from({ length: orders }, (_, i) => {
    const set = chance.pick(sets);
    return {
      id: `order ${i}`,
      setUps: set,
      minutes: new Map([...set.keys()].map((at) => [at, work + chance.whole(30)])),
    };
  });
  const floor: Floor = { changeover: new Map(names.map((name) => [name, 5 * chance.whole(9)])), shift };
  const done = byHand(undated, floor).done;
  const end = Math.max(1, ...done);
  const jobs = undated.map((job, i): Job => {
    const own = done[i]!;
    const late = own - 1 - chance.whole(4);
    const due = {
      none: undefined,
      loose: end + 2 + chance.whole(4),
      tight: chance.pick([own, late]),
      mixed: chance.pick([undefined, own, own + chance.whole(3), own + chance.whole(end), late, -chance.whole(3)]),
    }[dues];
    return due === undefined ? job : { ...job, due };
  });
  return { jobs, floor };
}

export interface ByHand {
  readonly at: readonly number[];
  readonly done: readonly number[];
  readonly minutes: number;
  readonly count: number;
}

/** Times and sums of orders in the sequence given, station by station. */
export function byHand(sequence: readonly Job[], { changeover, shift }: Floor): ByHand {
  const at = sequence.map(() => 0);
  let [minutes, count] = [0, 0];
  for (const station of new Set(sequence.flatMap((job) => [...job.setUps.keys(), ...job.minutes.keys()]))) {
    let clock = 0;
    let standing: string | undefined;
    sequence.forEach((job, i) => {
      const needed = job.setUps.get(station);
      const work = job.minutes.get(station);
      if (needed !== undefined && standing !== undefined && needed !== standing) {
        clock += changeover.get(station) ?? 0;
        minutes += changeover.get(station) ?? 0;
        count++;
      }
      standing = needed ?? standing;
      clock += work ?? 0;
      if (needed !== undefined || work !== undefined) at[i] = Math.max(at[i]!, clock);
    });
  }
  return { at, done: at.map((time) => shiftThat(time, shift)), minutes, count };
}

/** The first shift whose end is not before the time, a hair of rounding aside. */
function shiftThat(time: number, shift: number): number {
  const nearest = Math.round(time / shift);
  if (nearest > 0 && Math.abs(time / shift - nearest) < 1e-6) return nearest - 1;
  return Math.floor(time / shift);
}

/** What is wrong with a plan; nothing where it keeps the rules and says true times and sums. */
export function faultsOf({ jobs, floor }: Listed, plan: Plan): string[] {
  const byId = new Map(jobs.map((job) => [job.id, job]));
  const sequence = plan.order.flatMap((id) => byId.get(id) ?? []);
  if (
    plan.order.toSorted().join() !==
    jobs
      .map(({ id }) => id)
      .toSorted()
      .join()
  )
    return ['not the orders of the list'];
  const own = byHand(jobs, floor);
  const ownDone = new Map(jobs.map(({ id }, i) => [id, own.done[i]!]));
  const made = byHand(sequence, floor);
  const faults = sequence.flatMap((job, i) => {
    const told = plan.timed[i];
    if (told?.id !== job.id) return [`${job.id}: its time stands elsewhere`];
    const wrong = Math.abs(told.at - made.at[i]!) > 1e-6 || told.done !== made.done[i];
    if (job.due === undefined) return wrong ? [`${job.id}: wrong time`] : [];
    const late = Math.max(0, made.done[i]! - job.due);
    const before = Math.max(0, ownDone.get(job.id)! - job.due);
    return [
      ...(wrong ? [`${job.id}: wrong time`] : []),
      ...(late > before ? [`${job.id}: ${late} > ${before} late`] : []),
    ];
  });
  if (plan.timed.length !== jobs.length) faults.push('not a time for each');
  if (Math.abs(plan.changeoverMinutes - made.minutes) > 1e-6) faults.push('wrong minutes of changeovers');
  if (plan.changeovers !== made.count) faults.push('wrong number of changeovers');
  if (made.minutes > own.minutes + 1e-6) faults.push('more changeovers than the list');
  return faults;
}
