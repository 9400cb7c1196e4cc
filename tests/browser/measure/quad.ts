/** Boxes of text that may be turned: four corners in millimetres of paper, in order around. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export type Quad = readonly [Point, Point, Point, Point];

/** Upright box from its edges. */
export function quadOf(left: number, top: number, right: number, bottom: number): Quad {
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

export interface Edges {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function edgesOf(quad: Quad): Edges {
  const xs = quad.map(({ x }) => x);
  const ys = quad.map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/**
 * How deep two boxes lie in each other: the least shift that parts them, in millimetres; 0 or less where they are apart.
 * Two convex shapes are apart exactly where a line along a side of one of them parts them.
 */
export function depthInto(a: Quad, b: Quad): number {
  let least = Infinity;
  for (const normal of [...normalsOf(a), ...normalsOf(b)]) {
    const [fromA, toA] = along(a, normal);
    const [fromB, toB] = along(b, normal);
    least = Math.min(least, toA - fromB, toB - fromA);
    if (least <= 0) return least;
  }
  return least;
}

/** Whether a straight line from `from` to `to` runs deeper than `depthMm` into the box. */
export function crosses(quad: Quad, from: Point, to: Point, depthMm: number): boolean {
  const line: Quad = [from, to, to, from];
  return depthInto(quad, line) > depthMm;
}

function normalsOf(quad: Quad): Point[] {
  return quad.flatMap((from, i) => {
    const to = quad[(i + 1) % 4]!;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const length = Math.hypot(dx, dy);
    return length > 1e-9 ? [{ x: -dy / length, y: dx / length }] : [];
  });
}

function along(quad: Quad, normal: Point): [number, number] {
  const at = quad.map(({ x, y }) => x * normal.x + y * normal.y);
  return [Math.min(...at), Math.max(...at)];
}
