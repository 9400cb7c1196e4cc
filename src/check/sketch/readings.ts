/** Readings against their limits: a curve of many pieces, the steps of a gauge, the hand on a dial. In a plan's frame. */
import type { At, SketchMark } from '../../findings/sketch.ts';
import { disc, line, shape } from './wood.ts';

/** Limits stand so far to either side of the middle. */
export const LIMIT = 10;
const FOOT = 12;

/** How many pieces come out at which size; what is beyond the limits is dotted. */
export function bell(middle: number, spread: number): SketchMark[] {
  const xs = Array.from({ length: 57 }, (_, i) => i - 28);
  const at = (x: number) => `${x} ${FOOT - 22 * Math.exp(-((x - middle) ** 2) / (2 * spread * spread))}`;
  const under = (part: readonly number[]) =>
    `M ${part[0]} ${FOOT} L ${part.map(at).join(' L ')} L ${part.at(-1)} ${FOOT} Z`;
  return [
    ...shape(under(xs.filter((x) => x <= -LIMIT)), 'soft'),
    ...shape(under(xs.filter((x) => x >= LIMIT)), 'soft'),
    ...line(`M ${xs.map(at).join(' L ')}`),
    ...line(`M -28 ${FOOT} H 28`, 'thin'),
    ...limits(),
  ];
}

/** Where a piece is in. */
export const limits = (top = -13): SketchMark[] => line(`M ${-LIMIT} ${top} V ${FOOT} M ${LIMIT} ${top} V ${FOOT}`);

/** The graduation of a gauge, under its limits. */
export const graduation = (step: number): SketchMark[] => {
  const count = Math.floor(26 / step);
  const marks = Array.from({ length: 2 * count + 1 }, (_, i) => `M ${(i - count) * step} ${FOOT} V ${FOOT - 5}`);
  return line(`M -28 ${FOOT} H 28 ${marks.join(' ')}`, 'thin');
};

/** A reading, and how far it may be off. */
export const reading = (x: number, unsure: number, y = 0): SketchMark[] => [
  ...line(
    `M ${x - unsure} ${y} H ${x + unsure} M ${x - unsure} ${y - 2} V ${y + 2} M ${x + unsure} ${y - 2} V ${y + 2}`,
  ),
  ...shape(disc(x, y, 1), 'metal', 'edge'),
];

/** A dial, its hand at a part of the scale from 0 to 1; the band where it should stand is drawn thick. */
export function dial(hand: number, from: number, to: number): SketchMark[] {
  const at = (part: number, r: number) => {
    const turn = ((part * 240 + 150) * Math.PI) / 180;
    return `${r * Math.cos(turn)} ${r * Math.sin(turn)}`;
  };
  const ticks = Array.from({ length: 11 }, (_, i) => `M ${at(i / 10, 14)} L ${at(i / 10, 12.2)}`);
  const wide = (to - from) * 240 > 180 ? 1 : 0;
  return [
    ...shape(disc(0, 0, 15.5), 'air', 'edge'),
    ...shape(
      `M ${at(from, 11)} A 11 11 0 ${wide} 1 ${at(to, 11)} L ${at(to, 9)} A 9 9 0 ${wide} 0 ${at(from, 9)} Z`,
      'metal',
      'thin',
    ),
    ...line(ticks.join(' '), 'thin'),
    ...line(`M 0 0 L ${at(hand, 12.5)}`),
    ...shape(disc(0, 0, 1.4), 'metal', 'edge'),
  ];
}

/** Reading after reading between the limits of a chart. */
export const series = (...points: readonly At[]): SketchMark[] => [
  ...line('M -28 -7 H 28 M -28 7 H 28', 'ideal'),
  ...line('M -28 0 H 28', 'centre'),
  ...line(`M ${points.map(([x, y]) => `${x} ${y}`).join(' L ')}`, 'thin'),
  ...points.flatMap(([x, y]) => shape(disc(x, y, 1), 'metal', 'edge')),
];
