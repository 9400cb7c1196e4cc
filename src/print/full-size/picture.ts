/** A face at full size, on paper without an edge: its lines, the centres of its holes, its names. */
import type { FullSize, Mark } from '../../cards/card.ts';
import { drawMark, LAYERS } from '../drawing/marks.ts';
import { around, num, onPaper, pointsOf, union, type Box, type Point } from '../drawing/paper.ts';
import { drawingWords, type Speech } from '../speech.ts';
import { CROSS_MM, placeNames, type Ground, type Way } from './place-names.ts';

export interface Picture {
  readonly svg: string;
  /** In millimetres, the origin where the centreline meets the bridge line, y downward. */
  readonly box: Box;
}

/** Everything but the names: what has to be on paper. */
export function linesOf({ marks, names }: FullSize, talk: Speech): Picture {
  const pen = { ...drawingWords(talk, '', 1), scale: 1, patternId: () => '' };
  const drawn = marks.flatMap((mark) => (mark.kind === 'tag' ? [] : [{ kind: mark.kind, ...drawMark(mark, pen) }]));
  const lines = LAYERS.flatMap((kinds) => drawn.filter(({ kind }) => kinds.includes(kind)).map(({ svg }) => svg));
  const centres = names.flatMap(({ x, y, radius }) => (radius > 0 ? [cross(onPaper(x, y, 1), radius + CROSS_MM)] : []));
  return { svg: lines.join('') + centres.join(''), box: union(drawn.map(({ box }) => box)) };
}

/** The names, where they cross neither the drawing's lines nor what else lies on the ground. */
export function namesOf({ marks, names }: FullSize, talk: Speech, ground: Ground): string {
  const spots = names.map(({ x, y, radius, edge, text, own }) => ({
    ...onPaper(x, y, 1),
    radius,
    ...(edge ? { edge: Float64Array.from(edge, (mm, i) => (i % 2 === 0 ? mm : -mm)) } : {}),
    text: talk.plain(text),
    bold: own,
  }));
  const holes = marks.flatMap((mark) =>
    mark.kind === 'circle' ? [around([onPaper(mark.x, mark.y, 1)], mark.radius + CROSS_MM)] : [],
  );
  return placeNames(spots, {
    ways: [...marks.flatMap(waysOf), ...ground.ways],
    marks: [...holes, ...ground.marks],
    within: ground.within,
  });
}

/** An upright cross, thin enough to be pricked through. */
export function cross({ x, y }: Point, reach: number): string {
  return (
    `<path d="M${num(x - reach)} ${num(y)}H${num(x + reach)}M${num(x)} ${num(y - reach)}V${num(y + reach)}" ` +
    `fill="none" stroke="#000" stroke-width="0.18"/>`
  );
}

function waysOf(mark: Mark): readonly Way[] {
  if (mark.kind !== 'line') return [];
  const points = pointsOf(mark.points, 1);
  const ends = mark.closed ? [...points.slice(1), points[0]!] : points.slice(1);
  return ends.map((to, i): Way => [points[i]!, to]);
}
