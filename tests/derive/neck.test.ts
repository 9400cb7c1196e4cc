/** The neck of the sample, worked out beside the rules. */
import { expect, test } from 'vitest';
import { checkAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { Facts } from '../../src/facts/facts.ts';
import type { Edit } from '../cases/workspace.ts';
import { edited, sample } from '../cases/workspace.ts';
import { seeded } from '../faults/seeded.ts';
import { valueOf } from './subject.ts';

const [tarn, base] = ['models/tarn.yaml', 'models/base/bolt-on.yaml'];
const checkedWith = (...edits: readonly Edit[]) =>
  checkAll(memoryHost(edits.length > 0 ? edited(edits) : sample())).models[0]!;
const factsWith = (...edits: readonly Edit[]): Facts => checkedWith(...edits).hands[0]!.facts;
const facts = factsWith();
const mm = (nm: number | undefined): number => nm! / 1e6;

test('two points: 10 mm in from the closed end at y 152 and from the edge of the body at y 220', () => {
  expect(valueOf(facts, 'neck.point.tail')).toMatchObject({ x: 0, y: 162 });
  expect(valueOf(facts, 'neck.point.neck').y).toBeCloseTo(210, 1);
  expect(mm(valueOf(facts, 'neck.edge').value)).toBeCloseTo(220, 1);
});

test('the fall between them is its share of the fall over the whole length: 48 of 76 mm', () => {
  const { value, low, high } = valueOf(facts, 'neck.fall');
  expect(value).toBe(0);
  expect(mm(high)).toBeCloseTo((0.1 * 48) / 76, 4);
  expect(mm(low)).toBeCloseTo((-0.1 * 48) / 76, 4);
  expect(valueOf(facts, 'neck.leans').high).toBeCloseTo((Math.atan(0.1 / 76) * 180) / Math.PI, 6);
});

test('with no limits of its own it falls whatever two good depths let pass: 33.4 at one point, 33.8 at the other', () => {
  const free = factsWith({ file: base, find: '    falls: 0 ±0.10\n', replace: '' });
  expect(mm(valueOf(free, 'neck.fall').high)).toBeCloseTo(0.4, 6);
});

test('strings at the bridge: 33.6 + 25.4 + 3.0 − 49.6, and what the pocket leans 162/48 times over', () => {
  const strings = valueOf(facts, 'bridge.string-height');
  expect(mm(strings.value)).toBeCloseTo(12.4, 6);
  const lean = strings.causes!.find(({ cause }) => cause === 'cavities.neck-pocket.falls')!;
  expect(mm(lean.sensitivity * lean.plus)).toBeCloseTo((0.1 * 162) / 76, 3);
});

test('of drawn pairs of readings that pass, none brings the strings further off than is said, and one comes near', () => {
  const chance = seeded(4711);
  const strings = valueOf(facts, 'bridge.string-height');
  const own = strings.causes!.filter(({ cause }) => /neck-pocket\.(floor|falls)/.test(cause));
  const said = own.reduce((sum, { sensitivity, plus }) => sum + Math.abs(sensitivity) * mm(plus), 0);
  const allowed = (0.1 * 48) / 76;
  let most = 0;
  for (let body = 0; body < 20_000; body++) {
    const tail = (chance.next() - 0.5) * 0.4;
    const neck = (chance.next() - 0.5) * 0.4;
    if (Math.abs(neck - tail) > allowed) continue;
    // The straight line through both readings, at the bridge line.
    most = Math.max(most, Math.abs(tail - ((neck - tail) / 48) * 162));
  }
  expect(most).toBeLessThanOrEqual(said);
  expect(most).toBeGreaterThan(0.93 * said);
});

test('a floor that falls 1.5 mm towards the neck: readings, angle and strings go with it', () => {
  const falling = factsWith({ file: base, find: 'falls: 0 ±0.10', replace: 'falls: 1.5 ±0.10' });
  expect(valueOf(falling, 'neck.leans').value).toBeCloseTo((Math.atan(1.5 / 76) * 180) / Math.PI, 4);
  // As a height over the back: lower towards the neck, from the closed end on.
  const tail = valueOf(falling, 'neck.reading.tail');
  const neck = valueOf(falling, 'neck.reading.neck');
  expect(mm(tail.value)).toBeCloseTo(33.6 - (1.5 * 10) / 76, 4);
  expect(mm(neck.value)).toBeCloseTo(33.6 - (1.5 * 58) / 76, 2);
  // 33.6 at y 152, carried on to y 0.
  expect(mm(valueOf(falling, 'bridge.string-height').value)).toBeCloseTo(12.4 + (1.5 * 152) / 76, 4);
});

test('play: 56.00 to 56.15 less 55.75 to 55.85', () => {
  const play = valueOf(facts, 'neck.play');
  expect([mm(play.low), mm(play.high)]).toEqual([0.15, 0.4]);
});

test('screws: two inches less plate and wood', () => {
  const bite = valueOf(facts, 'neck.bite');
  expect(mm(bite.value)).toBeCloseTo(50.8 - 2 - 33.6, 6);
  // The floor ±0.2 at the tail of the pocket, y 152, and what it may fall, ±0.1 over its 76, as far as the screw at y 200.
  expect(mm(bite.low)).toBeCloseTo(50.8 - 2 - (33.6 + 0.2 + (0.1 * (200 - 152)) / 76), 5);
  expect(valueOf(facts, 'neck.screw-holes')).toEqual(['neck-screw']);
});

test('the fingerboard ends 8 mm beyond its 24th fret: 622 ÷ 4 − 8', () => {
  expect(mm(valueOf(facts, 'neck.board-end').value)).toBeCloseTo(622 / 4 - 8, 5);
});

test('saddles: 2.5 and 5.0 behind the line; the middle of their travel 1 behind studs at y −3', () => {
  expect(mm(valueOf(facts, 'saddle.treble.from-middle').value)).toBeCloseTo(2.5 - 4, 6);
  expect(mm(valueOf(facts, 'saddle.bass.from-middle').value)).toBeCloseTo(5 - 4, 6);
  // Studs on a slant: the bass side lies left, and 26 of 37 of the way out.
  const slanted = factsWith({ file: tarn, find: 'at: { x: -37, y: -3 }', replace: 'at: { x: -37, y: -5 }' });
  expect(mm(valueOf(slanted, 'saddle.bass.from-middle').value)).toBeCloseTo(5 - 4 - 1 - 26 / 37, 3);
});

test('a neck that runs through has no pocket: its strings count from the back', () => {
  const through = factsWith(
    { file: base, find: 'kind: bolt-on', replace: 'kind: through' },
    { file: base, find: '  pocket: neck-pocket\n', replace: '' },
    { file: base, find: '  width: 55.8 ±0.05\n  board: 6.0\n', replace: '' },
    { file: base, find: '  screws: { row: neck-8, plate: 2.0 }\n', replace: '' },
    {
      file: tarn,
      find: 'heel: 25.4 ±0.2, strings: 3.0 ±0.3, angle: 0 deg ±0.2',
      replace: 'heel: 59 ±0.2, strings: 3 ±0.3',
    },
  );
  const strings = valueOf(through, 'bridge.string-height');
  expect(mm(strings.value)).toBeCloseTo(59 + 3 - 49.6, 6);
  // The body at its crown, the heel, the strings.
  expect(mm(strings.high! - strings.value)).toBeCloseTo(0.12 + 0.2 + 0.3, 6);
});

test('a through neck with a pocket, and a bolt-on without one, are refused at their line', () => {
  const ids = (...edits: readonly Edit[]) => checkedWith(...edits).findings.map(({ id }) => id);
  expect(ids({ file: base, find: 'kind: bolt-on', replace: 'kind: through' })).not.toEqual([]);
  expect(ids({ file: base, find: '  pocket: neck-pocket\n', replace: '' })).not.toEqual([]);
});

test('a pocket that is a cavity of the back is an error, told and not thrown', () => {
  const model = checkedWith({ file: base, find: 'pocket: neck-pocket', replace: 'pocket: controls' });
  expect(model.findings.map(({ id }) => id)).toContain('neck-screws-missing');
  expect(model.cards).toEqual([]);
});

test('screws go through what lies under them: a round of the back at the mouth of the pocket changes nothing', () => {
  const round: Edit = {
    file: tarn,
    find: 'crown: { from: 95 } }',
    replace: 'crown: { from: 95 } }\nedges: { back: { round: 6, cutter: ball-20 } }',
  };
  expect(mm(valueOf(facts, 'neck.through').value)).toBeCloseTo(33.6, 6);
  expect(valueOf(factsWith(round), 'neck.through')).toEqual(valueOf(facts, 'neck.through'));
});
