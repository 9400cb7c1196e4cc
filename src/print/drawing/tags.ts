/** Tags beside holes: each where there is room, never over another text, with a leader where it had to go further off. */
import { num, type Box, type Point } from './paper.ts';
import { labelBox, labelMarkup, type Label } from './text.ts';

export interface Tag {
  readonly at: Point;
  /** Of the hole on paper, mm. */
  readonly radius: number;
  readonly text: string;
}

export interface PlacedTag {
  readonly svg: string;
  readonly box: Box;
}

/** From the edge of a hole to its tag, mm of paper: close by first, then further off. */
const DISTANCES_MM = [0.8, 3, 6, 10];
/** Beyond this the eye needs a line to find the hole. */
const LEADER_FROM_MM = 2;
const DIAGONAL = Math.SQRT1_2;
const WAYS: readonly (readonly [number, number, Label['anchor']])[] = [
  [1, 0, 'start'],
  [-1, 0, 'end'],
  [0, -1, 'middle'],
  [0, 1, 'middle'],
  [DIAGONAL, -DIAGONAL, 'start'],
  [-DIAGONAL, -DIAGONAL, 'end'],
  [DIAGONAL, DIAGONAL, 'start'],
  [-DIAGONAL, DIAGONAL, 'end'],
];

/** `taken`: where text stands already. Where there is no room at all, a tag stands where it covers least. */
export function placeTags(tags: readonly Tag[], taken: readonly Box[]): PlacedTag[] {
  const texts = [...taken];
  const holes = tags.map(({ at, radius }) => boxAround(at, radius));
  return tags.map((tag, own) => {
    const others = holes.filter((_, i) => i !== own);
    const places = DISTANCES_MM.flatMap((distance) => WAYS.map((way) => placed(tag, way, distance)));
    const cover = ({ box }: { box: Box }) => sum([...texts, ...others].map((other) => overlap(box, other)));
    const best = places.find((place) => cover(place) === 0) ?? places.reduce((a, b) => (cover(b) < cover(a) ? b : a));
    texts.push(best.box);
    return { svg: best.leader + labelMarkup(best.label), box: best.box };
  });
}

function placed({ at, radius, text }: Tag, [dx, dy, anchor]: (typeof WAYS)[number], distance: number) {
  const edge = { x: at.x + dx * radius, y: at.y + dy * radius };
  const tip = { x: at.x + dx * (radius + distance), y: at.y + dy * (radius + distance) };
  // Above or below, the whole height of the text has to pass.
  const label: Label = { at: { x: tip.x, y: tip.y + dy * 1.4 }, text, anchor, bold: true };
  const leader =
    distance > LEADER_FROM_MM
      ? `<path d="M${num(edge.x)} ${num(edge.y)}L${num(tip.x)} ${num(tip.y)}" fill="none" stroke="#000" stroke-width="0.25"/>`
      : '';
  return { label, leader, box: labelBox(label) };
}

const boxAround = ({ x, y }: Point, radius: number): Box => ({
  left: x - radius,
  right: x + radius,
  top: y - radius,
  bottom: y + radius,
});

function overlap(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
