/**
 * A list of orders to its run, whole: read, held against releases, put into sequence, pressed, counted. How long it takes passes
 * or fails nothing: what is read off is the table, and how ten thousand lines stand to a thousand of the same kind.
 */
import { cpus } from 'node:os';
import { afterAll, expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { enter } from '../../src/release/enter.ts';
import { releaseAct } from '../../src/release/plan.ts';
import { freeze, openReleases, recordFile } from '../../src/releases.ts';
import type { Released } from '../../src/releases.ts';
import { makeRun } from '../../src/run-sheets.ts';
import { demoFiles } from '../cards/demo.ts';
import { seeded } from '../faults/seeded.ts';

const ON = '2026-11-30';
const ROUNDS = 3;
const table: { readonly orders: number; readonly bodies: string; readonly ms: number }[] = [];

const host = memoryHost(demoFiles(), { today: ON });
const compiled = compileAll(host, ON);
for (const { id } of compiled.models) {
  const { release, assets } = freeze(host, compiled, id, ON);
  const { path, text, sha256 } = recordFile(release);
  const asked = { on: ON, name: 'T. Vael', reason: 'First release', from: { date: ON } };
  enter(host, () => releaseAct(release, asked, { path, sha256 }), { path, text, assets });
}

/** Orders of all models, due within three years of working days. */
function listOf(orders: number): Uint8Array {
  const chance = seeded(orders);
  const finishes = new Map(compiled.models.map(({ id, cards }) => [id, cards[0]!.card.key.finishes]));
  const lines = Array.from({ length: orders }, (_, i) => {
    const model = chance.pick([...finishes.keys()]);
    const due = `${chance.pick([2027, 2028, 2029])}-0${chance.pick([1, 3, 6, 9])}-1${chance.pick([1, 4, 7])}`;
    return `${100_000 + i},${model},${chance.pick([...finishes.get(model)!])},,right,${chance.pick([1, 2, 3, 4])},${due},`;
  });
  return new TextEncoder().encode(`order,model,finish,grade,hand,quantity,due,lead\n${lines.join('\n')}\n`);
}

afterAll(() => {
  const [small, large] = table;
  const lines = table.map(
    ({ orders, bodies, ms }) => `${orders} lines, ${bodies} bodies`.padEnd(32) + `${ms.toFixed(0)} ms`,
  );
  const ratio = small && large ? `ten times the lines: ${(large.ms / small.ms).toFixed(1)} times the time` : '';
  const machine = `${cpus()[0]!.model.trim()}, node ${process.version}, one thread; median of ${ROUNDS} rounds`;
  process.stdout.write(`\n${[...lines, ratio, machine].join('\n')}\n\n`);
});

test.each([1000, 10_000])('%d lines', (orders) => {
  const bytes = listOf(orders);
  const times: number[] = [];
  let bodies = '';
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    // Releases are opened anew each time, as a command does.
    const { told, refused } = makeRun('orders.csv', bytes, openReleases(host, ON) as Released, compiled, ON);
    times.push(performance.now() - start);
    expect(refused).toEqual([]);
    expect(told.orders).toBe(String(orders));
    ({ bodies } = told);
  }
  table.push({ orders, bodies, ms: times.toSorted((a, b) => a - b)[Math.floor(ROUNDS / 2)]! });
});
