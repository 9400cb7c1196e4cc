/** Wood in section, and what is cut out of it. */
import type { At, SketchFill, SketchLine, SketchMark } from '../../findings/sketch.ts';

/** Depth of the back face below the top. */
export const BACK = 17;
const [LEFT, RIGHT] = [2, 58];

/** Of a piece that goes on beyond the sketch: a torn edge. */
const TORN = 0.8;

export interface Slab {
  /** Sides of the piece; where one is not given it goes on, torn off. */
  readonly left?: number;
  readonly right?: number;
  readonly top?: number;
  readonly bottom?: number;
  /** Depth of a glue line: above it a cap. */
  readonly glue?: number;
  /** Path from its upper left corner to its right side, of a shaped top: `C 10 0 …`. */
  readonly face?: string;
  /** Path from its lower right corner to its left side. */
  readonly under?: string;
  readonly fill?: SketchFill;
}

export const shape = (path: string, fill?: SketchFill, line?: SketchLine): SketchMark[] => [
  { kind: 'shape', path, ...(fill ? { fill } : {}), ...(line ? { line } : {}) },
];
export const line = (path: string, kind: SketchLine = 'edge'): SketchMark[] => shape(path, undefined, kind);
/** Where it should be. */
export const ideal = (path: string): SketchMark[] => line(path, 'ideal');

export function slab({
  left,
  right,
  top = 0,
  bottom = BACK,
  glue,
  face,
  under,
  fill = 'wood',
}: Slab = {}): SketchMark[] {
  const [x, w] = [left ?? LEFT, right ?? RIGHT];
  const [upper, lower] = [face ?? `H ${w}`, under ?? `H ${x}`];
  const rightEnd = right === undefined ? torn(w, top, bottom) : `L ${w} ${bottom}`;
  const leftEnd = left === undefined ? torn(x, bottom, top) : 'Z';
  const edges = line(
    `M ${x} ${top} ${upper} ${right === undefined ? `M ${w} ${bottom}` : rightEnd} ${lower} ${left === undefined ? '' : `L ${x} ${top}`}`,
  );
  const ends = [
    ...(right === undefined ? line(`M ${w} ${top} ${rightEnd}`, 'thin') : []),
    ...(left === undefined ? line(`M ${x} ${bottom} ${leftEnd}`, 'thin') : []),
  ];
  if (glue === undefined)
    return [...shape(`M ${x} ${top} ${upper} ${rightEnd} ${lower} ${leftEnd}`, fill), ...ends, ...edges];
  return [
    ...shape(`M ${x} ${glue} H ${w} V ${bottom} ${lower} Z`, 'wood'),
    ...shape(`M ${x} ${top} ${upper} V ${glue} H ${x} Z`, 'cap'),
    ...line(`M ${x} ${glue} H ${w}`),
    ...ends,
    ...edges,
  ];
}

function torn(x: number, from: number, to: number): string {
  const step = (to - from) / 4;
  const out = from < to ? TORN : -TORN;
  return `Q ${x + out} ${from + step} ${x} ${from + 2 * step} Q ${x - out} ${from + 3 * step} ${x} ${to}`;
}

export const rect = (x1: number, y1: number, x2: number, y2: number, r = 0): string =>
  r === 0
    ? `M ${x1} ${y1} H ${x2} V ${y2} H ${x1} Z`
    : `M ${x1 + r} ${y1} H ${x2 - r} A ${r} ${r} 0 0 1 ${x2} ${y1 + r} V ${y2 - r} A ${r} ${r} 0 0 1 ${x2 - r} ${y2} ` +
      `H ${x1 + r} A ${r} ${r} 0 0 1 ${x1} ${y2 - r} V ${y1 + r} A ${r} ${r} 0 0 1 ${x1 + r} ${y1} Z`;
export const disc = (x: number, y: number, r: number): string =>
  `M ${x - r} ${y} A ${r} ${r} 0 0 1 ${x + r} ${y} A ${r} ${r} 0 0 1 ${x - r} ${y} Z`;
export const polygon = (...[first, ...rest]: readonly At[]): string =>
  `M ${first![0]} ${first![1]} ${rest.map(([x, y]) => `L ${x} ${y}`).join(' ')} Z`;

/** What is cut away: its wall, open at the mouth, and the air in it. */
export interface Hollow {
  readonly wall: string;
  readonly air: string;
}

