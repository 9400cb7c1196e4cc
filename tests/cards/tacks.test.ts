/** What the cards say of tacks: drawn again, left in the joint, left in the waste, or none at all. */
import { describe, expect, test } from 'vitest';
import type { Arg, Card, Line } from '../../src/cards/card.ts';
import type { Compiled } from '../../src/compile.ts';
import { compileAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { Edit } from '../cases/workspace.ts';
import { edited } from '../cases/workspace.ts';
import { compileDemo } from './demo.ts';

const file = 'models/tarn.yaml';
const plant = 'models/plant/plant.yaml';
const own =
  'tacks:\n  pin-a: { at: { x: -80, y: 150 }, kind: pin-14 }\n  pin-b: { at: { x: -70, y: -130 }, kind: pin-14 }\n';
const ofLine: Edit = { file, find: own, replace: '' };
const byLine: Edit = {
  file: plant,
  find: 'rough-line: 6\n',
  replace: 'rough-line: 14\n    tacks: { kind: pin-14, count: 4 }\n',
};

const sampleWith = (...edits: readonly Edit[]): Compiled => compileAll(memoryHost(edited(edits)), '2026-11-25');

function cardOf({ models }: Compiled, model: string, station: string): Card {
  const found = models.find(({ id }) => id === model)!;
  expect(found.findings).toEqual([]);
  return found.cards.find(({ card }) => card.key.station === station && card.key.hand === 'right')!.card;
}

/** A sentence with the texts of its numbers. */
function told({ say, with: args }: Line): string {
  const text = (arg: Arg): string => (arg.kind === 'figure' ? arg.text : arg.kind === 'line' ? arg.say : arg.kind);
  return [say, ...Object.entries(args).map(([name, arg]) => `${name}=${text(arg)}`)].join(' ');
}

const stepsOf = (card: Card, about: RegExp) => card.steps.map(told).filter((step) => about.test(step));
const METAL = /^trim-sawing\.step\.metal/;
const TACKS = /^lamination\.step\.(pins|tack|strip|no-tacks|count)/;

describe('tacks on the cards', () => {
  test('the demo: driven into the waste, counted in, counted out before the trim saw', () => {
    const demo = compileDemo();
    const card = cardOf(demo, 'tarn', 'lamination');
    expect(stepsOf(card, TACKS)).toEqual([
      'lamination.step.tack count=6 kind=name material=lamination.material.brass length=30 face=lamination.face.cap-face',
      'lamination.step.strip kind=name from=6.8 to=9.9',
      'lamination.step.count-out kind=name count=6 when=lamination.when.after-press',
    ]);
    expect(card.tables[0]!.rows).toHaveLength(6);
    const marks = card.drawings[0]!.marks;
    expect(marks.filter(({ kind }) => kind === 'point')).toHaveLength(6);
    expect(marks.filter((mark) => mark.kind === 'region' && mark.hatch === 'tack-zone')).toHaveLength(1);
    const trim = cardOf(demo, 'tarn', 'trim-sawing');
    expect(stepsOf(trim, METAL)).toEqual(['trim-sawing.step.metal count=6']);
    expect(trim.checks.some(({ what }) => what.say === 'trim-sawing.check.tacks')).toBe(true);
  });

  test('the sample: pins in the joint stay, and the sign-off knows of them', () => {
    const compiled = sampleWith();
    const card = cardOf(compiled, 'tarn', 'lamination');
    expect(stepsOf(card, TACKS)).toEqual([
      'lamination.step.pins count=2 kind=name material=lamination.material.brass length=14 bite=6',
      'lamination.step.count-stay count=2',
    ]);
    // They stand before the glue is spread.
    const ids = card.steps.map(({ say }) => say);
    expect(ids.indexOf('lamination.step.pins')).toBeLessThan(ids.indexOf('lamination.step.spread'));
    const trim = cardOf(compiled, 'tarn', 'trim-sawing');
    expect(stepsOf(trim, METAL)).toEqual([]);
    expect(trim.checks.some(({ what }) => what.say === 'trim-sawing.check.tacks')).toBe(false);
    const signed = cardOf(compiled, 'tarn', 'sign-off').checks.map(({ what }) => told(what));
    expect(signed).toContain('sign-off.check.metal-pins count=2');
  });

  test('pins left in the waste are said at the trim saw', () => {
    const trim = cardOf(sampleWith(ofLine, byLine), 'tarn', 'trim-sawing');
    expect(stepsOf(trim, METAL)).toEqual(['trim-sawing.step.metal-stays count=4']);
  });

  test('a line without tacks says that only go-pins hold the cap', () => {
    const compiled = sampleWith(ofLine);
    const card = cardOf(compiled, 'tarn', 'lamination');
    expect(stepsOf(card, TACKS)).toEqual(['lamination.step.no-tacks']);
    expect(card.tables).toEqual([]);
    expect(card.keyNumbers.map(({ label }) => label.say)).not.toContain('lamination.key.tacks');
    expect(stepsOf(cardOf(compiled, 'tarn', 'trim-sawing'), METAL)).toEqual([]);
  });
});
