/**
 * From millimetres of the body, y upward, to millimetres of paper, y downward; and the room a drawing needs.
 * A number in an SVG has at most two decimals, so that the same drawing is the same text everywhere.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function onPaper(x: number, y: number, scale: number): Point {
  return { x: x / scale, y: -y / scale };
}

export function num(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(Object.is(rounded, -0) ? 0 : rounded);
}

export function around(points: readonly Point[], margin = 0): Box {
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  return {
    left: Math.min(...xs) - margin,
    top: Math.min(...ys) - margin,
    right: Math.max(...xs) + margin,
    bottom: Math.max(...ys) + margin,
  };
}

export function union(boxes: readonly Box[]): Box {
  return {
    left: Math.min(...boxes.map((box) => box.left)),
    top: Math.min(...boxes.map((box) => box.top)),
    right: Math.max(...boxes.map((box) => box.right)),
    bottom: Math.max(...boxes.map((box) => box.bottom)),
  };
}

/** `M0 0L5 0Z` of flat coordinates in millimetres of the body. */
export function pathData(flat: readonly number[], scale: number, closed: boolean): string {
  const points = pointsOf(flat, scale).map(({ x, y }) => `${num(x)} ${num(y)}`);
  return points.length === 0 ? '' : `M${points.join('L')}${closed ? 'Z' : ''}`;
}

export function pointsOf(flat: readonly number[], scale: number): Point[] {
  const points: Point[] = [];
  for (let i = 0; i + 1 < flat.length; i += 2) points.push(onPaper(flat[i] ?? 0, flat[i + 1] ?? 0, scale));
  return points;
}
