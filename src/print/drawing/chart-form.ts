/** The two charts of a form: a field to plot in, its columns those of the table above it; known lines drawn in. */
import { escaped } from '../markup.ts';
import { num } from './paper.ts';

export interface FormLine {
  /** In the unit the field is drawn in. */
  readonly at: number;
  readonly text: string;
  /** Limits of the piece are drawn thick; those of the chart dashed, its middle thin. */
  readonly kind: 'limit' | 'control' | 'middle';
}

export interface FormField {
  readonly title: string;
  readonly columns: number;
  readonly columnMm: number;
  readonly labelMm: number;
  readonly heightMm: number;
  readonly lines: readonly FormLine[];
}

const STROKE = {
  limit: 'stroke-width="0.7"',
  control: 'stroke-width="0.45" stroke-dasharray="3 1.2"',
  middle: 'stroke-width="0.35"',
} as const;
const TEXT_MM = 3.1;

/** An SVG in millimetres of paper. */
export function chartForm({ title, columns, columnMm, labelMm, heightMm, lines }: FormField): string {
  const width = labelMm + columns * columnMm;
  const grid = [
    ...Array.from({ length: columns + 1 }, (_, i) => labelMm + i * columnMm).map(
      (x) => `<path d="M${num(x)} 0V${num(heightMm)}"/>`,
    ),
    ...Array.from({ length: 11 }, (_, i) => (heightMm * i) / 10).map(
      (y) => `<path d="M${num(labelMm)} ${num(y)}H${num(width)}"/>`,
    ),
  ].join('');
  const place = scaleOf(lines, heightMm);
  const drawn = lines.map(
    (line) => `<path d="M${num(labelMm)} ${num(place(line.at))}H${num(width)}" ${STROKE[line.kind]}/>`,
  );
  const texts = apart(lines, place, heightMm).map(
    ({ text, y }) =>
      `<text x="${num(labelMm - 1.2)}" y="${num(y + TEXT_MM / 3)}" text-anchor="end">${escaped(text)}</text>`,
  );
  return (
    `<svg class="chart-form" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escaped(title)}" ` +
    `width="${num(width)}mm" height="${num(heightMm)}mm" viewBox="0 0 ${num(width)} ${num(heightMm)}" ` +
    `fill="none" stroke="#000"><g stroke="#666" stroke-width="0.15">${grid}</g>${drawn.join('')}` +
    `<g fill="#000" stroke="none" font-size="${TEXT_MM}">` +
    `<text x="0" y="${num(heightMm / 2 + 1)}" font-weight="700">${escaped(title)}</text>${texts.join('')}</g></svg>`
  );
}

/** The lines fill the middle three quarters of the field: points beyond them have room. */
function scaleOf(lines: readonly FormLine[], heightMm: number): (at: number) => number {
  const values = lines.map(({ at }) => at);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = most - least || 1;
  return (at) => heightMm * (1 - (0.125 + (0.75 * (at - least)) / room));
}

/** Labels beside their lines, pushed apart where they would touch. */
function apart(lines: readonly FormLine[], place: (at: number) => number, heightMm: number) {
  const step = TEXT_MM * 1.12;
  const sorted = lines.map(({ at, text }) => ({ text, y: place(at) })).toSorted((a, b) => a.y - b.y);
  let least = TEXT_MM / 2;
  const down = sorted.map((label) => {
    const y = Math.max(label.y, least);
    least = y + step;
    return { ...label, y };
  });
  let most = heightMm - TEXT_MM / 2;
  return down
    .toReversed()
    .map((label) => {
      const y = Math.min(label.y, most);
      most = y - step;
      return { ...label, y };
    })
    .toReversed();
}
