/**
 * A judge of press loads, written from the rules of the trade and from nothing of the program: it works out every figure of a
 * load again, and for short lists it tries every way to cut them and every way to stack a cut.
 */
import type { Load, NotPressed, Press, PressJob } from '../../src/run/loads.ts';

export interface Answer {
  readonly loads: readonly Load[];
  readonly refused: readonly NotPressed[];
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b), 1e-3);
const over = (is: number, most: number): boolean => is > most && !near(is, most);
const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

type Figures = Readonly<Record<string, number>>;

const oilArea = ({ rams }: Press): number => rams.count * Math.PI * (rams.bore / 2) ** 2;

/** What the stacks come to, and all they break; `turn` is the bodies in the turn they are spread. */
export function weigh(stacks: readonly (readonly PressJob[])[], turn: readonly PressJob[], press: Press) {
  const faults: string[] = [];
  const say = (bad: boolean, fault: string): void => void (bad && faults.push(fault));
  const layers = stacks[0]!.length;
  const same = (a: PressJob, b: PressJob): boolean =>
    a.model === b.model &&
    a.hand === b.hand &&
    a.jointArea === b.jointArea &&
    a.pressure.low === b.pressure.low &&
    a.pressure.high === b.pressure.high &&
    a.blank.low === b.blank.low &&
    a.blank.high === b.blank.high;
  for (const stack of stacks) {
    say(stack.length !== layers || stack.some((job, at) => !same(job, stacks[0]![at]!)), 'stacks not alike');
    say(
      stack.some((job, at) => at > 0 && turn.indexOf(job) < turn.indexOf(stack[at - 1]!)),
      'stack out of turn',
    );
  }
  say(stacks.length > press.sideBySide, 'too many stacks');
  say(new Set(turn.map(({ adhesive }) => adhesive)).size !== 1, 'two adhesives');
  say(over(Math.max(...turn.map(({ width }) => width)) * stacks.length, press.plate.length), 'too large along');
  say(over(Math.max(...turn.map(({ length }) => length)), press.plate.width), 'too large across');

  const bare = sum(stacks[0]!.map(({ blank }) => blank.low)) + (layers + 1) * press.board;
  let filling = 0;
  while (over(press.closedHeight, bare + filling * press.board)) filling += 1;
  const heightLow = bare + filling * press.board;
  const heightHigh = heightLow + sum(stacks[0]!.map(({ blank }) => blank.high - blank.low));
  say(over(heightHigh, press.daylight), 'too high');

  const most = Math.min(press.capacity, Math.min(press.gaugeMost, press.gaugeFull) * oilArea(press));
  const needs = Math.max(...turn.map(({ jointArea, pressure }) => jointArea * pressure.low));
  const bears = Math.min(...turn.map(({ jointArea, pressure }) => jointArea * pressure.high));
  say(needs > bears, 'bodies refuse each other');
  const forceLow = needs * stacks.length;
  say(over(forceLow, most), 'too strong');
  const forceHigh = Math.min(bears * stacks.length, most);

  const assembly = sum(turn.map(({ spread }) => spread)) + turn.length * press.layTime + press.closeTime;
  const closed = assembly - turn[0]!.spread;
  say(
    turn.some(({ openTime }) => over(assembly, openTime)),
    'open too long',
  );
  say(
    turn.some(({ closedTime }) => closedTime !== undefined && over(closed, closedTime)),
    'closed too long',
  );
  const [gaugeLow, gaugeHigh] = [forceLow / oilArea(press), forceHigh / oilArea(press)];
  const [scaleLow, scaleHigh] = [gaugeLow / press.gaugeFull, gaugeHigh / press.gaugeFull];
  const pressTime = Math.max(...turn.map((job) => job.pressTime));
  const rest = Math.max(...turn.map((job) => job.rest));
  const whole = { heightLow, heightHigh, assembly, closed, pressTime, rest };
  const numbers = { ...whole, forceLow, forceHigh, gaugeLow, gaugeHigh, scaleLow, scaleHigh };
  return { faults, filling, numbers };
}

const printed = ({ height, force, gauge, scale, ...of }: Load): Figures => {
  const times = { assembly: of.assembly, closed: of.closed, pressTime: of.pressTime, rest: of.rest };
  const [heightLow, heightHigh, forceLow, forceHigh] = [height.low, height.high, force.low, force.high];
  const [gaugeLow, gaugeHigh, scaleLow, scaleHigh] = [gauge.low, gauge.high, scale.low, scale.high];
  return { ...times, heightLow, heightHigh, forceLow, forceHigh, gaugeLow, gaugeHigh, scaleLow, scaleHigh };
};

const alone = (job: PressJob, press: Press): string[] => weigh([[job]], [job], press).faults;

