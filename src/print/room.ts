/**
 * Whether page 1 has room for a drawing under the steps. Page 1 alone must be enough to work: a drawing that would push the
 * checks or the sign-off from it goes to page 2. The height of the text is estimated from its length, a little generously,
 * with the sizes of print.css; a wrong guess moves a drawing, and loses nothing.
 */
import type { Arg, Card } from '../cards/card.ts';
import type { Paper } from './input.ts';

type Plain = (arg: Arg) => string;

/** Height of a page between its margins, millimetres; the last few are kept free. */
const PAGE_MM: Readonly<Record<Paper, number>> = { A4: 297 - 21 - 4, Letter: 279.4 - 21 - 4 };
const COLUMN_MM = 96;
const HEAD_MM = 33;
const KEY_ROW_MM = 21;
/** Letters to a line, and a line's height, in each column. */
const STEP = { letters: 38, line: 5.95 };
const SIDE = { letters: 36, line: 5.6 };
const CHECK = { letters: 40, line: 6.1 };
const WIDE = { letters: 66, line: 6.1 };

export function fitsPageOne(card: Card, widthMm: number, heightMm: number, paper: Paper, plain: Plain): boolean {
  const work = Math.max(stepsMm(card, plain) + 10 + heightMm, sideMm(card, plain));
  const rest = HEAD_MM + keysMm(card, plain) + checksMm(card, plain) + signOffMm(card);
  return widthMm <= COLUMN_MM && rest + work <= PAGE_MM[paper];
}

function textMm(text: string, { letters, line }: { letters: number; line: number }): number {
  return Math.max(1, Math.ceil(text.length / letters)) * line;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function stepsMm(card: Card, plain: Plain): number {
  return sum(card.steps.map((step) => textMm(plain(step), STEP) + 0.8));
}

function sideMm(card: Card, plain: Plain): number {
  const cautions = card.cautions.map(({ line }) => 10 + textMm(plain(line), SIDE));
  const whenOut = [...card.whenOut, card.decides].map((line) => textMm(plain(line), SIDE));
  const tools = card.tools.map(({ role, name }) => textMm(`${plain(role)} ${plain(name)}`, SIDE));
  return sum([...cautions, 8, ...whenOut, ...tools]);
}

/** Numbers stand side by side as far as they go: a digit of 9 mm type is some 5.5 mm wide. */
function keysMm(card: Card, plain: Plain): number {
  const widths = card.keyNumbers.map(({ value }) => 8 + plain(value).replace(/ \(.*$/, '').length * 5.5);
  let rows = widths.length > 0 ? 1 : 0;
  let used = 0;
  for (const width of widths) {
    if (used > 0 && used + width > 190) {
      rows++;
      used = 0;
    }
    used += width;
  }
  return rows * KEY_ROW_MM;
}

function checksMm(card: Card, plain: Plain): number {
  const heights = card.checks.map(({ what, limits, gauge, often, boxes }) => {
    const size = boxes.length > 2 ? CHECK : WIDE;
    const text = textMm(`${plain(what)} ${limits ? plain(limits) : ''}`, size);
    const how = textMm(`${plain(gauge)} · ${plain(often)}`, size);
    return Math.max(text + how, Math.ceil(boxes.length / 4) * 11.1) + 1.5;
  });
  return sum([6, ...heights]);
}

function signOffMm(card: Card): number {
  return 13 + Math.ceil(card.signOff.length / 2) * 5.6;
}
