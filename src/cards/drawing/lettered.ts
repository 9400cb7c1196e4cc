/** What the lists call each thing in a plan: letters of cavities, numbers of holes, the points a pocket is measured at. */
import { namesOf } from '../../facts/row.ts';
import type { Literal, Mark } from '../card.ts';
import { cavitiesOf } from '../cutting-order.ts';
import type { SetupId } from '../cutting-order.ts';
import { pocketPoints } from '../neck.ts';
import type { Desk } from '../station.ts';
import { hundredth } from './coordinates.ts';

export const lettered = (desk: Desk, setup: SetupId, flip: number): Mark[] => [
  ...labels(desk, setup, flip),
  ...(setup === 'top' ? pocketPoints(desk, flip) : []),
  ...holeTags(desk, setup, flip),
];

/** Cavities of this set-up by letter, in the order they are cut: the depth table uses the same. */
export const cavityLetters = (desk: Desk, setup: SetupId): ReadonlyMap<string, Literal> =>
  new Map(
    cavitiesOf(desk, setup).map((id, i) => [id, { kind: 'literal', of: 'point', text: String.fromCharCode(65 + i) }]),
  );

/** Letters at the middle of their cavities, or where one stands free of the letters and numbered points beside it. */
function labels(desk: Desk, setup: SetupId, flip: number): Mark[] {
  const points = setup === 'top' ? pocketPoints(desk, flip) : [];
  const placed = points.flatMap((mark) => (mark.kind === 'point' ? [{ x: mark.x, y: mark.y }] : []));
  return [...cavityLetters(desk, setup)].map(([id, text]): Mark => {
    const { x, y } = desk.subject.spec.cavities![id]!.at;
    const hand = desk.subject.hand === 'left' ? -1 : 1;
    const at = { x: hundredth((desk.use(x).value / 1e6) * flip * hand), y: hundredth(desk.use(y).value / 1e6) };
    const places = ASIDE.map(([dx, dy]) => ({
      x: hundredth(at.x + dx * LETTER_MM),
      y: hundredth(at.y + dy * LETTER_MM),
    }));
    const free = places.find((place) =>
      placed.every((other) => Math.hypot(other.x - place.x, other.y - place.y) >= LETTER_MM),
    );
    placed.push(free ?? at);
    return { kind: 'label', ...(free ?? at), text, anchor: 'middle' };
  });
}

/** Room a letter takes on the body at 1:2.5. */
const LETTER_MM = 16;
const ASIDE = [
  [0, 0],
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [0, -2],
  [0, 2],
] as const;

/** Holes of this set-up by what the list calls them. */
export const holeNumbers = (desk: Desk, setup: SetupId): ReadonlyMap<string, Literal> => {
  const own = namesOf(desk.subject.spec.holes).filter((id) => desk.use(desk.subject.spec.holes![id]!.setup) === setup);
  return new Map(own.map((id, i) => [id, { kind: 'literal', of: 'point', text: `H${i + 1}` }]));
};

function holeTags(desk: Desk, setup: SetupId, flip: number): Mark[] {
  return [...holeNumbers(desk, setup)].map(([id, text]): Mark => {
    const { xMm, yMm, diameterMm } = desk.use.fact(`hole.${id}.spot`);
    return { kind: 'tag', x: hundredth(xMm * flip), y: hundredth(yMm), radius: hundredth(diameterMm / 2), text };
  });
}
