/** One load of the body press: its bodies laid on stacks, and the stacks held against every limit. */
import type { Band, PressedBody } from '../derive/press-load.ts';
import { gaugeOf, loadForce, ramArea } from '../derive/press-load.ts';
import { ceilCount } from '../units/round.ts';
import type { Load, Over, Press, PressJob } from './loads.ts';

export interface Body {
  readonly job: PressJob;
  /** The same number for what may lie beside each other. */
  readonly kind: number;
}

/** A gauge is read in the middle of its scale. */
const READ_WELL: Band = { low: 1 / 4, high: 3 / 4 };

/** What no stacking mends and one body more only makes worse: so the row need not be tried any longer. */
export function neverTogether(row: readonly Body[], press: Press): boolean {
  if (row.some(({ job }) => job.adhesive !== row[0]!.job.adhesive)) return true;
  if (overTime(row, press)) return true;
  const high = row.reduce((sum, { job }) => sum + job.blank.high + press.board, 0);
  return !atMost(high, press.sideBySide * press.daylight);
}

/** In the fewest stacks, unless the gauge is better read with more. */
export function bestLoad(row: readonly Body[], press: Press): Load | undefined {
  let best: Load | undefined;
  const kinds = row.map(({ kind }) => kind);
  for (let count = 1; count <= Math.min(press.sideBySide, row.length); count += 1) {
    const stacks = alikeStacks(kinds, count)?.map((places) => places.map((place) => row[place]!));
    const load = stacks && pressed(stacks, row, press);
    if (!load || 'why' in load) continue;
    if (readWell(load)) return load;
    best ??= load;
  }
  return best;
}

export const readWell = ({ scale: { low } }: Load): boolean => READ_WELL.low <= low && low <= READ_WELL.high;

/** The stacks as a load, or the first limit they break; the row is the same bodies in the turn they are laid in. */
export function pressed(stacks: readonly (readonly Body[])[], row: readonly Body[], press: Press): Load | Over {
  const { board, daylight, closedHeight, plate, rams } = press;
  const jobs = row.map(({ job }) => job);
  const width = stacks.length * Math.max(...jobs.map((job) => job.width));
  const length = Math.max(...jobs.map((job) => job.length));
  if (!atMost(width, plate.length)) return { why: 'too-large', is: width, most: plate.length };
  if (!atMost(length, plate.width)) return { why: 'too-large', is: length, most: plate.width };

  const pile = stacks[0]!;
  const boards = (pile.length + 1) * board;
  const least = pile.reduce((sum, { job }) => sum + job.blank.low, boards);
  const most = pile.reduce((sum, { job }) => sum + job.blank.high, boards);
  const filling = Math.max(0, ceilCount(closedHeight - least, board));
  const height = { low: least + filling * board, high: most + filling * board };
  if (!atMost(height.high, daylight)) return { why: 'too-high', is: height.high, most: daylight };

  const held = loadForce(stacks.map((stack) => stack.map(({ job }) => glued(job))));
  if (!held.ok) return { why: 'too-strong', is: held.needs.force, most: held.bears.force };
  const gaugeMost = Math.min(press.gaugeMost, press.gaugeFull);
  const bears = Math.min(press.capacity, gaugeMost * ramArea(rams));
  if (!atMost(held.force.low, bears)) return { why: 'too-strong', is: held.force.low, most: bears };
  const force = cut(held.force, bears);
  const gauge = cut(gaugeOf(force, rams), gaugeMost);

  const slow = overTime(row, press);
  if (slow) return slow;
  const assembly = assemblyOf(row, press);
  return {
    adhesive: jobs[0]!.adhesive,
    stacks: stacks.map((stack) => stack.map(({ job: { order, model, hand } }) => ({ order, model, hand }))),
    filling,
    height,
    force,
    gauge,
    scale: { low: gauge.low / press.gaugeFull, high: gauge.high / press.gaugeFull },
    assembly,
    closed: assembly - jobs[0]!.spread,
    pressTime: Math.max(...jobs.map(({ pressTime }) => pressTime)),
    rest: Math.max(...jobs.map(({ rest }) => rest)),
  };
}

const glued = ({ order, jointArea, pressure }: PressJob): PressedBody => ({ name: order, jointArea, pressure });

const assemblyOf = (row: readonly Body[], { layTime, closeTime }: Press): number =>
  row.reduce((sum, { job }) => sum + job.spread + layTime, closeTime);

/** Bodies are spread and laid one after the other, and the first waits for them all. */
function overTime(row: readonly Body[], press: Press): Over | undefined {
  const assembly = assemblyOf(row, press);
  const open = Math.min(...row.map(({ job }) => job.openTime));
  if (!atMost(assembly, open)) return { why: 'too-slow', is: assembly, most: open };
  const closed = assembly - row[0]!.job.spread;
  const shut = Math.min(...row.map(({ job }) => job.closedTime ?? Infinity));
  return atMost(closed, shut) ? undefined : { why: 'too-slow', is: closed, most: shut };
}

const cut = ({ low, high }: Band, most: number): Band => ({ low: Math.min(low, most), high: Math.min(high, most) });

/** A sum of doubles may miss by a hair the limit that it meets. */
const atMost = (is: number, most: number): boolean => is <= most + Math.abs(most) * 1e-9;

/**
 * The places of the row that lie on each stack, bottom up, so that every stack holds the same kinds in the same order and
 * each is laid in the turn of the row; undefined where there is no such way. Of many it is one that grows level: a thing goes
 * on a stack that lags behind before it goes on one that leads.
 */
function alikeStacks(kinds: readonly number[], count: number): number[][] | undefined {
  if (count === 1) return [kinds.map((_kind, place) => place)];
  const layers = kinds.length / count;
  if (!Number.isInteger(layers) || !sharedOut(kinds, count)) return undefined;
  const stacks: number[][] = Array.from({ length: count }, () => []);
  // What was seen to lead nowhere is not tried again, or a long row would take for ever.
  const dead = new Set<string>();

  /** The first stack is never lower than another: it says what the others must hold. */
  const lay = (at: number): boolean => {
    if (at === kinds.length) return true;
    const word = stacks[0]!.map((place) => kinds[place]!);
    const heights = stacks.map(({ length }) => length);
    const state = `${heights.join()}:${word.slice(Math.min(...heights)).join()}`;
    if (dead.has(state)) return false;
    for (let k = count - 1; k >= 0; k -= 1) {
      const height = heights[k]!;
      // Stacks of one height are one and the same: the first of them stands for all.
      if (k > 0 && heights[k - 1] === height) continue;
      if (height === layers || (k > 0 && word[height] !== kinds[at])) continue;
      stacks[k]!.push(at);
      if (lay(at + 1)) return true;
      stacks[k]!.pop();
    }
    dead.add(state);
    return false;
  };
  return lay(0) ? stacks : undefined;
}

/** Of every kind as many as go evenly on the stacks. */
function sharedOut(kinds: readonly number[], count: number): boolean {
  const found = new Map<number, number>();
  for (const kind of kinds) found.set(kind, (found.get(kind) ?? 0) + 1);
  return [...found.values()].every((many) => many % count === 0);
}
