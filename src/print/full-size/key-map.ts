/** How the tiles lie: outline and cells, small, with the name of each. */
import type { FullSize } from '../../cards/card.ts';
import { escaped } from '../markup.ts';
import { num, pathData } from '../drawing/paper.ts';
import type { Grid } from './grid.ts';

const LONGEST_MM = 120;
const NAME_MM = 8;

export function keyMap({ marks }: FullSize, { tiles, whole: box }: Grid, title: string): string {
  const scale = Math.max(box.right - box.left, box.bottom - box.top) / LONGEST_MM;
  const lines = marks.flatMap((mark) =>
    mark.kind === 'line' && (mark.line === 'outline' || mark.line === 'cut')
      ? [`<path d="${pathData(mark.points, scale, mark.closed)}"/>`]
      : [],
  );
  const cells = tiles.map(({ cell: { left, top, right, bottom } }) => {
    const [x, y, width, height] = [left, top, right - left, bottom - top].map((mm) => num(mm / scale));
    return `<rect x="${x}" y="${y}" width="${width}" height="${height}"/>`;
  });
  const names = tiles.map(
    ({ name, cell }) =>
      `<text x="${num((cell.left + 6 * scale) / scale)}" y="${num(cell.top / scale + NAME_MM)}">${escaped(name)}</text>`,
  );
  const [x, y, width, height] = [box.left, box.top, box.right - box.left, box.bottom - box.top].map((mm) =>
    num(mm / scale),
  );
  return (
    `<svg class="full-size-map" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escaped(title)}" ` +
    `width="${width}mm" height="${height}mm" viewBox="${x} ${y} ${width} ${height}" fill="none" stroke="#000">` +
    `<g stroke-width="0.3">${lines.join('')}</g><g stroke-width="0.5" stroke-dasharray="3 1.5">${cells.join('')}</g>` +
    `<g fill="#000" stroke="#fff" stroke-width="1.5" paint-order="stroke" font-size="${NAME_MM}" font-weight="700">${names.join('')}</g></svg>`
  );
}
