/** A face at full size, on paper without an edge: its lines, the centres of its holes, its names. */
import type { FullSize } from '../../cards/card.ts';
import { drawMark, LAYERS } from '../drawing/marks.ts';
import { around, num, onPaper, pointsOf, union, type Box, type Point } from '../drawing/paper.ts';
import { drawingWords, type Speech } from '../speech.ts';
import { CROSS_MM, placeNames } from './place-names.ts';

export interface Picture {
  readonly svg: string;
  /** Everything drawn; in millimetres, the origin where the centreline meets the bridge line, y downward. */
  readonly box: Box;
}

export function pictureOf({ marks, names }: FullSize, talk: Speech): Picture {
  const pen = { ...drawingWords(talk, '', 1), scale: 1, patternId: () => '' };
  const drawn = marks.map((mark) => ({ kind: mark.kind, ...drawMark(mark, pen) }));
  const lines = LAYERS.flatMap((kinds) => drawn.filter(({ kind }) => kinds.includes(kind)).map(({ svg }) => svg));
  const spots = names.map(({ x, y, radius, text, own }) => ({
    ...onPaper(x, y, 1),
    radius,
    text: talk.plain(text),
    bold: own,
  }));
  const holes = marks.flatMap((mark) =>
    mark.kind === 'circle' ? [around([onPaper(mark.x, mark.y, 1)], mark.radius + CROSS_MM)] : [],
  );
  const placed = placeNames(spots, { ways: marks.flatMap(waysOf), holes });
  const centres = spots.filter(({ radius }) => radius > 0).map((spot) => cross(spot, spot.radius + CROSS_MM));
  return {
    svg: lines.join('') + centres.join('') + placed.svg,
    box: union([...drawn.map(({ box }) => box), ...placed.boxes]),
  };
}

/** An upright cross, thin enough to be pricked through. */
export function cross({ x, y }: Point, reach: number): string {
  return (
    `<path d="M${num(x - reach)} ${num(y)}H${num(x + reach)}M${num(x)} ${num(y - reach)}V${num(y + reach)}" ` +
    `fill="none" stroke="#000" stroke-width="0.18"/>`
  );
}

function waysOf(mark: FullSize['marks'][number]): (readonly [Point, Point])[] {
  if (mark.kind !== 'line') return [];
  const points = pointsOf(mark.points, 1);
  const ends = mark.closed ? [...points.slice(1), points[0]!] : points.slice(1);
  return ends.map((to, i) => [points[i]!, to]);
}
