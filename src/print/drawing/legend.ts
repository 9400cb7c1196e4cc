/** What the line types and hatchings of a drawing mean: a sample and a word each, in rows as wide as the drawing. */
import type { LineKind, Mark } from '../../cards/card.ts';
import { HATCHES, LINE_KINDS, lineAttributes, type Hatch } from './lines.ts';
import { num, type Point } from './paper.ts';
import { labelMarkup, textWidth } from './text.ts';

const SAMPLE_MM = 14;
const ROW_MM = 5.5;
const GAP_MM = 4;

export interface Entry {
  readonly of: LineKind | Hatch;
  readonly word: string;
}

/** The kinds a drawing uses, in a fixed order. Outline and leaders explain themselves. */
export function usedKinds(marks: readonly Mark[]): { lines: LineKind[]; hatches: Hatch[] } {
  const lines = new Set(marks.flatMap((mark) => ('line' in mark ? [mark.line] : [])));
  const hatches = new Set(
    marks.flatMap((mark) => (mark.kind === 'area' || mark.kind === 'region' ? [mark.hatch] : [])),
  );
  return {
    lines: LINE_KINDS.filter((kind) => lines.has(kind) && kind !== 'outline' && kind !== 'leader'),
    hatches: HATCHES.filter((hatch) => hatches.has(hatch)),
  };
}

export interface LegendInput {
  readonly lines: readonly { of: LineKind; word: string }[];
  readonly hatches: readonly { of: Hatch; word: string }[];
  readonly patternId: (hatch: Hatch) => string;
}

/** Room of the widest entry. */
export const legendWidth = ({ lines, hatches }: LegendInput): number =>
  Math.max(0, ...[...lines, ...hatches].map(({ word }) => entryWidth(word)));

const entryWidth = (word: string): number => SAMPLE_MM + 1.5 + textWidth(word);

export function drawLegend(input: LegendInput, start: Point, width: number): { svg: string; height: number } {
  const entries = [
    ...input.lines.map(({ of, word }) => ({ word, sample: (at: Point) => lineSample(of, at) })),
    ...input.hatches.map(({ of, word }) => ({ word, sample: (at: Point) => hatchSample(input.patternId(of), at) })),
  ];
  let x = 0;
  let row = 0;
  const parts = entries.map(({ word, sample }) => {
    const needed = entryWidth(word);
    if (x > 0 && x + needed > width) {
      x = 0;
      row++;
    }
    const at = { x: start.x + x, y: start.y + (row + 0.5) * ROW_MM };
    x += needed + GAP_MM;
    return sample(at) + labelMarkup({ at: { x: at.x + SAMPLE_MM + 1.5, y: at.y }, text: word, anchor: 'start' });
  });
  return { svg: parts.join(''), height: entries.length === 0 ? 0 : (row + 1) * ROW_MM };
}

function lineSample(kind: LineKind, at: Point): string {
  return `<path d="M${num(at.x)} ${num(at.y)}h${SAMPLE_MM}" ${lineAttributes(kind)}/>`;
}

function hatchSample(patternId: string, at: Point): string {
  return (
    `<rect x="${num(at.x)}" y="${num(at.y - 2)}" width="${SAMPLE_MM}" height="4" ` +
    `fill="url(#${patternId})" stroke="#000" stroke-width="0.25"/>`
  );
}
