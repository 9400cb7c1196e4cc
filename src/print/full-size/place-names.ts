/**
 * Where the names of cuts stand in a drawing at full size: as near as can be, across no line, no hole and no other name. A
 * name hides what lies under it, and by these lines patterns are made.
 */
import { contains, nearestOnEdge } from '../../geometry/nearness.ts';
import { signedArea } from '../../geometry/measure.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import { around, num, type Box, type Point } from '../drawing/paper.ts';
import { labelBox, labelMarkup, type Label } from '../drawing/text.ts';

/** On paper, y downward. */
export interface Spot extends Point {
  /** Of a hole with its centre mark; nothing of what has room for its name inside. */
  readonly radius: number;
  /** Of a cavity: where its name belongs. */
  readonly edge?: Polygon;
  readonly text: string;
  readonly bold: boolean;
}

/** A straight line between two points. */
export type Way = readonly [Point, Point];

/** What a name may not lie on, and what it may not leave. */
export interface Ground {
  readonly ways: readonly Way[];
  readonly marks: readonly Box[];
  readonly within: Box;
}

const STEP_MM = 2;
const FARTHEST_MM = 80;
const DIRECTIONS = 16;
/** Clear room round a name, and the longest way to its hole that needs no line. */
const ROOM_MM = 0.8;
const NEAR_MM = 4;

/** A place a name may have, with the room it takes there. */
interface Place {
  readonly at: Point;
  readonly box: Box;
}

/** The names as SVG, each with a thin line to what it names where it stands apart from it. */
export function placeNames(spots: readonly Spot[], ground: Ground): string {
  const boxes: Box[] = [...ground.marks];
  const named: Box[] = [];
  const leaders: Way[] = [];
  const smallFirst = spots.toSorted((a, b) => areaOf(a) - areaOf(b));
  const placed = smallFirst.map((spot, i) => {
    const others = smallFirst.slice(0, i).flatMap(({ edge }) => edge ?? []);
    const inside = ({ at }: Place): boolean =>
      spot.edge === undefined ||
      (contains(spot.edge, at.x, at.y) && !others.some((edge) => contains(edge, at.x, at.y)));
    const clear = ({ box }: Place): boolean => !ground.ways.some((way) => meets(way, box));
    const apart = (place: Place): boolean => {
      if (!holds(ground.within, place.box) || boxes.some((other) => overlap(place.box, other))) return false;
      const leader = leaderOf(spot, place);
      const crossed = leader && named.some((other) => meets(leader, other));
      return !crossed && !leaders.some((other) => meets(other, place.box));
    };
    const places = placesFor(spot);
    const place =
      places.find((one) => apart(one) && inside(one) && clear(one)) ??
      places.find((one) => apart(one) && clear(one)) ??
      places.find(apart) ??
      places[0]!;
    const leader = leaderOf(spot, place);
    boxes.push(place.box);
    named.push(place.box);
    if (leader) leaders.push(leader);
    return (leader ? thin(leader) : '') + labelMarkup(labelOf(spot, place.at));
  });
  return placed.join('');
}

/** Cavities by their size, so that one in another has its name inside both, and the other beside it; then all else. */
const areaOf = ({ edge }: Spot): number => (edge ? Math.abs(signedArea(edge)) : Infinity);

const labelOf = ({ text, bold }: Spot, at: Point): Label => ({ at, text, anchor: 'middle', bold });

/** Beside a hole, in all directions and further and further off; of anything else at its middle first. */
function placesFor(spot: Spot): Place[] {
  const own = widened(labelBox(labelOf(spot, { x: 0, y: 0 })));
  const hole = spot.radius > 0;
  const least = hole ? spot.radius + CROSS_MM : 0;
  // Of a name beside a hole, the near edge is that far off and not the middle.
  const [wide, high] = hole ? [own.right, own.bottom] : [0, 0];
  const places: Place[] = [];
  for (let off = least; off <= least + FARTHEST_MM; off += STEP_MM)
    for (let i = 0; i < DIRECTIONS; i++) {
      const turn = (2 * Math.PI * i) / DIRECTIONS;
      const x = spot.x + Math.cos(turn) * (off + wide);
      const y = spot.y + Math.sin(turn) * (off + high);
      places.push({
        at: { x, y },
        box: { left: x + own.left, right: x + own.right, top: y + own.top, bottom: y + own.bottom },
      });
    }
  return places;
}

/** How far a centre mark reaches past the edge of its hole, mm. */
export const CROSS_MM = 2;

/** From the edge of a hole or a cavity, or from the middle, to the nearest place of the name; none where it stands there. */
function leaderOf({ x, y, radius, edge }: Spot, { at, box }: Place): Way | undefined {
  if (edge && contains(edge, at.x, at.y)) return undefined;
  const to = { x: Math.min(Math.max(x, box.left), box.right), y: Math.min(Math.max(y, box.top), box.bottom) };
  const length = Math.hypot(to.x - x, to.y - y);
  if (!edge && length < radius + NEAR_MM) return undefined;
  if (edge) return [nearestOnEdge(edge, to.x, to.y).point, to];
  const share = radius / length;
  return [{ x: x + (to.x - x) * share, y: y + (to.y - y) * share }, to];
}

const thin = ([a, b]: Way): string =>
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

const holds = (outer: Box, inner: Box): boolean =>
  outer.left <= inner.left && inner.right <= outer.right && outer.top <= inner.top && inner.bottom <= outer.bottom;

/** Whether a way passes through a box: by none of its sides, nor with all corners on one side of it. Asked a million times. */
function meets([a, b]: Way, { left, top, right, bottom }: Box): boolean {
  if ((a.x < left && b.x < left) || (a.x > right && b.x > right)) return false;
  if ((a.y < top && b.y < top) || (a.y > bottom && b.y > bottom)) return false;
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const across = dx * (top - a.y) - dy * (left - a.x);
  const [wide, high] = [dy * (right - left), dx * (bottom - top)];
  const least = across + Math.min(0, -wide, high, high - wide);
  const most = across + Math.max(0, -wide, high, high - wide);
  return least <= 0 && most >= 0;
}
