/** Orders as the sequence sees them: time at each station, and what the station is set up for. Pure. */
import { setupCutAt } from '../facts/setup-stations.ts';
import { dayNumber, weekday } from '../units/day.ts';
import type { Admitted } from './admit.ts';
import type { RunFloor } from './floor.ts';
import type { MadeBy } from './made-by.ts';
import type { Job } from './sequence.ts';
import { isHeld, setUpOf } from './set-up.ts';

/** Set-ups are those of stations that take time for them, or have a jig or a fixture. */
export interface RunJob extends Job {
  /** Ids of all it passes. */
  readonly passes: ReadonlySet<string>;
}

type OneBody = Pick<RunJob, 'setUps' | 'minutes' | 'passes'>;

/** `on`: day of the run. */
export function jobsOf(admitted: readonly Admitted[], floor: RunFloor, on: string): readonly RunJob[] {
  const kinds = new Map<MadeBy, OneBody>();
  return admitted.map(({ order, by }) => {
    const one = kinds.get(by) ?? oneBody(by, floor);
    kinds.set(by, one);
    return {
      id: order.number,
      setUps: one.setUps,
      passes: one.passes,
      minutes: new Map([...one.minutes].map(([station, minutes]) => [station, minutes * order.quantity])),
      ...(order.due === undefined ? {} : { due: shiftsTo(on, order.due) }),
    };
  });
}

function oneBody(by: MadeBy, floor: RunFloor): OneBody {
  const stations = new Map(floor.stations.map((station) => [station.id, station]));
  const cards = by.cards.filter(({ key }) => stations.has(key.station));
  const minutes = cards.flatMap(({ key: { station } }): [string, number][] => {
    const one = stations.get(station)!.perBody ?? machineMinutes(by, station);
    return one === undefined ? [] : [[station, one]];
  });
  return {
    setUps: new Map(
      cards
        .filter((card) => stations.get(card.key.station)!.changeover !== undefined || isHeld(card, by))
        .map((card) => [card.key.station, setUpOf(card, by)]),
    ),
    minutes: new Map(minutes),
    passes: new Set(cards.map(({ key }) => key.station)),
  };
}

/** As its cuts say, on all spindles; undefined where no set-up is cut. */
function machineMinutes(by: MadeBy, station: string): number | undefined {
  const setup = setupCutAt(station);
  const time = setup === undefined ? undefined : by.number(`run.${setup}.body.all`);
  return time && time.value / 60;
}

/**
 * Shifts from one day to another, one a day from Monday to Friday (common practice, no source): 0 is the day itself, or a
 * weekend before the next shift. Negative where it is past.
 */
export const shiftsTo = (from: string, to: string): number =>
  shiftsThrough(dayNumber(to)) - shiftsThrough(dayNumber(from));

/** Shifts from the Monday of the week of 1970-01-01 up to and with a day. */
function shiftsThrough(day: number): number {
  const monday = day - weekday(day) + 1;
  return ((monday + 3) / 7) * 5 + Math.min(weekday(day), 5);
}