/** Every fault of the answer but that there are too many loads; none is right. Each order of the list has its own name. */
export function judge(jobs: readonly PressJob[], press: Press, { loads, refused }: Answer): string[] {
  const faults: string[] = [];
  const out = new Set(refused.map(({ order }) => order));
  if (out.size < refused.length) faults.push('refused twice');
  for (const { order, why, is, most } of refused) {
    const job = jobs.find((one) => one.order === order && one.bodies > 0);
    if (!job) faults.push(`${order}: refused and not on the list`);
    else if (!alone(job, press).some((fault) => fault.startsWith(why.replace('-', ' ')) || lateFor(why, fault)))
      faults.push(`${order}: refused as ${why}`);
    if (!over(is, most)) faults.push(`${order}: refused for ${is} against ${most}`);
  }
  const waiting = jobs.filter(({ order }) => !out.has(order)).flatMap((job) => Array<PressJob>(job.bodies).fill(job));
  loads.forEach((load, at) => {
    const named = load.stacks.flat();
    const turn = waiting.splice(0, named.length);
    const byTurn = (list: readonly { order: string; model: string; hand: string }[]): string =>
      list
        .map(({ order, model, hand }) => `${order} ${model} ${hand}`)
        .toSorted()
        .join();
    if (turn.length === 0 || byTurn(named) !== byTurn(turn)) return void faults.push(`load ${at}: not the next bodies`);
    const stacks = load.stacks.map((stack) => stack.map(({ order }) => turn.find((job) => job.order === order)!));
    const found = weigh(stacks, turn, press);
    faults.push(...found.faults.map((fault) => `load ${at}: ${fault}`));
    if (load.adhesive !== turn[0]!.adhesive) faults.push(`load ${at}: adhesive`);
    if (load.filling !== found.filling) faults.push(`load ${at}: filling`);
    const says = printed(load);
    for (const [name, number] of Object.entries(found.numbers))
      if (!near(says[name]!, number)) faults.push(`load ${at}: ${name} ${says[name]} for ${number}`);
    const top = Math.min(press.gaugeMost, press.gaugeFull);
    if (load.force.high > press.capacity || load.gauge.high > top) faults.push(`load ${at}: band over a limit`);
    if (load.force.low > load.force.high) faults.push(`load ${at}: band turned round`);
  });
  if (waiting.length > 0) faults.push(`${waiting.length} bodies in no load`);
  return faults;
}

const lateFor = (why: string, fault: string): boolean => why === 'too-slow' && fault.endsWith('too long');

export const readBadly = (load: Load): boolean => load.scale.low < 0.25 || load.scale.low > 0.75;

/** How good a way to cut a list is: the fewer loads the better, then the fewer read badly, then the fuller the early ones. */
export interface Cutting {
  readonly sizes: readonly number[];
  readonly badly: number;
}

function better(a: Cutting, b: Cutting): boolean {
  if (a.sizes.length !== b.sizes.length) return a.sizes.length < b.sizes.length;
  if (a.badly !== b.badly) return a.badly < b.badly;
  const at = a.sizes.findIndex((size, i) => size !== b.sizes[i]);
  return at >= 0 && a.sizes[at]! > b.sizes[at]!;
}

/** The best way to cut a list, by trying all cuts and all stackings: for short lists. */
export function exhaustive(jobs: readonly PressJob[], press: Press): Cutting {
  const bodies = jobs
    .flatMap((job) => Array<PressJob>(job.bodies).fill(job))
    .filter((job) => !alone(job, press).length);
  let best: Cutting | undefined;
  const known = new Map<string, number>();
  const cut = (at: number, sizes: readonly number[], badly: number): void => {
    if (at === bodies.length && (!best || better({ sizes, badly }, best))) best = { sizes, badly };
    for (let end = at + 1; end <= bodies.length; end += 1) {
      const key = `${at}-${end}`;
      if (!known.has(key)) known.set(key, everyStacking(bodies.slice(at, end), press));
      const cost = known.get(key)!;
      if (cost < Infinity) cut(end, [...sizes, end - at], badly + cost);
    }
  };
  cut(0, [], 0);
  return best!;
}

/** 0 for a load that reads well, 1 for one that reads badly, infinite where no way of stacking is allowed. */
function everyStacking(turn: readonly PressJob[], press: Press): number {
  let cost = Infinity;
  for (let ways = press.sideBySide ** turn.length, way = 0; way < ways; way += 1) {
    const stacks: PressJob[][] = Array.from({ length: press.sideBySide }, () => []);
    turn.forEach((job, at) => stacks[Math.floor(way / press.sideBySide ** at) % press.sideBySide]!.push(job));
    const laid = stacks.filter(({ length }) => length > 0);
    if (laid.some(({ length }) => length !== laid[0]!.length)) continue;
    const { faults, numbers } = weigh(laid, turn, press);
    if (faults.length === 0) cost = Math.min(cost, numbers.scaleLow < 0.25 || numbers.scaleLow > 0.75 ? 1 : 0);
  }
  return cost;
}
