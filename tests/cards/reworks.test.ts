/** What may be done with a piece that is out: what the cards say of it, and what else a part serves. */
import { describe, expect, test } from 'vitest';
import type { Arg, Card, StationSheet } from '../../src/cards/card.ts';
import { compileAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { Edit } from '../cases/workspace.ts';
import { edited } from '../cases/workspace.ts';

function compiled(edits: readonly Edit[] = []) {
  const whole = compileAll(memoryHost(edited(edits)), '2026-11-25');
  const findings = whole.models.flatMap((model) => model.findings.map(({ id, what }) => `${id}: ${what}`));
  const card = (station: string): Card =>
    whole.models[0]!.cards.find(({ card: one }) => one.key.station === station && one.key.hand === 'right')!.card;
  return { whole, findings, card };
}

/** All that an argument is made of, in order: ids of sentences, names, numbers. */
function parts(arg: Arg): readonly string[] {
  if (arg.kind === 'line') return [arg.say, ...Object.values(arg.with).flatMap(parts)];
  if (arg.kind === 'series') return arg.items.flatMap(parts);
  if (arg.kind === 'limits') return [`${arg.low} ${arg.high} ${arg.unit}`];
  return [arg.kind === 'figure' ? `${arg.text} ${arg.unit}` : arg.text];
}

describe('ways back', () => {
  test('too thin: down to the low limit less what the plant lets pass, rounded up to nothing', () => {
    // Cap 16.40 ±0.10 sized; planed 0.80 ±0.15 over it: 17.20, so 17.05 at least, and 0.02 less may pass.
    const line = compiled().card('planing').whenOut.at(-1)!;
    expect(parts(line)).toEqual(
      expect.arrayContaining([
        'rework.page-one',
        'rework.out.thin',
        'rework.thing.cap',
        '17.03 mm',
        'rework.thing.back',
      ]),
    );
  });

  test('how, then where to, under what, and who decides, in a table of that station alone', () => {
    const { card } = compiled();
    const tables = (station: string) => card(station).tables.filter(({ title }) => title.say === 'rework.table');
    expect(tables('machining-top')).toHaveLength(1);
    expect(tables('machining-top')[0]!.rows.map((row) => row.flatMap(parts))).toEqual([
      [
        'rework.out.deep',
        'rework.beyond',
        '0.5 mm',
        'Glue a shim in',
        'rework.same-station',
        'rework.any-finish',
        'Mill lead',
      ],
    ]);
    expect(tables('trim-sawing')).toEqual([]);
  });

  test('a way that needs a finish is there only where the model has such a one', () => {
    const ways = (edits: readonly Edit[]) =>
      compiled(edits)
        .card('sign-off')
        .whenOut.flatMap(parts)
        .filter((one) => one === 'rework.out.surface');
    expect(ways([])).toHaveLength(1);
    expect(
      ways([
        { file: 'models/plant/plant.yaml', find: 'title: Black, kind: opaque', replace: 'title: Black, kind: clear' },
      ]),
    ).toEqual([]);
  });

  test('the rack lists them all, each once, and has the tag', () => {
    const { tables } = compiled().card('set-aside');
    const [list, found, decided] = tables;
    expect(list!.rows.map((row) => parts(row[0]!))).toEqual([
      ['Planing'],
      ['Machining, back', 'Machining, top'],
      ['Sign-off'],
    ]);
    expect([found, decided].map((table) => table!.place)).toEqual(['form', 'form']);
  });

  test.each([
    ['planing leaves the belt enough', 'beyond: 0.02', 'beyond: 0.10', []],
    ['planing leaves the belt too little', 'beyond: 0.02', 'beyond: 0.11', ['rework-too-far']],
    // The controls have 5.0 ±0.4 and 0.08 of the machine: the line wants its least floor under them.
    ['a shim over enough wood', 'out: deep, beyond: 0.5', 'out: deep, beyond: 1.5', []],
    ['a shim over too little', 'out: deep, beyond: 0.5', 'out: deep, beyond: 1.7', ['rework-too-far']],
  ])('%s', (_, find, replace, expected) => {
    const { findings } = compiled([{ file: 'models/plant/plant.yaml', find, replace }]);
    expect([...new Set(findings.map((one) => one.replace(/:.*/s, '')))], findings.join('\n')).toEqual(expected);
  });
});

test('what the mend names passes', () => {
  const at = (file: string, find: string, replace: string) => compiled([{ file, find, replace }]).findings;
  const plant = 'models/plant/plant.yaml';
  for (const [find, far] of [
    ['beyond: 0.02', 'beyond: 0.40'],
    ['out: deep, beyond: 0.5', 'out: deep, beyond: 3.0'],
  ] as const) {
    const mends = compileAll(memoryHost(edited([{ file: plant, find, replace: far }])), '2026-11-25')
      .models[0]!.findings.filter(({ id }) => id === 'rework-too-far')
      .map(({ mend }) => Number(/Let (\d+\.\d+) mm pass/.exec(mend)![1]));
    expect(mends.length).toBeGreaterThan(0);
    expect(at(plant, find, far.replace(/[\d.]+$/, String(Math.min(...mends))))).toEqual([]);
  }
});

describe('what else a part serves', () => {
  const other = (more: string): Edit => ({
    file: 'models/tern.yaml',
    text: `model: tern\ntitle: Tern\nbased-on: tarn\nunits: mm\nsetups: { back: { program: '4310' }, top: { program: '4320' } }\nhanded: { left: { setups: { back: { program: '4311' }, top: { program: '4321' } } } }\n${more}`,
  });
  const cellsOf = (sheet: StationSheet, model: string) =>
    sheet.rows.find((row) => row.model.text === model && row.key.hand === 'right')!.cells.map(parts);
  function sheetOf(more: string) {
    const { whole, findings } = compiled([other(more)]);
    // Limba moves by a disputed amount: a caution of its own.
    expect(findings.filter((one) => !one.startsWith('movement-in-dispute'))).toEqual([]);
    return whole.sheets.find(({ station }) => station.id === 'set-aside')!;
  }

  test('a model with a thinner cap of the same wood, with the limits it must still reach', () => {
    const sheet = sheetOf('stages: { cap: { sized: 16.38 ±0.10 } }\n');
    expect(cellsOf(sheet, 'Tarn')[0]).toEqual(['set-aside.serves', 'Tern', 'part.cap', '16.28 16.48 mm']);
    // The backs are alike, and the thicker cap is no help to the thinner one.
    expect(cellsOf(sheet, 'Tarn')[1]).toEqual(['set-aside.serves-none']);
    expect(cellsOf(sheet, 'Tern')[0]).toEqual(['set-aside.serves-none']);
  });

  test('not where the wood is another', () => {
    const thinner = 'stages: { back: { sized: 34.38 ±0.10 } }\n';
    expect(cellsOf(sheetOf(thinner), 'Tarn')[1]).toContain('Tern');
    const limba = `${thinner}timber: { back: { species: limba, stock: limba-6-4 } }\n`;
    expect(cellsOf(sheetOf(limba), 'Tarn')[1]).toEqual(['set-aside.serves-none']);
  });
});
