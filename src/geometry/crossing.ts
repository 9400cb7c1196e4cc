/** Does an outline cross or touch itself? No saw can follow one that does, and its area means nothing. */
import type { Point } from './axes.ts';
import { forEachEdge, type Polygon } from './polygon.ts';

interface Edge {
  readonly index: number;
  readonly from: Point;
  readonly to: Point;
  readonly left: number;
  readonly right: number;
}

/**
 * A point where the polygon crosses, touches or folds back on itself; undefined where it is simple.
 * Edges are compared only where they overlap in x.
 */
export function selfCrossing(polygon: Polygon): Point | undefined {
  const edges = edgesByLeft(polygon);
  for (const [i, edge] of edges.entries()) {
    for (let j = i + 1; j < edges.length && edges[j]!.left <= edge.right; j++) {
      const point = meeting(edge, edges[j]!, edges.length);
      if (point !== undefined) return point;
    }
  }
  return undefined;
}

function edgesByLeft(polygon: Polygon): Edge[] {
  const edges: Edge[] = [];
  forEachEdge(polygon, (x0, y0, x1, y1, index) => {
    const ends = { from: { x: x0, y: y0 }, to: { x: x1, y: y1 } };
    edges.push({ index, ...ends, left: Math.min(x0, x1), right: Math.max(x0, x1) });
  });
  return edges.toSorted((a, b) => a.left - b.left);
}

function meeting(a: Edge, b: Edge, count: number): Point | undefined {
  if ((a.index + 1) % count === b.index) return foldBack(a, b);
  if ((b.index + 1) % count === a.index) return foldBack(b, a);
  const sides = [side(a, b.from), side(a, b.to), side(b, a.from), side(b, a.to)] as const;
  if (sides[0] * sides[1] < 0 && sides[2] * sides[3] < 0) {
    const t = sides[0] / (sides[0] - sides[1]);
    return { x: b.from.x + t * (b.to.x - b.from.x), y: b.from.y + t * (b.to.y - b.from.y) };
  }
  if (sides[0] === 0 && within(a, b.from)) return b.from;
  if (sides[1] === 0 && within(a, b.to)) return b.to;
  if (sides[2] === 0 && within(b, a.from)) return a.from;
  if (sides[3] === 0 && within(b, a.to)) return a.to;
  return undefined;
}

/** Neighbours share a corner; they meet elsewhere only where the second runs straight back along the first. */
function foldBack(first: Edge, second: Edge): Point | undefined {
  const ahead =
    (first.to.x - first.from.x) * (second.to.x - second.from.x) +
    (first.to.y - first.from.y) * (second.to.y - second.from.y);
  return side(first, second.to) === 0 && ahead < 0 ? first.to : undefined;
}

/** Twice the area of the triangle: positive where the point lies left of the edge, zero on its line. */
function side(edge: Edge, point: Point): number {
  return (edge.to.x - edge.from.x) * (point.y - edge.from.y) - (edge.to.y - edge.from.y) * (point.x - edge.from.x);
}

function within(edge: Edge, point: Point): boolean {
  const low = Math.min(edge.from.y, edge.to.y);
  const high = Math.max(edge.from.y, edge.to.y);
  return point.x >= edge.left && point.x <= edge.right && point.y >= low && point.y <= high;
}
