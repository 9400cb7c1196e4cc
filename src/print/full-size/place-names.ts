/**
 * Where the names of cuts stand in a drawing at full size: as near as can be, across no line, no hole and no other name. A
 * name hides what lies under it, and by these lines patterns are made.
 */
import { around, num, type Box, type Point } from '../drawing/paper.ts';
import { labelBox, labelMarkup, type Label } from '../drawing/text.ts';

/** On paper, y downward. */
export interface Spot extends Point {
  /** Of a hole with its centre mark; nothing of what has room for its name inside. */
  readonly radius: number;
  readonly text: string;
  readonly bold: boolean;
}

/** What a name may not lie on. */
export interface Ground {
  readonly ways: readonly (readonly [Point, Point])[];
  readonly holes: readonly Box[];
}

const STEP_MM = 2;
const FARTHEST_MM = 80;
const DIRECTIONS = 16;
/** Clear room round a name, and the longest way to its hole that needs no line. */
const ROOM_MM = 0.8;
const NEAR_MM = 4;

/** The names as SVG, each with a thin line to its hole where it stands apart from it. */
export function placeNames(spots: readonly Spot[], ground: Ground): { readonly svg: string; readonly boxes: Box[] } {
  const boxes: Box[] = [];
  const leaders: (readonly [Point, Point])[] = [];
  // Holes have the least choice.
  const placed = spots
    .toSorted((a, b) => Number(b.radius > 0) - Number(a.radius > 0))
    .map((spot) => {
      const clear = (label: Label): boolean => {
        const box = widened(labelBox(label));
        const leader = leaderOf(spot, box);
        const taken = [...boxes, ...ground.holes];
        return (
          !taken.some((other) => overlap(box, other)) &&
          ![...ground.ways, ...leaders].some(([a, b]) => meets(a, b, box)) &&
          (leader === undefined || !boxes.some((other) => meets(...leader, other)))
        );
      };
      const candidates = placesFor(spot);
      const label = candidates.find(clear) ?? candidates[0]!;
      const box = widened(labelBox(label));
      const leader = leaderOf(spot, box);
      boxes.push(box);
      if (leader) leaders.push(leader);
      return (leader ? thin(...leader) : '') + labelMarkup(label);
    });
  return { svg: placed.join(''), boxes };
}

/** Beside a hole, in all directions and further and further off; of a cavity at its middle first. */
function placesFor(spot: Spot): Label[] {
  const labelAt = (at: Point): Label => ({ at, text: spot.text, anchor: 'middle', bold: spot.bold });
  const own = labelBox(labelAt({ x: 0, y: 0 }));
  const hole = spot.radius > 0;
  const least = hole ? spot.radius + CROSS_MM + 1 : 0;
  const labels: Label[] = [];
  for (let off = least; off <= least + FARTHEST_MM; off += STEP_MM)
    for (let i = 0; i < DIRECTIONS; i++) {
      const turn = (2 * Math.PI * i) / DIRECTIONS;
      const [along, down] = [Math.cos(turn), Math.sin(turn)];
      // The near edge of the name is that far off, not its middle.
      const [wide, high] = hole ? [own.right, own.bottom] : [0, 0];
      labels.push(labelAt({ x: spot.x + along * (off + wide), y: spot.y + down * (off + high) }));
    }
  return labels;
}

/** How far a centre mark reaches past the edge of its hole, mm. */
export const CROSS_MM = 2;

/** From the edge of the hole to the nearest place of the name; none where the name stands beside it. */
function leaderOf({ x, y, radius }: Spot, box: Box): readonly [Point, Point] | undefined {
  if (radius === 0) return undefined;
  const to = { x: Math.min(Math.max(x, box.left), box.right), y: Math.min(Math.max(y, box.top), box.bottom) };
  const length = Math.hypot(to.x - x, to.y - y);
  if (length < radius + NEAR_MM) return undefined;
  const share = radius / length;
  return [{ x: x + (to.x - x) * share, y: y + (to.y - y) * share }, to];
}

const thin = (a: Point, b: Point): string =>
  `<path d="M${num(a.x)} ${num(a.y)}L${num(b.x)} ${num(b.y)}" fill="none" stroke="#000" stroke-width="0.18"/>`;

const widened = ({ left, top, right, bottom }: Box): Box =>
  around(
    [
      { x: left, y: top },
      { x: right, y: bottom },
    ],
    ROOM_MM,
  );

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether a straight way passes through a box: what is left of it between each pair of sides in turn. */
function meets(a: Point, b: Point, box: Box): boolean {
  let [from, to] = [0, 1];
  for (const [start, way, low, high] of [
    [a.x, b.x - a.x, box.left, box.right],
    [a.y, b.y - a.y, box.top, box.bottom],
  ] as const) {
    if (way === 0) {
      if (start < low || start > high) return false;
    } else {
      const [one, other] = [(low - start) / way, (high - start) / way];
      from = Math.max(from, Math.min(one, other));
      to = Math.min(to, Math.max(one, other));
    }
  }
  return from <= to;
}
