/**
 * Ten thousand orders put into sequence, with dues of every sort. How long it takes passes or fails nothing: what is read off is
 * the table. What is asserted is that the plans keep the rules.
 */
import { cpus } from 'node:os';
import { afterAll, expect, test } from 'vitest';
import { sequenced, timedIn } from '../../src/run/sequence.ts';
import { seeded } from '../faults/seeded.ts';
import { faultsOf, listBy } from '../run/lists.ts';

const ORDERS = 10_000;
const ROUNDS = 3;
const COLUMNS = ['list, min', 'plan, min', 'left, %', 'time, ms'] as const;
const table: { readonly list: string; readonly figures: readonly string[] }[] = [];

afterAll(() => {
  const lines = [{ list: 'list', figures: COLUMNS }, ...table].map(
    ({ list, figures }) => list.padEnd(24) + figures.map((figure) => figure.padStart(14)).join(''),
  );
  const machine = `${cpus()[0]!.model.trim()}, node ${process.version}, one thread; median of ${ROUNDS} rounds; ${ORDERS} orders`;
  process.stdout.write(`\n${[...lines, machine].join('\n')}\n\n`);
});

const cases = [15, ORDERS].flatMap((setUps) =>
  (['none', 'loose', 'mixed', 'tight'] as const).map((dues) => ({ dues, setUps })),
);

test.each(cases)('$dues, $setUps set-ups', ({ dues, setUps }) => {
  const sort = { orders: ORDERS, stations: 12, setUps, texts: 5, work: 40, shift: 480, dues };
  const { jobs, floor } = listBy(seeded(setUps), sort);
  const times: number[] = [];
  let plan = timedIn(jobs, floor);
  const own = plan.changeoverMinutes;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    plan = sequenced(jobs, floor);
    times.push(performance.now() - start);
  }
  const median = times.toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)]!;
  const figures = [own, plan.changeoverMinutes, (100 * plan.changeoverMinutes) / own, median];
  table.push({ list: `${dues}, ${setUps} set-ups`, figures: figures.map((figure) => figure.toFixed(1)) });
  expect(faultsOf({ jobs, floor }, plan)).toEqual([]);
});
