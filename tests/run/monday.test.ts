/** The demo list, forty lines of which ten are wrong, on a floor where every demo model is in force. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import type { Compiled } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { enter } from '../../src/release/enter.ts';
import { releaseAct } from '../../src/release/plan.ts';
import { freeze, openReleases, recordFile } from '../../src/releases.ts';
import type { Released } from '../../src/releases.ts';
import { makeRun } from '../../src/run-sheets.ts';
import type { RunMade } from '../../src/run-sheets.ts';
import { jobsOf } from '../../src/run/jobs.ts';
import { jobOf, pressingOf, pressOf } from '../../src/run/pressing.ts';
import { sequenced } from '../../src/run/sequence.ts';
import { demoFiles, root } from '../cards/demo.ts';
import { judge } from './judge-loads.ts';
import { faultsOf } from './lists.ts';

const ON = '2026-11-30';
const FILE = 'models/orders/monday.csv';

let made: RunMade;
let compiled: Compiled;
let opened: Released;

beforeAll(() => {
  const host = memoryHost(demoFiles(), { today: ON });
  compiled = compileAll(host, ON);
  const asked = { on: ON, name: 'T. Vael', reason: 'First release', from: { date: ON } };
  for (const { id } of compiled.models) {
    const { release, assets } = freeze(host, compiled, id, ON);
    const { path, text, sha256 } = recordFile(release);
    const entered = enter(host, () => releaseAct(release, asked, { path, sha256 }), { path, text, assets });
    expect(entered).toHaveProperty('entered');
  }
  opened = openReleases(host, ON) as Released;
  made = makeRun(FILE, readFileSync(join(root, FILE)), opened, compiled, ON);
}, 300_000);

test('ten lines are refused, each for its own reason, and thirty are run', () => {
  expect(made.refused.map(({ line, id }) => `${line} ${id}`)).toEqual([
    '6 order-unknown-model',
    '14 order-too-good',
    '16 order-finish',
    '19 order-hand',
    '23 order-unclear',
    '26 order-too-poor',
    '29 order-unclear',
    '32 order-grade-unknown',
    '36 order-unclear',
    '38 order-lead',
  ]);
  expect(made.run.listed).toBe(40);
  // Bodies of the thirty, as they stand in the list.
  expect([made.told.orders, made.told.bodies]).toEqual(['30', '52']);
  expect(new Set(made.run.lines.map(({ order }) => order.number)).size).toBe(30);
});

test('the sequence keeps its rule and saves changeovers', () => {
  const { floor } = made.run;
  // As the list has them.
  const admitted = made.run.lines.toSorted((a, b) => a.order.places.order.start - b.order.places.order.start);
  const jobs = jobsOf(admitted, floor, ON);
  const clock = {
    changeover: new Map(floor.stations.map(({ id, changeover }) => [id, changeover ?? 0])),
    shift: floor.shift!,
  };
  const plan = sequenced(jobs, clock);
  expect(faultsOf({ jobs, floor: clock }, plan)).toEqual([]);
  expect(plan.order).toEqual(made.run.lines.map(({ order }) => order.number));
  const { changeovers, asListed, lines } = made.run;
  expect(changeovers.minutes).toBeLessThan(asListed.minutes / 3);
  expect(lines.filter(({ late }) => late > 0)).toEqual([]);
  // Every set-up is counted, the first at a station too, here and in the hours of the stations.
  const setUps = lines.flatMap(({ setUp }) => setUp);
  expect(setUps).toHaveLength(changeovers.count);
  const { stations, machines } = made.run.hours;
  expect(stations.reduce((sum, one) => sum + one.changeovers, 0)).toBe(changeovers.count);
  // One router cuts chambers, backs and tops.
  expect(machines.map(({ machine, stations: sharing }) => [machine, sharing.length])).toEqual([['router', 3]]);
  expect(made.run.hours.bottleneck).toBe('router');
});

describe('the loads of the press', () => {
  test('are judged right, of one model and hand each', () => {
    const { lines, pressing } = made.run;
    const capped = lines.filter(({ by }) => by.number('joint.area') !== undefined);
    expect(pressing.refused).toEqual([]);
    for (const by of new Set(capped.map((line) => line.by))) {
      const loads = pressing.loads.filter((load) => load.by === by);
      const jobs = capped.filter((line) => line.by === by).map((line) => jobOf(line));
      const plain = loads.map(
        ({ by: _by, reading: _reading, centre: _centre, daylight: _light, open: _open, ...load }) => load,
      );
      expect(judge(jobs, pressOf(by), { loads: plain, refused: [] })).toEqual([]);
    }
    const pressed = pressing.loads.flatMap(({ stacks }) => stacks.flat());
    expect(pressed).toHaveLength(capped.reduce((sum, { order }) => sum + order.quantity, 0));
  });

  test('are set to what the card at the press says', () => {
    for (const { by, stacks, reading } of made.run.pressing.loads) {
      const card = by.cards.find(({ key }) => key.station === 'press')!;
      const fact = `press.${stacks.length === 1 ? 'stack' : 'row'}.gauge`;
      const said = card.limits.find((one) => one.fact === fact)!.text;
      const [low, high] = [...said.matchAll(/\d+\.\d+/g)].map(([number]) => Number(number));
      expect([Math.round(reading.low / 1e4) / 100, Math.round(reading.high / 1e4) / 100]).toEqual([low, high]);
    }
  });
});

test('what no reading of the gauge lies inside is not given, neither wider nor nearest', () => {
  const capped = made.run.lines.filter(({ by }) => by.number('joint.area') !== undefined);
  const by = capped[0]!.by;
  const coarse = {
    ...by,
    number: (id: string) => {
      const number = by.number(id);
      return number && /^plant\.gauges\..*\.resolution$/.test(id) ? { ...number, value: 5e6 } : number;
    },
  };
  const orders = capped.filter((line) => line.by === by);
  const { loads, refused } = pressingOf(orders.map((line) => ({ ...line, by: coarse })));
  expect(loads).toEqual([]);
  expect(new Set(refused)).toEqual(new Set(orders.map(({ order }) => order.number)));
});

test('a plant that gives no shift and no times is told nothing of shifts, and its list is run', () => {
  const { lines, floor } = made.run;
  const bare = {
    stations: floor.stations.map(({ id, name }) => ({ id, name, perBody: undefined, changeover: undefined })),
    shift: undefined,
  };
  const jobs = jobsOf(lines, bare, ON);
  const plan = sequenced(jobs, { changeover: new Map(), shift: Infinity });
  expect(faultsOf({ jobs, floor: { changeover: new Map(), shift: Infinity } }, plan)).toEqual([]);
  expect(plan.timed.every(({ done }) => done === 0)).toBe(true);
});

test('wood picked is what the traces of the bodies say, body by body', () => {
  const BOARD_FOOT = 0.002359737216;
  const wanted = new Map<string, number>();
  for (const { order, by } of made.run.lines)
    for (const part of ['cap', 'back', 'slab'] as const) {
      const each = by.number(`blank.${part}.bought`)?.value;
      const species = by.text(`timber.${part}.species`);
      if (each === undefined || species === undefined) continue;
      const title = by.text(`plant.species.${species}.title`)!;
      wanted.set(title, (wanted.get(title) ?? 0) + each * order.quantity);
    }
  expect(made.told.timber.map(({ species }) => species).toSorted((a, b) => (a < b ? -1 : 1))).toEqual(
    [...wanted.keys()].toSorted((a, b) => (a < b ? -1 : 1)),
  );
  for (const { species, boardFeet } of made.told.timber) {
    const short = wanted.get(species)! / BOARD_FOOT - Number(boardFeet);
    expect(short).toBeLessThanOrEqual(1e-9);
    // Each row is rounded up to a tenth, and the total is that of the rows.
    const rows = made.told.picks.filter((pick) => pick.species === species);
    expect(short).toBeGreaterThan(-0.1 * rows.length - 1e-9);
    const sum = rows.reduce((all, pick) => all + Math.round(10 * Number(pick.boardFeet)), 0);
    expect(Math.round(10 * Number(boardFeet))).toBe(sum);
  }
});