/** Covers the line of the face at a mouth. */
const MOUTH = 0.6;

/** A pocket or a round hole from the top, or from the back: `depth` counts from that face, which lies at `at`. */
export function cut({
  from,
  to,
  depth,
  back = false,
  at = back ? BACK : 0,
  corner = 0,
}: {
  readonly from: number;
  readonly to: number;
  readonly depth: number;
  readonly back?: boolean;
  readonly at?: number;
  /** Radius between floor and wall. */
  readonly corner?: number;
}): Hollow {
  const way = back ? -1 : 1;
  const floor = at + way * depth;
  const turn = corner === 0 ? '' : `A ${corner} ${corner} 0 0 ${back ? 1 : 0}`;
  const walls =
    corner === 0
      ? `V ${floor} H ${to} V`
      : `V ${floor - way * corner} ${turn} ${from + corner} ${floor} H ${to - corner} ${turn} ${to} ${floor - way * corner} V`;
  const out = at - way * MOUTH;
  return { wall: `M ${from} ${at} ${walls} ${at}`, air: `M ${from} ${out} ${walls} ${out} Z` };
}

/** Drilled along a line; the tip of a drill at its end, or a mouth there as well. */
export function bore({
  from,
  to,
  width,
  end = 'tip',
}: {
  readonly from: At;
  readonly to: At;
  readonly width: number;
  readonly end?: 'flat' | 'open' | 'tip';
}): Hollow {
  const place = along(from, to);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const r = width / 2;
  const beyond = end === 'open' ? MOUTH : 0;
  const reach = end === 'tip' ? length - r * 0.6 : length;
  const tip = end === 'tip' ? `L ${place(length, 0)}` : '';
  const mouth = end === 'open' ? `M ${place(reach, r)}` : `${tip} L ${place(reach, r)}`;
  return {
    wall: `M ${place(0, -r)} L ${place(reach, -r)} ${mouth} L ${place(0, r)}`,
    air: `M ${place(-MOUTH, -r)} L ${place(reach + beyond, -r)} ${tip} L ${place(reach + beyond, r)} L ${place(-MOUTH, r)} Z`,
  };
}

/** Right side of a body whose edge is shown. */
export const EDGE = 56;
/** Taken off the top towards the edge: a curve that ends at the edge. */
export const carve = (from: number, curve: string): Hollow => ({
  wall: `M ${from} 0 ${curve}`,
  air: `M ${from} 0 ${curve} H ${EDGE + 1} V -1 H ${from} Z`,
});
/** The same off the back. */
export const contour = (from: number, curve: string): Hollow => ({
  wall: `M ${from} ${BACK} ${curve}`,
  air: `M ${from} ${BACK} ${curve} H ${EDGE + 1} V ${BACK + 1} H ${from} Z`,
});

/** A face of hollows side by side, as a round cutter leaves them; `at` is the height of the ridges. */
export function scallops(from: number, to: number, pitch: number, deep: number, at = 0): string {
  const r = (pitch * pitch) / (8 * deep) + deep / 2;
  return Array.from(
    { length: Math.round((to - from) / pitch) },
    (_, i) => `A ${r} ${r} 0 0 0 ${from + (i + 1) * pitch} ${at}`,
  ).join(' ');
}
/** A face of teeth, as coarse grit leaves it; the other way round where `to` is less than `from`. */
export function scratches(from: number, to: number, at: number, deep: number): string {
  const count = Math.round(Math.abs(to - from) / 4);
  const step = (to - from) / count;
  return Array.from(
    { length: count },
    (_, i) => `L ${from + (i + 0.5) * step} ${at + deep} L ${from + (i + 1) * step} ${at}`,
  ).join(' ');
}

/** A shape of any kind, as a hollow all round. */
export const hollow = (path: string): Hollow => ({ wall: path, air: path });

/** Cut one into the other: no wall is left between them. */
export const cuts = (...hollows: readonly Hollow[]): SketchMark[] => [
  ...hollows.flatMap(({ wall }) => line(wall, 'wall')),
  ...hollows.flatMap(({ air }) => shape(air, 'air')),
];

/** Text of a place so far along a line and so far to its right. */
export function along(from: At, to: At): (far: number, across: number) => string {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [x, y] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  return (far, across) => `${from[0] + x * far - y * across} ${from[1] + y * far + x * across}`;
}
