/** Room, depth and holes of parts, against numbers worked out by hand. The sample’s own are in its files. */
import { describe, expect, test } from 'vitest';
import { checkAll } from '../../src/compile.ts';
import { insideOf } from '../../src/facts/fitted.ts';
import type { Facts } from '../../src/facts/facts.ts';
import type { Polygon } from '../../src/geometry/polygon.ts';
import { clearBetween, roomInside } from '../../src/geometry/inside.ts';
import { shapePolygon } from '../../src/geometry/shape.ts';
import type { Shape } from '../../src/geometry/shape.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { Hand } from '../../src/facts/subject.ts';
import { compileDemo } from '../cards/demo.ts';
import type { Edit } from '../cases/workspace.ts';
import { edited } from '../cases/workspace.ts';
import { mmOf, valueOf } from './subject.ts';

const TARN = 'models/tarn.yaml';
const PLANT = 'models/plant/plant.yaml';

/** Facts of the sample with edits made. */
function facts(edits: readonly Edit[] = [], hand: Hand = 'right'): Facts {
  const [model] = checkAll(memoryHost(edited(edits))).models;
  return model!.hands.find(({ subject }) => subject.hand === hand)!.facts;
}

const change = (file: string, find: string, replace: string): Edit => ({ file, find, replace });

function polygon(shape: Shape, xMm = 0, yMm = 0, angleDeg = 0): Polygon {
  const made = shapePolygon(shape, { xMm, yMm, angleDeg }, 0.001);
  if (!made.ok) throw new Error(made.what);
  return made.polygon;
}

const box = (widthMm: number, lengthMm: number, cornerMm = 0): Shape => ({
  kind: 'rectangle',
  widthMm,
  lengthMm,
  cornerMm,
});

describe('room of one outline inside another', () => {
  test('a box in a box: the narrow side counts', () => {
    // 88 × 38 round 85 × 35: 1.5 on every side.
    expect(roomInside([polygon(box(85, 35))], [polygon(box(88, 38))]).mm).toBeCloseTo(1.5, 6);
    // Moved 1 across: 0.5 is left on that side.
    expect(roomInside([polygon(box(85, 35), 1)], [polygon(box(88, 38))]).mm).toBeCloseTo(0.5, 6);
  });

  test('a sharp corner in a round one: √2·(r − gap) from the corner’s centre, against r', () => {
    // Pocket 88 × 38 with r 4, part 85 × 35 sharp: its corner is 2.5 from the centre of the radius both ways.
    const left = 4 - Math.hypot(2.5, 2.5);
    expect(roomInside([polygon(box(85, 35))], [polygon(box(88, 38, 4))]).mm).toBeCloseTo(left, 2);
    // With r 8 its corner is 6.5 both ways from the centre: 9.19, 1.19 in the wall though every side has 1.5.
    expect(roomInside([polygon(box(85, 35))], [polygon(box(88, 38, 8))]).mm).toBeCloseTo(8 - Math.hypot(6.5, 6.5), 2);
  });

  test('a part that reaches through a wall: how far', () => {
    // 24 across at x 50 in a box whose wall is at x 53: 50 + 12 − 53.
    const round: Shape = { kind: 'circle', diameterMm: 24 };
    expect(roomInside([polygon(round, 50)], [polygon(box(106, 60))]).mm).toBeCloseTo(-9, 3);
    // Round in round: 30 and 24, in the middle, 3 all round.
    expect(roomInside([polygon(round)], [polygon({ kind: 'circle', diameterMm: 30 })]).mm).toBeCloseTo(3, 2);
  });

  test('two beside each other, over each other, and crossing without a corner in either', () => {
    const round: Shape = { kind: 'circle', diameterMm: 24 };
    // (82, −58) and (106, −80): √(24² + 22²) = 32.56, less 24.
    expect(clearBetween([polygon(round, 82, -58)], [polygon(round, 106, -80)]).mm).toBeCloseTo(
      Math.hypot(24, 22) - 24,
      2,
    );
    expect(clearBetween([polygon(box(10, 10))], [polygon(box(10, 10), 8)]).mm).toBeCloseTo(-2, 2);
    // A plus of two bars, 60 × 8 and 6 × 40: they share 6 × 8.
    expect(clearBetween([polygon(box(60, 8))], [polygon(box(6, 40))]).mm).toBeCloseTo(-6, 2);
    // Two round ones 20 apart: what they share is 4 wide.
    expect(clearBetween([polygon(round)], [polygon(round, 20)]).mm).toBeCloseTo(-4, 2);
  });
});

