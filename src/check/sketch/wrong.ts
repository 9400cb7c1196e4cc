/** What is wrong in a sketch: heavy, and with a cross, so that no colour need tell it. */
import type { At, SketchMark } from '../../findings/sketch.ts';
import { disc, line } from './wood.ts';

/** From here on both heads and the cross have room between the two ends. */
const ROOMY = 8.5;
const TAIL = 4;
/** From the tail of an arrow to the middle of its cross. */
const CROSS = 1.2;

export const cross = (x: number, y: number): SketchMark[] => [{ kind: 'cross', at: [x, y] }];

/** A distance that is wrong: upright at `x`, from one depth to another. The cross stands at the upper end, or the lower. */
export const gap = (x: number, from: number, to: number, at: 'end' | 'start' = 'start'): SketchMark[] =>
  distance([x, from], [x, to], at);
/** The same, level at `y`. */
export const across = (y: number, from: number, to: number, at: 'end' | 'start' = 'start'): SketchMark[] =>
  distance([from, y], [to, y], at);

export function distance(from: At, to: At, at: 'end' | 'start' = 'start'): SketchMark[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const way: At = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const off = (place: At, by: number): At => [place[0] + way[0] * by, place[1] + way[1] * by];
  if (length >= ROOMY) {
    return [
      { kind: 'arrow', from, to, line: 'wrong', both: true },
      { kind: 'cross', at: off(from, length / 2) },
    ];
  }
  return [
    { kind: 'arrow', from: off(from, -TAIL), to: from, line: 'wrong' },
    { kind: 'arrow', from: off(to, TAIL), to, line: 'wrong' },
    { kind: 'cross', at: at === 'start' ? off(from, -TAIL - CROSS) : off(to, TAIL + CROSS) },
  ];
}

/** A way that should not be gone; its cross at the tail. */
export function push(from: At, to: At): SketchMark[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const by = CROSS / length;
  return [
    { kind: 'arrow', from, to, line: 'wrong' },
    { kind: 'cross', at: [from[0] - (to[0] - from[0]) * by, from[1] - (to[1] - from[1]) * by] },
  ];
}

const SIDES = { 'upper-right': [1, -1], 'upper-left': [-1, -1], 'lower-right': [1, 1], 'lower-left': [-1, 1] } as const;

/** A place that is wrong, in a ring. */
export function ring(x: number, y: number, r = 3, side: keyof typeof SIDES = 'upper-right'): SketchMark[] {
  const [right, down] = SIDES[side];
  const off = (r + 1.3) * Math.SQRT1_2;
  return [...line(disc(x, y, r), 'wrong'), ...cross(x + right * off, y + down * off)];
}

/** What is asked, for comparison: thin. */
export const asked = (from: At, to: At): SketchMark[] => [{ kind: 'arrow', from, to, line: 'thin', both: true }];
/** The way something goes. */
export const way = (from: At, to: At): SketchMark[] => [{ kind: 'arrow', from, to, line: 'thin' }];
