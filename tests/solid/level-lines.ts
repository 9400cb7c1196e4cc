/**
 * Lines at a distance inside an outline, found by walking round the cells of a grid that they run through (marching
 * squares). Every corner of such a line lies at its distance to a millionth, every edge of the outline asked.
 */
import { bounds } from '../../src/geometry/measure.ts';
import { contains } from '../../src/geometry/nearness.ts';
import type { Polygon } from '../../src/geometry/polygon.ts';
import { byEveryEdge } from './by-hand.ts';

const STEP_MM = 1.5;
/** How near to its distance a corner lies. */
const NEAR_MM = 1e-6;

/** For each distance the closed lines there, counter-clockwise round what lies further in. */
export function levelLines(outline: Polygon, distancesMm: readonly number[]): readonly (readonly Polygon[])[] {
  const away = (x: number, y: number): number => (contains(outline, x, y) ? 1 : -1) * byEveryEdge(outline, true, x, y);
  if (distancesMm.length === 0) return [];
  const nodes = nodesOver(outline, away);
  return distancesMm.map((distance) => linesAt(nodes, away, distance));
}

interface Nodes {
  readonly x0: number;
  readonly y0: number;
  readonly cols: number;
  readonly rows: number;
  readonly away: Float64Array;
}

type Spot = readonly [x: number, y: number];
type Away = (x: number, y: number) => number;

function nodesOver(outline: Polygon, away: Away): Nodes {
  const { minX, minY, maxX, maxY } = bounds(outline)!;
  // Off any round number, so that no line runs through a node.
  const [x0, y0] = [minX - 1.0137, minY - 1.0291];
  const [cols, rows] = [Math.ceil((maxX - x0) / STEP_MM) + 2, Math.ceil((maxY - y0) / STEP_MM) + 2];
  const at = (_: unknown, i: number) => away(x0 + (i % cols) * STEP_MM, y0 + Math.floor(i / cols) * STEP_MM);
  return { x0, y0, cols, rows, away: Float64Array.from({ length: cols * rows }, at) };
}

function linesAt(nodes: Nodes, away: Away, distance: number): readonly Polygon[] {
  const next = new Map<number, number>();
  for (let row = 0; row + 1 < nodes.rows; row++) {
    for (let col = 0; col + 1 < nodes.cols; col++) walkCell(nodes, away, distance, row * nodes.cols + col, next);
  }
  const lines: Polygon[] = [];
  while (next.size > 0) {
    const [start] = next.keys();
    const points: Spot[] = [];
    for (let edge = start!; next.has(edge);) {
      points.push(crossing(nodes, away, distance, edge));
      const following = next.get(edge)!;
      next.delete(edge);
      edge = following;
    }
    if (points.length >= 3) lines.push(Float64Array.from(points.flat()));
  }
  return lines;
}

/** Joins the edges of a cell that the line crosses. An edge is its first node times two, and one more if it runs up. */
function walkCell({ cols, away: at }: Nodes, away: Away, distance: number, node: number, next: Map<number, number>) {
  const corners = [node, node + 1, node + cols + 1, node + cols];
  const inside = corners.map((corner) => at[corner]! > distance);
  if (inside[0] === inside[1] && inside[0] === inside[2] && inside[0] === inside[3]) return;
  const edges = [2 * node, 2 * (node + 1) + 1, 2 * (node + cols), 2 * node + 1];
  const out = [0, 1, 2, 3].filter((k) => inside[k] && !inside[(k + 1) % 4]);
  const into = [0, 1, 2, 3].filter((k) => !inside[k] && inside[(k + 1) % 4]);
  if (out.length === 1) {
    next.set(edges[out[0]!]!, edges[into[0]!]!);
    return;
  }
  // Two corners across from each other: whether they join is what the middle says, by the mean of all four.
  const mean = corners.reduce((sum, corner) => sum + at[corner]!, 0) / 4;
  for (const k of out) next.set(edges[k]!, edges[mean > distance ? (k + 1) % 4 : (k + 3) % 4]!);
}

/** Where the line crosses an edge: false position, halving what stays (the Illinois way). */
function crossing({ x0, y0, cols, away: at }: Nodes, away: Away, distance: number, edge: number): Spot {
  const node = Math.floor(edge / 2);
  const up = edge % 2 === 1;
  const [x, y] = [x0 + (node % cols) * STEP_MM, y0 + Math.floor(node / cols) * STEP_MM];
  const point = (t: number) => [up ? x : x + t * STEP_MM, up ? y + t * STEP_MM : y] as const;
  let [a, fa] = [0, at[node]! - distance];
  let [b, fb] = [1, at[up ? node + cols : node + 1]! - distance];
  for (let i = 0; i < 60; i++) {
    const t = (a * fb - b * fa) / (fb - fa);
    const f = away(...point(t)) - distance;
    if (Math.abs(f) < NEAR_MM || b - a < 1e-9) return point(t);
    if (f > 0 === fb > 0) [b, fb, fa] = [t, f, fa / 2];
    else [a, fa, fb] = [t, f, fb / 2];
  }
  throw new Error('a line that runs along an edge of the grid');
}
