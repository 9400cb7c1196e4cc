import { describe, expect, test } from 'vitest';
import { revisionNumber, revisionText } from '../../src/facts/revision.ts';
import { rowsOfItem } from './rows.ts';

describe('revision letters', () => {
  // US Navy engineering manual: omitting I, O, Q, S, X and Z; the same set in ASME Y14.35. After Y comes AA (from memory).
  test.each(rowsOfItem(14).map((row) => [row.id, row] as const))('%s', (_, { inputs, expected, source }) => {
    const { n } = inputs as { n: number };
    expect(revisionText(n), source).toBe(expected);
    expect(revisionNumber(expected as string), source).toBe(n);
  });

  test('every number has its letters, and they read back', () => {
    for (let n = 1; n <= 9000; n += 1) expect(revisionNumber(revisionText(n))).toBe(n);
    for (const text of ['', 'I', 'O', 'AQ', 'a', '1']) expect(revisionNumber(text)).toBeUndefined();
  });
});
