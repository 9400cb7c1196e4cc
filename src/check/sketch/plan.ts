/** A body seen from above, and what lies on it. */
import type { SketchMark } from '../../findings/sketch.ts';
import { disc, line, rect, shape } from './wood.ts';

/** No instrument's outline: a pebble with a waist. `grow`: a line so far outside of it. `turn`: turned about its middle, degrees. */
export function outlinePath(grow = 0, turn = 0): string {
  const [sx, sy] = [1 + grow / 23, 1 + grow / 12];
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const at = (x: number, y: number) => `${x * sx * cos - y * sy * sin} ${x * sx * sin + y * sy * cos}`;
  const side = (s: 1 | -1) =>
    s === -1
      ? `C ${at(-23, -8)} ${at(-16, -12)} ${at(-9, -12)} C ${at(-3, -12)} ${at(1, -9)} ${at(7, -9)} C ${at(12, -9)} ${at(13, -10.5)} ${at(16, -10.5)} C ${at(21, -10.5)} ${at(23, -6)} ${at(23, 0)}`
      : `C ${at(23, 6)} ${at(21, 10.5)} ${at(16, 10.5)} C ${at(13, 10.5)} ${at(12, 9)} ${at(7, 9)} C ${at(1, 9)} ${at(-3, 12)} ${at(-9, 12)} C ${at(-16, 12)} ${at(-23, 8)} ${at(-23, 0)}`;
  return `M ${at(-23, 0)} ${side(-1)} ${side(1)} Z`;
}

export const outline = (): SketchMark[] => shape(outlinePath(), 'wood', 'edge');
export const centreline = (from = -28, to = 28): SketchMark[] => line(`M ${from} 0 H ${to}`, 'centre');

/** A pocket seen into. */
export const pocket = (x1: number, y1: number, x2: number, y2: number, r = 0): SketchMark[] =>
  shape(rect(x1, y1, x2, y2, r), 'air', 'edge');
export const hole = (x: number, y: number, r = 1.4): SketchMark[] => shape(disc(x, y, r), 'air', 'edge');
/** A hole's centre. */
export const centreMark = (x: number, y: number, arm = 2.4): SketchMark[] =>
  line(`M ${x - arm} ${y} H ${x + arm} M ${x} ${y - arm} V ${y + arm}`, 'thin');

/** Wood that fills the frame: a detail of a body. */
export const field = (): SketchMark[] => shape(rect(-29, -16, 29, 16), 'wood');
/** The end of a body where the neck comes in, its edge at `x`. */
export const neckEnd = (x = 10): SketchMark[] =>
  shape(`M -29 -14 H ${x - 9} C ${x - 2} -14 ${x} -9 ${x} 0 C ${x} 9 ${x - 2} 14 ${x - 9} 14 H -29`, 'wood', 'edge');
/** A neck from above, from its heel at `x`. */
export const neckPlan = (x: number, y = 0, half = 4.5): SketchMark[] =>
  shape(rect(x, y - half, 29, y + half), 'cap', 'edge');
/** Two curves that cross: no outline. */
export const crossed = (x: number, y: number, half: number, tall: number): string =>
  `M ${x - half} ${y - tall} L ${x + half} ${y + tall} V ${y - tall} L ${x - half} ${y + tall} Z`;
/** Head of a screw, with its slot. */
export const head = (x: number, y: number, r = 4): SketchMark[] => [
  ...shape(disc(x, y, r), 'metal', 'edge'),
  ...line(
    `M ${x - r * 0.6} ${y - r * 0.6} L ${x + r * 0.6} ${y + r * 0.6} M ${x + r * 0.6} ${y - r * 0.6} L ${x - r * 0.6} ${y + r * 0.6}`,
    'thin',
  ),
];
export const tackHead = (x: number, y: number): SketchMark[] => shape(disc(x, y, 1), 'metal', 'edge');
/** The gasket of a zone: a band round what it encloses. */
export const zone = (x1: number, y1: number, x2: number, y2: number): SketchMark[] => [
  ...shape(rect(x1, y1, x2, y2, 2.4), 'soft', 'thin'),
  ...shape(rect(x1 + 1.4, y1 + 1.4, x2 - 1.4, y2 - 1.4, 1.4), 'air', 'thin'),
];
/** The edge of a rough-sawn body, close: wood up to the outline at `body`, waste up to where it was sawn. */
export const waste = (body: number, rough: number): SketchMark[] => [
  ...shape(rect(-29, -15, body, 15), 'wood'),
  ...shape(rect(body, -15, rough, 15), 'removed'),
  ...line(`M ${body} -15 V 15 M ${rough} -15 V 15`),
];
/** A saw's line along that edge. */
export const sawLine = (x: number): SketchMark[] => line(`M ${x} -16 V 16`, 'saw');
