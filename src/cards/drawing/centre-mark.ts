/** The middle of what is glued, as a cross in a ring: what is laid under the centre of the press. */
import type { Mark } from '../card.ts';
import type { Desk } from '../station.ts';
import { hundredth } from './coordinates.ts';

/** Half of the cross, and the ring, mm of the body: 5 mm and 3 mm on paper at 1:5. */
const REACH_MM = 25;
const RING_MM = 15;

export function centreMark({ use }: Desk): readonly Mark[] {
  const [x, y] = [use.fact('joint.centre.x').value / 1e6, use.fact('joint.centre.y').value / 1e6];
  const stroke = (points: readonly number[]): Mark => ({
    kind: 'line',
    line: 'leader',
    points: points.map(hundredth),
    closed: false,
  });
  return [
    stroke([x - REACH_MM, y, x + REACH_MM, y]),
    stroke([x, y - REACH_MM, x, y + REACH_MM]),
    { kind: 'circle', line: 'leader', x: hundredth(x), y: hundredth(y), radius: RING_MM },
  ];
}
