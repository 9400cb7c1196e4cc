import { expect, test } from 'vitest';
import { leastConcaveRadiusMm } from '../../src/reference/blades.ts';
import { row } from './rows.ts';

/** Inches of `1-1/4` or `7/16`. */
function inches(text: string): number {
  const [whole, fraction] = text.includes('-') ? text.split('-') : text.includes('/') ? ['0', text] : [text, '0/1'];
  const [top, bottom] = fraction!.split('/').map(Number) as [number, number];
  return Number(whole) + top / bottom;
}

test('bandsaw blades follow no tighter bend than the tables that are commonly published', () => {
  const { inputs, expected, source } = row('bandsaw.table');
  const widths = (inputs as { width_in: string[] }).width_in;
  widths.forEach((width, i) => {
    const ends = (expected as string[])[i]!.split('..').map(inches);
    expect(leastConcaveRadiusMm(inches(width)), `${width} in: ${source}`).toBeCloseTo(Math.max(...ends) * 25.4, 9);
  });
});

test('between and beyond the widths of the table the radius grows with the width', () => {
  let before = 0;
  for (let width = 0.1; width < 1.6; width += 0.01) {
    const radius = leastConcaveRadiusMm(width);
    expect(radius).toBeGreaterThan(before);
    before = radius;
  }
});
