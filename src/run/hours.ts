/** Hours of a run at each station and shared machine, against the shift, and which takes longest. Pure. */
import type { RunFloor } from './floor.ts';
import type { RunJob } from './jobs.ts';

export interface StationHours {
  readonly station: string;
  readonly name: string;
  /** Minutes; absent of a station that nobody gave a time for. */
  readonly work?: number;
  readonly changeovers: number;
  readonly changing: number;
  /** Of the shift, work and changeovers together; absent without a shift. */
  readonly share?: number;
}

/** A machine that several stations of the run share: their hours come on top of each other. */
export interface SharedMachine extends Omit<StationHours, 'station' | 'work'> {
  readonly machine: string;
  readonly work: number;
  /** Names of its stations. */
  readonly stations: readonly string[];
}

export interface Hours {
  readonly stations: readonly StationHours[];
  readonly machines: readonly SharedMachine[];
  /** Of those with a time: the station, or the shared machine, with most. */
  readonly bottleneck?: string;
}

/** `jobs`: in the sequence they are worked through. `own`: minutes worked out otherwise, as of the loads of a press. */
export function hoursOf(jobs: readonly RunJob[], floor: RunFloor, own: ReadonlyMap<string, number> = new Map()): Hours {
  const shareOf = (minutes: number) => (floor.shift === undefined ? {} : { share: minutes / floor.shift });
  const stations = floor.stations.flatMap(({ id, name, changeover = 0 }): StationHours[] => {
    const passing = jobs.filter(({ passes }) => passes.has(id));
    if (passing.length === 0) return [];
    const timed = passing.flatMap(({ minutes }) => minutes.get(id) ?? []);
    const work = own.get(id) ?? (timed.length === 0 ? undefined : timed.reduce((sum, one) => sum + one, 0));
    const changeovers = timesSetUp(passing, id);
    const changing = changeovers * changeover;
    const station = { station: id, name, changeovers, changing };
    return [work === undefined ? station : { ...station, work, ...shareOf(work + changing) }];
  });
  const machines = sharedIn(stations, floor).map((machine) => ({
    ...machine,
    ...shareOf(machine.work + machine.changing),
  }));
  const all = [
    ...stations.flatMap(({ station, work, changing }) =>
      work === undefined ? [] : [{ id: station, all: work + changing }],
    ),
    ...machines.map(({ machine, work, changing }) => ({ id: machine, all: work + changing })),
  ];
  const most = all.reduce<(typeof all)[number] | undefined>(
    (top, one) => (!top || one.all > top.all ? one : top),
    undefined,
  );
  return { stations, machines, ...(most ? { bottleneck: most.id } : {}) };
}

/** How it stands in the morning nobody knows: the first set-up counts. */
function timesSetUp(passing: readonly RunJob[], id: string): number {
  let stood: string | undefined;
  return passing.filter(({ setUps }) => {
    const wanted = setUps.get(id);
    if (wanted === undefined || wanted === stood) return false;
    stood = wanted;
    return true;
  }).length;
}

function sharedIn(stations: readonly StationHours[], floor: RunFloor): readonly SharedMachine[] {
  const machines = new Map(
    floor.stations.flatMap(({ machine }) => (machine ? [[machine.id, machine.name] as const] : [])),
  );
  return [...machines].flatMap(([id, name]) => {
    const ids = floor.stations.filter(({ machine }) => machine?.id === id).map((station) => station.id);
    const sharing = stations.filter(({ station, work }) => ids.includes(station) && work !== undefined);
    if (sharing.length < 2) return [];
    const sum = (of: (one: StationHours) => number) => sharing.reduce((all, one) => all + of(one), 0);
    return [
      {
        machine: id,
        name,
        stations: sharing.map((one) => one.name),
        work: sum(({ work }) => work!),
        changeovers: sum(({ changeovers }) => changeovers),
        changing: sum(({ changing }) => changing),
      },
    ];
  });
}
