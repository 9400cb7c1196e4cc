/** Hours of a run at each station, against the shift, and the station that takes longest. Pure. */
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

export interface Hours {
  readonly stations: readonly StationHours[];
  /** Of those with a time: the one with most. */
  readonly bottleneck?: string;
}

/** `jobs`: in the sequence they are worked through. `own`: minutes worked out otherwise, as of the loads of a press. */
export function hoursOf(jobs: readonly RunJob[], floor: RunFloor, own: ReadonlyMap<string, number> = new Map()): Hours {
  const stations = floor.stations.flatMap(({ id, name, changeover = 0 }): StationHours[] => {
    const passing = jobs.filter(({ passes }) => passes.has(id));
    if (passing.length === 0) return [];
    const timed = passing.flatMap(({ minutes }) => minutes.get(id) ?? []);
    const work = own.get(id) ?? (timed.length === 0 ? undefined : timed.reduce((sum, one) => sum + one, 0));
    const changeovers = passing.filter(
      (job, i) => i > 0 && job.setUps.get(id) !== passing[i - 1]!.setUps.get(id),
    ).length;
    const changing = changeovers * changeover;
    return [
      {
        station: id,
        name,
        ...(work === undefined ? {} : { work }),
        changeovers,
        changing,
        ...(work === undefined || floor.shift === undefined ? {} : { share: (work + changing) / floor.shift }),
      },
    ];
  });
  const timed = stations.filter(({ work }) => work !== undefined);
  const most = timed.reduce<StationHours | undefined>(
    (top, one) => (!top || one.work! + one.changing > top.work! + top.changing ? one : top),
    undefined,
  );
  return { stations, ...(most ? { bottleneck: most.station } : {}) };
}
