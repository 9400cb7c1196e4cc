/** First-piece reports of the demo catalogue say what its cards say. */
import { describe, expect, test } from 'vitest';
import type { FirstPieceReport } from '../../src/cards/card.ts';
import { firstPieceOf } from '../../src/cards/first-piece.ts';
import { compileDemo } from './demo.ts';

const compiled = compileDemo();
const { plant } = compiled.checked.workspace;
const reports = (id: string): readonly FirstPieceReport[] =>
  compiled.models.find((model) => model.id === id)!.cards.flatMap((made) => firstPieceOf(made, plant) ?? []);
const of = (id: string, station: string) =>
  reports(id).find(({ key }) => key.station === station && key.hand === 'right')!;

test('is for every station that measures a piece, under the machine its card names', () => {
  const machines = reports('voe').map(({ key, machine }) => [key.station, machine?.id]);
  expect(machines).toEqual([
    ['jointing', 'jointer'],
    ['edge-gluing', 'edge-gluer'],
    ['planing', 'planer'],
    ['picking', undefined],
    ['rough-sawing', 'rough-saw'],
    ['sizing', 'wide-belt'],
    ['chambering', 'router'],
    ['lamination', 'spreader'],
    ['press', 'press'],
    ['trim-sawing', 'trim-saw'],
    ['machining-back', 'router'],
    ['machining-top', 'router'],
    ['sign-off', undefined],
  ]);
});

describe.each(compiled.models.map(({ id }) => id))('of %s', (id) => {
  const { cards } = compiled.models.find((model) => model.id === id)!;

  test('every check, gauge, way out and code is that of the card', () => {
    for (const report of reports(id)) {
      const { card, code } = cards.find(
        (made) => made.card.key.station === report.key.station && made.card.key.hand === report.key.hand,
      )!;
      expect(report.code).toBe(code);
      expect(report.decides).toEqual(card.decides);
      expect(report.whenOut).toEqual(card.whenOut);
      expect(report.checks.map(({ what, boxes, gauge }) => [what, boxes, gauge])).toEqual(
        card.checks.map(({ what, boxes, gauge }) => [what, boxes, gauge]),
      );
      for (const [i, { limits }] of report.checks.entries()) {
        const { low, high, unit } = card.checks[i]!.limits ?? {};
        expect([limits?.low, limits?.high, limits?.unit]).toEqual([low, high, unit]);
      }
      const named = new Set(card.checks.flatMap(({ gauge }) => (gauge.kind === 'name' ? [gauge.text] : [])));
      expect(report.gauges.map(({ text }) => text)).toEqual([...named]);
    }
  });
});

test('at the router the set-up is that of the set-up sheet, cutters in their order', () => {
  const { setUp, cutters } = of('tarn', 'machining-top');
  expect(setUp.map(({ what }) => what.say)).toEqual([
    'running.sheet-row.fixture',
    'running.sheet-row.program',
    'running.sheet-row.vacuum',
    'running.sheet-row.zero',
    'running.sheet-row.dry-run',
  ]);
  expect(setUp[1]!.must).toMatchObject({ kind: 'name', text: '4120' });
  const names = cutters!.rows.map(([name]) => (name?.kind === 'name' ? name.text : ''));
  const inOrder = ['Ball cutter 20', 'End mill 16 long', 'End mill 8', 'End mill 12 long', 'Drill 11', 'Drill 9.5'];
  // Each spindle has its own.
  expect(names).toEqual(inOrder.flatMap((name) => [name, name]));
});

test('elsewhere it is what is in hand besides gauges', () => {
  const { setUp, cutters } = of('tarn', 'lamination');
  expect(setUp.map(({ what }) => what.say)).toEqual(['tool.adhesive', 'tool.machine']);
  expect(cutters).toBeUndefined();
});
