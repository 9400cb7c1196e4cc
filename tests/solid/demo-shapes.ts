/** The machined body of each demo model with nothing cut in, by hand from the numbers of its spec. All sizes in mm. */
import type { Polygon } from '../../src/geometry/polygon.ts';
import { roundDown } from './by-hand.ts';
import type { levelLines } from './level-lines.ts';
import type { Kernel, Manifold, Slope } from './mesh.ts';
import { bodyMesh, LEVEL } from './mesh.ts';

/** Depth of a hollow at (x, y). */
type Hollow = (x: number, y: number) => number;

interface Shape {
  readonly heightMm: number;
  readonly top?: Slope;
  readonly back?: Slope;
  /** What is taken off a face besides, as far down everywhere as it says. */
  readonly topHollow?: Hollow;
  readonly backHollow?: Hollow;
}

/** Half a cosine from 0 at `from` to 1 at `to`. */
const half = (from: number, to: number, d: number): number => (1 - Math.cos((Math.PI * (d - from)) / (to - from))) / 2;

const spread = (from: number, to: number, pieces: number): readonly number[] =>
  Array.from({ length: pieces }, (_, i) => from + ((to - from) * (i + 1)) / pieces);

/** Land 4 wide, 41.50 − 37.60 below the face, then straight up over 16. */
const carr: Slope = { down: (d) => (d <= 4 ? 3.9 : d < 20 ? (3.9 * (20 - d)) / 16 : 0), at: [4, 20] };

/** Land 9 wide, 51.20 − 46.60 below the crown; 0.9 deeper at 22; crown from 88 on. */
const holm: Slope = {
  down: (d) => (d < 9 ? 4.6 : d < 22 ? 4.6 + 0.9 * half(9, 22, d) : d < 88 ? 5.5 * (1 - half(22, 88, d)) : 0),
  at: [9, ...spread(9, 22, 7), ...spread(22, 88, 22)],
};

/** Land 11 wide, 49.60 − 45.40 below the crown; 0.8 deeper at 26; crown from 95 on. */
const tarn: Slope = {
  down: (d) => (d < 11 ? 4.2 : d < 26 ? 4.2 + 0.8 * half(11, 26, d) : d < 95 ? 5 * (1 - half(26, 95, d)) : 0),
  at: [11, ...spread(11, 26, 8), ...spread(26, 95, 23)],
};

/** A quarter round of 6. It is steep at the edge: lines lie closer there. */
const ROUND_6: Slope = {
  down: (d) => roundDown(6, d),
  at: spread(0, Math.PI / 2, 12).map((angle) => 6 * (1 - Math.cos(angle))),
};

/** mm beyond the line from a to b, on its left as one goes. */
const beyond = (ax: number, ay: number, bx: number, by: number, x: number, y: number): number =>
  ((x - ax) * (ay - by) + (y - ay) * (bx - ax)) / Math.hypot(bx - ax, by - ay);

/** A plane of 14° from the line between (−70, −140) and (−150, −20) outward. */
const forearm: Hollow = (x, y) => Math.tan((14 * Math.PI) / 180) * Math.max(0, beyond(-70, -140, -150, -20, x, y));

/** Part of a cylinder 120 across and 9 deep in the middle, from the line between (−150, 215) and (−66, 305) outward. */
const belly: Hollow = (x, y) => {
  const fromMiddle = beyond(-150, 215, -66, 305, x, y) - 60;
  const radius = (60 ** 2 + 9 ** 2) / (2 * 9);
  return Math.abs(fromMiddle) < 60 ? 9 - (radius - Math.sqrt(radius ** 2 - fromMiddle ** 2)) : 0;
};

export const DEMO_SHAPES: Readonly<Record<string, Shape>> = {
  brae: { heightMm: 43.9 },
  carr: { heightMm: 41.5, top: carr },
  // 1.727 in.
  fell: { heightMm: 1.727 * 25.4 },
  holm: { heightMm: 51.2, top: holm },
  ness: { heightMm: 43.9, top: ROUND_6, back: ROUND_6, topHollow: forearm, backHollow: belly },
  skerry: { heightMm: 43.9 },
  tarn: { heightMm: 49.6, top: tarn },
  voe: { heightMm: 43.3 },
};

/** A hollow is taken as straight over so much. */
const HOLLOW_MM = 3;

/** The body as a mesh; hollows move each corner of it up or down. */
export function demoMesh(kernel: Kernel, outline: Polygon, shape: Shape, linesOf?: typeof levelLines): Manifold {
  const { heightMm, top = LEVEL, back = LEVEL, topHollow, backHollow } = shape;
  const body = bodyMesh(kernel, outline, heightMm, top, back, linesOf);
  if (!topHollow && !backHollow) return body;
  const hollowed = body.refineToLength(HOLLOW_MM).warp((corner: [number, number, number]) => {
    const [x, y, z] = corner;
    if (z > heightMm / 2) corner[2] -= topHollow?.(x, y) ?? 0;
    else corner[2] += backHollow?.(x, y) ?? 0;
  });
  body.delete();
  return hollowed;
}
