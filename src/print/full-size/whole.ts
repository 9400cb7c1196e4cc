/** The whole face in one picture of true size, for a plotter or a drawing program: picture, bars, title block, line types. */
import type { FullSize } from '../../cards/card.ts';
import { drawLegend } from '../drawing/legend.ts';
import { num } from '../drawing/paper.ts';
import { BAR_ROOM_MM } from '../drawing/scale-bar.ts';
import { labelMarkup, TEXT_MM, textWidth } from '../drawing/text.ts';
import { escaped } from '../markup.ts';
import { legendOf } from './legend.ts';
import type { Picture } from './picture.ts';
import { bothBars } from './tile-page.ts';
import type { Speech } from '../speech.ts';

const MARGIN_MM = 3;
const LINE_MM = TEXT_MM * 1.5;

/** `block`: the lines of the title block, the first in bold. */
export function wholeSvg(
  template: FullSize,
  { svg, box }: Picture,
  block: readonly string[],
  talk: Speech,
  style: string,
): string {
  const corner = { x: box.left - MARGIN_MM, y: box.bottom + MARGIN_MM };
  const left = corner.x - BAR_ROOM_MM - MARGIN_MM;
  const top = box.top - MARGIN_MM;
  const right = Math.max(box.right, box.left + Math.max(...block.map(textWidth))) + MARGIN_MM;
  const under = corner.y + BAR_ROOM_MM + MARGIN_MM;
  const lines = block.map((text, i) =>
    labelMarkup({ at: { x: box.left, y: under + (i + 0.5) * LINE_MM }, text, anchor: 'start', bold: i === 0 }),
  );
  const keyAt = { x: box.left, y: under + block.length * LINE_MM + 1 };
  const key = drawLegend(legendOf(template, talk), keyAt, right - keyAt.x);
  const [width, height] = [right - left, keyAt.y + key.height + MARGIN_MM - top];
  const title = escaped(block[0] ?? '');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(width)}mm" height="${num(height)}mm" ` +
    `viewBox="${num(left)} ${num(top)} ${num(width)} ${num(height)}" role="img" aria-label="${title}" ` +
    `font-family="'Atkinson Hyperlegible Next', sans-serif" font-size="${TEXT_MM}">` +
    `<title>${title}</title>${style}${svg}${bothBars(corner)}${lines.join('')}${key.svg}</svg>`
  );
}
