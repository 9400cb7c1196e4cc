/**
 * Loads of the press for a run, from what the releases say. The card of the press allows one model and hand in a load: each
 * stretch of the sequence that is made by one release is loaded by itself. Pure.
 */
import type { Band } from '../derive/press-load.ts';
import type { FactNumber } from '../facts/state.ts';
import { roundInward } from '../units/round.ts';
import { decimalsOf } from '../units/step.ts';
import type { Admitted } from './admit.ts';
import { loadsOf } from './loads.ts';
import type { Load, Press, PressJob } from './loads.ts';
import type { MadeBy } from './made-by.ts';

const NM_PER_M = 1e9;

export interface RunLoad extends Load {
  readonly by: MadeBy;
  /** Pa, inward to what the gauge can be read to; and the unit it is read in, with its decimals. */
  readonly reading: Band & { readonly unit: string; readonly decimals: number };
  /** m, from the part's middle and bridge line to the middle of its glue. */
  readonly centre: { readonly x: number; readonly y: number };
  /** m. */
  readonly daylight: number;
  /** s that the glue of the first body may be open. */
  readonly open: number;
}

export interface Pressing {
  readonly loads: readonly RunLoad[];
  /** Orders that this press cannot take: their releases would be refused by the checks of today. */
  readonly refused: readonly string[];
  /** Minutes that the press is taken. */
  readonly minutes: number;
}

/** `sequence`: the orders as they are worked through. */
export function pressingOf(sequence: readonly Admitted[]): Pressing {
  const stretches = stretchesOf(sequence.filter(({ by }) => by.number('joint.area') !== undefined));
  const parts = stretches.map((stretch) => {
    const { by } = stretch[0]!;
    const press = pressOf(by);
    const jobs = stretch.map((one) => jobOf(one));
    const { loads, refused } = loadsOf(jobs, press);
    const { step, ...read } = gaugeOf(by);
    const { centre, openTime: open } = jobs[0]!;
    const inside = (load: Load) => roundInward(load.gauge.low, load.gauge.high, step);
    // Where no reading of the gauge lies inside, none may be given: the nearest would lie outside.
    const unread = loads.filter((load) => !inside(load)).flatMap(({ stacks }) => stacks.flat());
    return {
      refused: [...refused, ...unread].map(({ order }) => order),
      loads: loads.flatMap((load): RunLoad[] => {
        const band = inside(load);
        if (!band) return [];
        const reading = { low: band.low, high: band.high, ...read };
        return [{ ...load, by, reading, centre, daylight: press.daylight, open }];
      }),
    };
  });
  const loads = parts.flatMap((part) => part.loads);
  return {
    loads,
    refused: [...new Set(parts.flatMap(({ refused }) => refused))],
    minutes: loads.reduce((sum, { assembly, pressTime }) => sum + assembly + pressTime, 0) / 60,
  };
}

function stretchesOf(sequence: readonly Admitted[]): readonly (readonly Admitted[])[] {
  const stretches: Admitted[][] = [];
  for (const one of sequence) {
    const last = stretches.at(-1);
    if (last?.[0]!.by === one.by) last.push(one);
    else stretches.push([one]);
  }
  return stretches;
}

/** What a release with a glued joint has: a release without it was not made by these rules. */
function needed(by: MadeBy, id: string): FactNumber {
  const number = by.number(id);
  if (!number) throw new Error(`${by.model}@${by.revision} has no ${id}`);
  return number;
}

const least = ({ value, low = value }: FactNumber): number => low;
const most = ({ value, high = value }: FactNumber): number => high;
const band = (number: FactNumber, per = 1): Band => ({ low: least(number) / per, high: most(number) / per });

export function jobOf({ order, by }: Admitted): PressJob {
  const adhesive = by.text(`plant.lines.${by.text('line')}.adhesive`)!;
  const glue = (key: string) => by.number(`plant.adhesives.${adhesive}.${key}`);
  const closed = glue('closed-time');
  const spreader = by.text('plant.stations.lamination.machine')!;
  const length = (id: string) => needed(by, id).value / NM_PER_M;
  return {
    order: order.number,
    model: by.model,
    hand: by.hand,
    bodies: order.quantity,
    jointArea: needed(by, 'joint.area').value,
    pressure: band(needed(by, 'press.joint-pressure')),
    blank: band(needed(by, 'thickness.blank'), NM_PER_M),
    length: length('press.part.length'),
    width: length('press.part.width'),
    adhesive,
    openTime: least(needed(by, `plant.adhesives.${adhesive}.open-time`)),
    ...(closed ? { closedTime: least(closed) } : {}),
    spread: most(needed(by, `plant.machines.${spreader}.spread-time`)),
    pressTime: most(needed(by, `plant.adhesives.${adhesive}.press-time`)),
    rest: most(needed(by, `plant.adhesives.${adhesive}.machining-after`)),
    centre: { x: length('joint.centre.x'), y: length('joint.centre.y') },
  };
}

export function pressOf(by: MadeBy): Press {
  const id = by.text('plant.stations.press.machine')!;
  const given = (key: string) => needed(by, `plant.machines.${id}.${key}`);
  return {
    rams: { count: given('rams').value, bore: given('bore').value / NM_PER_M },
    gaugeMost: needed(by, 'press.gauge-most').value,
    gaugeFull: least(given('gauge-full-scale')),
    capacity: needed(by, 'press.capacity').value,
    daylight: least(given('daylight')) / NM_PER_M,
    closedHeight: most(given('closed-height')) / NM_PER_M,
    plate: {
      length: least(needed(by, 'press.plate.length')) / NM_PER_M,
      width: least(needed(by, 'press.plate.width')) / NM_PER_M,
    },
    sideBySide: needed(by, 'press.side-by-side').value,
    board: most(given('board')) / NM_PER_M,
    layTime: most(given('load-time')),
    closeTime: most(given('close-time')),
  };
}

/** The gauge that the station reads the press by: its step in Pa, its unit, and the decimals it shows. */
function gaugeOf(by: MadeBy): { readonly step: number; readonly unit: string; readonly decimals: number } {
  const gauge = by.text('plant.stations.press.gauges.pressure')!;
  const { value, unit } = needed(by, `plant.gauges.${gauge}.resolution`);
  return { step: value, unit, decimals: decimalsOf(value, unit) ?? 2 };
}
