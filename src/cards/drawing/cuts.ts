/** What is cut in a set-up, and hidden what is cut in the others: cavities, holes, channels, covers, contours. */
import { namesOf } from '../../facts/row.ts';
import { mirror } from '../../geometry/transform.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import type { LineKind, Mark } from '../card.ts';
import type { SetupId } from '../cutting-order.ts';
import type { Desk } from '../station.ts';
import { hundredth } from './coordinates.ts';

export function cuts(
  desk: Desk,
  setup: SetupId,
  flip: number,
  outline: (line: LineKind, polygon: Polygon) => Mark,
): Mark[] {
  const { spec } = desk.subject;
  const line = (of: string): LineKind => (of === setup ? 'cut' : 'hidden');
  const cavities = namesOf(spec.cavities).flatMap((id) => {
    const drawn = desk.use.fact(`cavity.${id}.drawn`);
    return drawn.ok ? [outline(line(desk.use(spec.cavities![id]!.setup)), drawn.polygon)] : [];
  });
  const holes = namesOf(spec.holes).map((id): Mark => {
    const { xMm, yMm, diameterMm } = desk.use.fact(`hole.${id}.spot`);
    return {
      kind: 'circle',
      line: line(desk.use(spec.holes![id]!.setup)),
      x: hundredth(xMm * flip),
      y: hundredth(yMm),
      radius: hundredth(diameterMm / 2),
    };
  });
  return [
    ...cavities,
    ...holes,
    ...channels(desk, setup, flip),
    ...covers(desk, setup, flip),
    ...contours(desk, setup, flip),
  ];
}

/** Channels lie inside the wood: both their sides are hidden from any face. */
function channels(desk: Desk, setup: SetupId, flip: number): Mark[] {
  const { channels: table } = desk.subject.spec;
  return namesOf(table)
    .filter((id) => desk.use(table![id]!.setup) === setup)
    .flatMap((id) => {
      const tube = desk.use.fact(`channel.${id}.void`);
      if (tube.kind !== 'tube') return [];
      const { from, to, radiusMm } = tube;
      const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
      const [nx, ny] = [(-dy / Math.hypot(dx, dy)) * radiusMm, (dx / Math.hypot(dx, dy)) * radiusMm];
      return [1, -1].map((side): Mark => {
        const ends = [from.xMm + side * nx, from.yMm + side * ny, to.xMm + side * nx, to.yMm + side * ny];
        const points = ends.map((mm, i) => hundredth(i % 2 === 0 ? mm * flip : mm));
        return { kind: 'line', line: 'hidden', points, closed: false };
      });
    });
}

/** The line each contour of the face begins at. */
function contours(desk: Desk, setup: SetupId, flip: number): Mark[] {
  const { contours: table } = desk.subject.spec;
  const hand = desk.subject.hand === 'left' ? -1 : 1;
  return namesOf(table)
    .filter((id) => desk.use(table![id]!.face) === setup)
    .map((id): Mark => {
      const { from, to } = table![id]!;
      const mm = [from.x, from.y, to.x, to.y].map((leaf) => desk.use(leaf).value / 1e6);
      const points = mm.map((value, i) => hundredth(i % 2 === 0 ? value * flip * hand : value));
      return { kind: 'line', line: 'contour', points, closed: false };
    });
}

/** Plates on the face that is being worked. */
function covers(desk: Desk, setup: SetupId, flip: number): Mark[] {
  const { covers: table } = desk.subject.spec;
  return namesOf(table)
    .filter((id) => desk.use(table![id]!.face) === setup)
    .flatMap((id): Mark[] => {
      const drawn = desk.use.fact(`cover.${id}.drawn`);
      if (!drawn.ok) return [];
      const points = [...(flip < 0 ? mirror(drawn.polygon) : drawn.polygon)].map(hundredth);
      return [{ kind: 'line', line: 'cover', points, closed: true }];
    });
}
