import { escaped } from '../markup.ts';
import { num, type Box, type Point } from './paper.ts';

/** Size of the drawing's text in millimetres: capitals of 0.668 em, so 2.3 mm. */
export const TEXT_MM = 3.5;
/** Of letters and numbers that are looked for in a list: capitals of 3.1 mm, read at arm's length. */
export const MARK_MM = 4.6;
/** No character of the font but W and @ is wider on average: digits are 0.6 em. */
const WIDTH_EM = 0.6;

export type Anchor = 'start' | 'middle' | 'end';

export interface Label {
  readonly at: Point;
  readonly text: string;
  readonly anchor: Anchor;
  /** Degrees, clockwise on paper. */
  readonly turn?: number;
  readonly bold?: boolean;
  readonly sizeMm?: number;
}

/** Text with a white halo, readable across lines; `at` is the middle of its height. */
export function labelMarkup({ at, text, anchor, turn = 0, bold = false, sizeMm = TEXT_MM }: Label): string {
  const turned = turn === 0 ? '' : ` transform="rotate(${num(turn)} ${num(at.x)} ${num(at.y)})"`;
  // Capitals stand on the base line: half their height below the middle.
  const base = num(at.y + (sizeMm * 0.668) / 2);
  const size = sizeMm === TEXT_MM ? '' : ` font-size="${sizeMm}"`;
  return (
    `<text x="${num(at.x)}" y="${base}" text-anchor="${anchor}"${size}${bold ? ' font-weight="700"' : ''}${turned} ` +
    `paint-order="stroke" stroke="#fff" stroke-width="1" stroke-linejoin="round">${escaped(text)}</text>`
  );
}

export function textWidth(text: string, sizeMm = TEXT_MM): number {
  return text.length * sizeMm * WIDTH_EM;
}

/** Room of a label, turned or not. */
export function labelBox({ at, text, anchor, turn = 0, sizeMm = TEXT_MM }: Label): Box {
  const width = textWidth(text, sizeMm);
  const from = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width;
  const angle = (turn * Math.PI) / 180;
  const corners = [from, from + width].flatMap((along) =>
    [-sizeMm / 2, sizeMm / 2].map((up) => ({
      x: at.x + along * Math.cos(angle) - up * Math.sin(angle),
      y: at.y + along * Math.sin(angle) + up * Math.cos(angle),
    })),
  );
  return {
    left: Math.min(...corners.map((corner) => corner.x)),
    right: Math.max(...corners.map((corner) => corner.x)),
    top: Math.min(...corners.map((corner) => corner.y)),
    bottom: Math.max(...corners.map((corner) => corner.y)),
  };
}
