/** How far a number moved and what became of its limits, by hand. */
import { expect, test } from 'vitest';
import { moveOf } from '../../src/diff/move.ts';

const mm = (value: number, low?: number, high?: number) => ({
  kind: 'length' as const,
  value: value * 1e6,
  unit: 'mm',
  decimals: 2,
  ...(low === undefined ? {} : { low: low * 1e6 }),
  ...(high === undefined ? {} : { high: high * 1e6 }),
});

test.each([
  // 0.1 of 0.2: half of it; 9.9..10.1 and 10.0..10.2 share 10.0..10.1.
  ['a step within', mm(10, 9.9, 10.1), mm(10.1, 10, 10.2), 0.1, 0.5, 'overlap'],
  ['past all of it', mm(10, 9.9, 10.1), mm(10.5, 10.4, 10.6), 0.5, 2.5, 'apart'],
  // They touch at 10.1: a reading of it is inside both.
  ['to its edge', mm(10, 9.9, 10.1), mm(10.2, 10.1, 10.3), 0.2, 1, 'overlap'],
  // The nominal stands: what moved is the limit, 0.05 of 0.2.
  ['tighter', mm(10, 9.9, 10.1), mm(10, 9.95, 10.1), 0, 0.25, 'tighter'],
  ['wider', mm(10, 9.9, 10.1), mm(10, 9.7, 10.1), 0, 1, 'wider'],
  ['a limit more', mm(10, 9.9), mm(10, 9.9, 10.1), 0, undefined, 'tighter'],
  ['no limits', mm(10), mm(9), -1, undefined, undefined],
] as const)('%s', (_, old, now, by, share, limits) => {
  const move = moveOf(old, now)!;
  expect(move.by).toBeCloseTo(by * 1e6, 3);
  if (share === undefined) expect(move.ofTolerance).toBeUndefined();
  else expect(move.ofTolerance).toBeCloseTo(share, 9);
  expect(move.limits).toBe(limits);
});

test('a length that became an angle did not move', () => {
  expect(moveOf(mm(10), { ...mm(10), kind: 'angle' })).toBeUndefined();
});
