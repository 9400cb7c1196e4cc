/**
 * Tomorrow’s run, from its list: which orders are made, in which sequence, and what that asks of the floor. Pure.
 *
 *     orders ─→ admit ─→ jobs ─→ sequence ─→ picks, things to have ready, hours
 *                 └ refused lines
 */
import type { Finding } from '../findings/finding.ts';
import { admit } from './admit.ts';
import type { Admitted, Offered } from './admit.ts';
import type { RunFloor } from './floor.ts';
import { hoursOf } from './hours.ts';
import type { Hours } from './hours.ts';
import { jobsOf } from './jobs.ts';
import type { OrderList } from './orders.ts';
import { picksFor } from './picks.ts';
import type { Pick } from './picks.ts';
import { pressingOf } from './pressing.ts';
import type { Pressing } from './pressing.ts';
import { readyFor } from './ready.ts';
import type { ReadyAt } from './ready.ts';
import { secondUses } from './second-use.ts';
import type { SecondUse } from './second-use.ts';
import { sequenced, timedIn } from './sequence.ts';
import type { Job } from './sequence.ts';

export interface RunLine extends Admitted {
  /** From 1. */
  readonly place: number;
  /** Stations that are set up for it; `first`: nothing was set up there before it, as far as this list says. */
  readonly setUp: readonly { readonly station: string; readonly name: string; readonly first: boolean }[];
  /** Shift in which it is done, 1 that of the day; absent where the plant gives no shift. */
  readonly shift?: number;
  /** Shifts past its due day; 0 where it is in time. */
  readonly late: number;
}

export interface Run {
  readonly on: string;
  readonly floor: RunFloor;
  /** Lines of the list, refused ones as well. */
  readonly listed: number;
  readonly lines: readonly RunLine[];
  readonly bodies: number;
  readonly refused: readonly Finding[];
  readonly picks: readonly Pick[];
  readonly ready: readonly ReadyAt[];
  readonly hours: Hours;
  readonly pressing: Pressing;
  readonly secondUse: readonly SecondUse[];
  /** In this sequence, and in the list’s own. */
  readonly changeovers: { readonly count: number; readonly minutes: number };
  readonly asListed: { readonly count: number; readonly minutes: number };
}

export function runOf({ orders, findings }: OrderList, offered: Offered, floor: RunFloor): Run {
  const { admitted, refused } = admit(orders, offered);
  const jobs = jobsOf(admitted, floor, offered.on);
  const clock = { changeover: changeoversOf(floor), shift: floor.shift ?? Infinity };
  const listed = timedIn(jobs, clock);
  const plan = sequenced(jobs, clock);
  const byNumber = new Map(admitted.map((one, i) => [one.order.number, { one, job: jobs[i]! }]));
  const inSequence = plan.order.map((number) => byNumber.get(number)!);
  const pressing = pressingOf(inSequence.map(({ one }) => one));
  const setUps = setUpsIn(
    inSequence.map(({ job }) => job),
    floor,
  );
  const lines = inSequence.map(({ one, job }, i): RunLine => {
    const { done } = plan.timed[i]!;
    return {
      ...one,
      place: i + 1,
      setUp: setUps[i]!,
      ...(floor.shift === undefined ? {} : { shift: done + 1 }),
      late: floor.shift === undefined || job.due === undefined ? 0 : Math.max(0, done - job.due),
    };
  });
  // How a station stands in the morning nobody knows: in either order it is set up for its first.
  const first = setUps.flat().filter((one) => one.first);
  const firstMinutes = first.reduce((sum, { station }) => sum + (clock.changeover.get(station) ?? 0), 0);
  const withFirst = (of: { readonly changeovers: number; readonly changeoverMinutes: number }) => ({
    count: of.changeovers + first.length,
    minutes: of.changeoverMinutes + firstMinutes,
  });
  return {
    on: offered.on,
    floor,
    listed: orders.length + findings.length,
    lines,
    bodies: lines.reduce((sum, { order }) => sum + order.quantity, 0),
    refused: [...findings, ...refused].toSorted((a, b) => a.place.start - b.place.start),
    picks: picksFor(lines),
    ready: readyFor(
      lines,
      floor.stations.map(({ id }) => id),
    ),
    hours: hoursOf(
      inSequence.map(({ job }) => job),
      floor,
      pressing.loads.length === 0 ? undefined : new Map([['press', pressing.minutes]]),
    ),
    pressing,
    secondUse: secondUses(lines),
    changeovers: withFirst(plan),
    asListed: withFirst(listed),
  };
}

/** Before each order in turn: stations that stood as another order left them. */
function setUpsIn(jobs: readonly Job[], { stations }: RunFloor): readonly RunLine['setUp'][] {
  const stood = new Map<string, string>();
  return jobs.map(({ setUps }) =>
    stations.flatMap(({ id, name }) => {
      const wanted = setUps.get(id);
      if (wanted === undefined) return [];
      const before = stood.get(id);
      stood.set(id, wanted);
      return before === wanted ? [] : [{ station: id, name, first: before === undefined }];
    }),
  );
}

const changeoversOf = ({ stations }: RunFloor): ReadonlyMap<string, number> =>
  new Map(stations.flatMap(({ id, changeover }) => (changeover === undefined ? [] : [[id, changeover] as const])));
