/**
 * How page 1 is shared out. It alone must be enough to work: what to do when out stands in the shorter column, and a drawing
 * that would push the checks or the sign-off from the page goes to page 2. The height of the text is estimated from its
 * length, a little generously, with the sizes of print.css; a wrong guess moves a block, and loses nothing.
 */
import type { Arg, Card } from '../cards/card.ts';
import type { Paper } from './input.ts';

type Plain = (arg: Arg) => string;

/** Height of a page between its margins, millimetres; the last few are kept free. */
const PAGE_MM: Readonly<Record<Paper, number>> = { A4: 297 - 21 - 4, Letter: 279.4 - 21 - 4 };
const COLUMN_MM = { steps: 96, cautions: 90 };
const CAPTION_MM = 10;
const HEAD_MM = 33;
const KEY_ROW_MM = 21;
/** Letters to a line, and a line's height, in each column. */
const STEP = { letters: 38, line: 5.95 };
const SIDE = { letters: 36, line: 5.6 };
const CHECK = { letters: 40, line: 6.1 };
const WIDE = { letters: 66, line: 6.1 };

/** The column a block stands in: under the steps or under the cautions; a drawing perhaps in none. */
export interface PageOne {
  readonly whenOut: 'steps' | 'cautions';
  readonly drawing: 'steps' | 'cautions' | 'none';
}

export function pageOne(
  card: Card,
  drawing: { readonly widthMm: number; readonly heightMm: number } | undefined,
  paper: Paper,
  plain: Plain,
): PageOne {
  const out = whenOutMm(card, plain);
  const [steps, cautions] = [stepsMm(card, plain), cautionsMm(card, plain)];
  const whenOut = steps <= cautions ? 'steps' : 'cautions';
  const columns = {
    steps: steps + (whenOut === 'steps' ? out : 0),
    cautions: cautions + (whenOut === 'steps' ? 0 : out),
  };
  const shorter = columns.steps <= columns.cautions ? 'steps' : 'cautions';
  if (!drawing) return { whenOut, drawing: 'none' };
  const work = Math.max(columns.steps, columns.cautions, columns[shorter] + CAPTION_MM + drawing.heightMm);
  const rest = HEAD_MM + keysMm(card, plain) + checksMm(card, plain) + signOffMm(card);
  const fits = drawing.widthMm <= COLUMN_MM[shorter] && rest + work <= PAGE_MM[paper];
  return { whenOut, drawing: fits ? shorter : 'none' };
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

function cautionsMm(card: Card, plain: Plain): number {
  const signals = new Set(card.cautions.map(({ signal }) => signal));
  const lines = card.cautions.map(({ line }) => 1.2 + textMm(plain(line), SIDE));
  const tools = card.tools.map(({ role, name }) => textMm(`${plain(role)} ${plain(name)}`, SIDE));
  return sum([signals.size * 9, ...lines, ...tools]);
}

function whenOutMm(card: Card, plain: Plain): number {
  return 10 + sum([...card.whenOut, card.decides].map((line) => textMm(plain(line), SIDE)));
}

/** Numbers stand side by side as far as they go: a letter of 9 mm type is some 5 mm wide, of the unit less. */
function keysMm(card: Card, plain: Plain): number {
  const widths = card.keyNumbers.map(({ value }) => 3 + plain(value).replace(/ \(.*$/, '').length * 4.75);
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
    return Math.max(text + how, Math.ceil(boxes.length / 4) * 10.1) + 1.5;
  });
  return sum([6, ...heights]);
}

function signOffMm(card: Card): number {
  return 13 + Math.ceil(card.signOff.length / 2) * 5.6;
}
