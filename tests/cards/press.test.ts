/** The card of the press where stacks stand side by side, where one stands alone, and where only one body is in time. */
import { expect, test } from 'vitest';
import type { Card, Line } from '../../src/cards/card.ts';
import { compileAll, printCompiled } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { edited, sample } from '../cases/workspace.ts';

const plant = 'models/plant/plant.yaml';

/** The press card and its printed page, with texts of the plant replaced. */
function pressed(...edits: readonly (readonly [find: string, replace: string])[]) {
  const files = edits.length > 0 ? edited(edits.map(([find, replace]) => ({ file: plant, find, replace }))) : sample();
  const host = memoryHost(files);
  const compiled = compileAll(host, '2026-11-25');
  const { card } = compiled.models[0]!.cards.find((one) => one.card.key.station === 'press')!;
  const printed = printCompiled(host, compiled, '2026-11-25');
  expect(printed.findings).toEqual([]);
  const page = [...printed.files].find(([path]) => path.endsWith('tarn/press.html'))![1];
  return { card, page: String(page), sheet: compiled.sheets.find(({ station }) => station.id === 'press')! };
}

const steps = ({ steps: lines }: Card): string[] => lines.map(({ say }) => say);
const labels = ({ keyNumbers }: Card): string[] => keyNumbers.map(({ label }) => label.say);
const step = (card: Card, id: string): Line => card.steps.find(({ say }) => say === id)!;

test('the gauge comes first, as the manometer of the station reads it, and beside it that it is computed', () => {
  const { card, page } = pressed();
  expect(labels(card).slice(0, 3)).toEqual(['press.key.gauge', 'press.key.gauge-row', 'press.key.bodies-row']);
  expect(card.keyNumbers[0]!.value).toMatchObject({ kind: 'limits', fact: 'press.stack.gauge', unit: 'MPa' });
  expect(card.keyNumbers[1]!.value).toMatchObject({ kind: 'limits', fact: 'press.row.gauge', unit: 'MPa' });
  expect(step(card, 'press.step.verify').with['most']).toMatchObject({ fact: 'press.gauge-most', text: '14' });
  expect(page).toContain('verify against the press’s own maximum');
  expect(page).toContain('friction');
});

test('one stack alone: one gauge, one number of bodies, nothing side by side', () => {
  const { card, sheet } = pressed(
    ['side-by-side: 2', 'side-by-side: 1'],
    ['    closed-time: 7 min\n', ''],
    ['gauge-full-scale: 18 MPa', 'gauge-full-scale: 20 MPa'],
  );
  expect(labels(card)).not.toContain('press.key.gauge-row');
  expect(labels(card)).toContain('press.key.bodies');
  expect(steps(card)).not.toContain('press.step.beside');
  expect(steps(card)).toEqual(expect.arrayContaining(['press.step.gauge', 'press.step.open-time']));
  expect(card.tables[0]!.rows).toHaveLength(1);
  expect(sheet.rows[0]!.cells[1]).toMatchObject({ say: 'common.none' });
});

test('time for one body only: nothing is said of stacks side by side', () => {
  const { card } = pressed(['spread-time: 60 s', 'spread-time: 300 s'], ['closed-height: 120', 'closed-height: 70']);
  expect(card.keyNumbers[1]!.value).toMatchObject({ fact: 'press.stack.bodies', text: '1' });
  expect(steps(card)).not.toContain('press.step.beside');
});