describe('the sample', () => {
  const sound = facts();

  test('a pickup in its pocket: 1.5 all round, its ring 2 over the edge', () => {
    // 38 × 88 round 35 × 85: 1.5 and 1.5; the corners have one centre less 0.5, so the sides count. Ring 46 × 92: 4 and 2.
    expect(mmOf(valueOf(sound, 'fitted.cavity.neck-pickup.room')!)).toEqual([1.5, undefined, undefined]);
    expect(mmOf(valueOf(sound, 'fitted.cavity.neck-pickup.most-room')!)).toEqual([1.5, undefined, undefined]);
    expect(mmOf(valueOf(sound, 'fitted.cavity.neck-pickup.lip')!)).toEqual([2, undefined, undefined]);
  });

  test('a battery under its plate: the depth of its cavity, from the back', () => {
    // 15.0 ±0.6 from the back; no seat, the plate lies on the face.
    expect(mmOf(valueOf(sound, 'fitted.cavity.battery.depth.least')!)).toEqual([15, 14.4, 15.6]);
    // 34 × 60 with r 6 round 30 × 56 with r 3: 2 on the sides, in the corners 6 − (√2 · (6 − 2 − 3) + 3) = 1.586.
    expect(mmOf(valueOf(sound, 'fitted.cavity.battery.room')!)[0]).toBe(1.59);
  });

  test('in a seat the depth is from the seat, and both limits count', () => {
    // A seat of 2.4 ±0.6 is over the controls alone; with battery and seat changed about: 15 − 4.0, ±0.6 ±0.6.
    const seated = facts([
      change(
        TARN,
        'shape: { kind: rectangle, length: 78, width: 86 }\n    at: { x: 80, y: -100 }',
        'shape: { kind: rectangle, length: 42, width: 68 }\n    at: { x: 0, y: 44 }',
      ),
      change(TARN, 'depth: 2.4 ±0.6', 'depth: 4.0 ±0.6'),
    ]);
    const [value, low, high] = mmOf(valueOf(seated, 'fitted.cavity.battery.depth.least')!);
    expect(value).toBe(11);
    expect(low).toBeCloseTo(9.8, 6);
    expect(high).toBeCloseTo(12.2, 6);
  });

  test('a bushing on a flat top: from the white top down, with all that goes into it', () => {
    // Flat and faced by the top set-up: blank face at 50.30, hole 25 from it: floor at 25.30 over the back, off by 0.5 and by
    // the 0.10 of the faced blank. White 49.20 ±0.15: 23.90 deep, least 23.90 − 0.15 − 0.5 − 0.1.
    const flat = facts([
      change(
        TARN,
        'carve: { kind: arched, land: { width: 11 }, recurve: { at: 26, depth: 0.8 }, crown: { from: 95 } }',
        'carve: { kind: flat }',
      ),
      change(TARN, 'machined: { crown: 49.60 ±0.12, land: 45.40 ±0.12 }', 'machined: { face: 49.60 ±0.12 }'),
      change(TARN, 'white: { crown: 49.20 ±0.15, land: 45.00 ±0.15 }', 'white: { face: 49.20 ±0.15 }'),
    ]);
    const [value, low, high] = mmOf(valueOf(flat, 'fitted.hole.stud-a.depth.least')!);
    expect(value).toBeCloseTo(23.9, 6);
    expect(low).toBeCloseTo(23.15, 6);
    expect(high).toBeCloseTo(24.65, 6);
    expect(mmOf(valueOf(flat, 'fitted.hole.stud-a.depth-worst')!)[0]).toBeCloseTo(23.15, 6);
  });

  test('a pot behind its panel: to the wall, less machine and location', () => {
    // Controls 70 × 62 at (80, −100): walls at x 45 and 115, y −131 and −69. At (70, −88), 24 across: 70 − 12 − 45 = 13, and
    // −69 − (−88 + 12) = 7 on the neck side.
    const room = valueOf(sound, 'fitted.hole.volume-shaft.room')!;
    expect(mmOf(room)[0]).toBe(7);
    const pins = (room.causes ?? []).filter(({ cause }) => cause.startsWith('location.')).length;
    expect(pins).toBeGreaterThan(0);
    // Each of the two cuts is off by 0.15, and the pins add to that.
    expect(mmOf(room)[1]).toBeLessThan(6.7);
  });

  test('its end and the cover: floor of the cavity over the seat, less its reach', () => {
    const [value, low] = mmOf(valueOf(sound, 'fitted.hole.volume-shaft.to-cover')!);
    const own = valueOf(sound, 'cavity.controls.void');
    const floorMm = own.kind === 'pocket' ? own.floor.zMm : NaN;
    // Floor less 2.4 of the seat less 22 of reach; at worst less 0.4 and 0.6, and what the top’s heights are off there.
    expect(value).toBeCloseTo(floorMm - 24.4, 6);
    expect(low).toBeLessThan(floorMm - 25.4);
  });

  test('studs where the bridge takes them, on both hands', () => {
    for (const hand of ['right', 'left'] as const) {
      const side = hand === 'left' ? -1 : 1;
      const own = valueOf(facts([], hand), 'fitted.fitting.bridge.mounts');
      expect(own.map(({ mount, xMm, yMm, hole, off }) => [mount, xMm, yMm, hole, off?.value])).toEqual([
        ['bass', -37 * side, -3, 'stud-a', 0],
        ['treble', 37 * side, -3, 'stud-b', 0],
      ]);
    }
  });

  test('a bridge that stands aslant takes its holes aslant', () => {
    // 37 from its middle, turned by 90: they lie along, and the nearest hole is that of the ground wire at (12, −3).
    const turned = facts([
      change(TARN, 'on: top, at: { x: 0, y: -3 } }', 'on: top, at: { x: 0, y: -3 }, angle: 90 deg }'),
    ]);
    const [bass] = valueOf(turned, 'fitted.fitting.bridge.mounts');
    expect([bass!.xMm, bass!.yMm]).toEqual([0, -40]);
    expect(bass!.hole).toBe('ground-hole');
    expect(mmOf(bass!.off!)[0]).toBeCloseTo(Math.hypot(12, 37), 4);
  });

  test('rings and plates on the top: the pickup’s ring and the bridge', () => {
    // Ring 46 long at y 44: down to 21. Bridge 15 long at −3: up to 4.5. 16.5 apart.
    const beside = valueOf(sound, 'hardware.beside.on-face');
    const two = beside.find(({ a, b }) => a === 'cavity.bridge-pickup' && b === 'fitting.bridge')!;
    expect(mmOf(two.apart)[0]).toBeCloseTo(16.5, 4);
    // A washer over its own pickup’s cavity is beside nothing but what lies on the top.
    expect(beside.every(({ a, b }) => a !== b)).toBe(true);
  });

  test('a wider body has less room, by half of what it is wider', () => {
    const wider = facts([change(PLANT, 'body: { diameter: 24 }', 'body: { diameter: 26 }')]);
    expect(mmOf(valueOf(wider, 'fitted.hole.volume-shaft.room')!)[0]).toBe(6);
  });
});

test('both hands of every model find the same', () => {
  for (const { hands } of compileDemo().checked.models) {
    const [right, left] = hands;
    if (!left) continue;
    for (const { kind, id } of insideOf(right!.subject.spec)) {
      for (const what of ['room', 'depth.least', 'lip'] as const) {
        const [a, b] = [right!, left].map((one) => valueOf(one.facts, `fitted.${kind}.${id}.${what}`));
        expect(b?.value, `${kind} ${id} ${what}`).toBe(a?.value);
      }
    }
  }
});
