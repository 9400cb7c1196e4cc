/** No published row is forgotten: each is checked by a test here, or named as waiting for what it checks. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { rowsOfItem } from './rows.ts';

/** Items whose rows are all checked, and the test that does it. */
const CHECKED: Readonly<Record<number, string>> = {
  1: 'units.test.ts',
  2: 'moisture.test.ts',
  3: 'moisture.test.ts',
  6: 'lumber.test.ts',
  7: 'screws.test.ts',
  8: 'derived.test.ts',
  11: 'capability.test.ts',
  12: 'gauges.test.ts',
  13: 'fits.test.ts',
  14: 'revision.test.ts',
};

/** Rows checked of items that are not whole yet. */
const CHECKED_ROWS: Readonly<Record<string, string>> = {
  'corner.3.0.90': 'corner.test.ts',
  'corner.3.175.1.5.90': 'corner.test.ts',
  'corner.6.35.3.175.60': 'corner.test.ts',
  'corner.gap': 'corner.test.ts',
  'bandsaw.table': 'blades.test.ts',
  'cusp.convex': 'cutting.test.ts',
  'cusp.flat': 'cutting.test.ts',
  'cusp.in2': 'cutting.test.ts',
  'cusp.incl15': 'cutting.test.ts',
  'cusp.incl45': 'cutting.test.ts',
  'cusp.incl60': 'cutting.test.ts',
  'eng.straight': 'cutting.test.ts',
  'feed.in': 'cutting.test.ts',
  'feed.mm': 'cutting.test.ts',
  'rpm.in': 'cutting.test.ts',
  'rpm.mm': 'cutting.test.ts',
  'clamp.hi': 'press.test.ts',
  'clamp.lo': 'press.test.ts',
  'press.in': 'press.test.ts',
  'press.si': 'press.test.ts',
  'rho.example': 'densities.test.ts',
  'rho.nds': 'screws.test.ts',
  'rho12.basswood': 'densities.test.ts',
  'rho12.bigleaf_maple': 'densities.test.ts',
  'rho12.black_cherry': 'densities.test.ts',
  'rho12.red_maple': 'densities.test.ts',
  'rho12.sugar_maple': 'densities.test.ts',
  'rho12.yellow-poplar': 'densities.test.ts',
};

/** What the rows of an item wait for. */
const WAITING: Readonly<Record<number, string>> = {
  4: 'density from an ovendry or a green basis',
  5: 'spread from wet film and from pounds a thousand square feet',
  9: 'engagement of a cutter in a hollow corner; knife marks of a planer head by a row of their own',
  10: 'bandsaw.lb: least radius from width and set of a blade',
  15: 'vacuum hold-down',
  16: 'gauge and noise limits',
  19: 'text size on paper',
};

const items = Array.from({ length: 40 }, (_, i) => i).filter((item) => rowsOfItem(item).length > 0);

test('every item is checked or waits, none is both', () => {
  const named = [...Object.keys(CHECKED), ...Object.keys(WAITING)].map(Number);
  expect(named.toSorted((a, b) => a - b)).toEqual(items);
  expect(items.reduce((sum, item) => sum + rowsOfItem(item).length, 0)).toBe(
    (JSON.parse(readFileSync(join(import.meta.dirname, 'check-values.json'), 'utf8')) as unknown[]).length,
  );
});

test('the tests named are there, and speak of the rows they are to check', () => {
  const tests = new Set(readdirSync(import.meta.dirname));
  const text = (name: string) => readFileSync(join(import.meta.dirname, name), 'utf8');
  for (const [item, name] of Object.entries(CHECKED)) {
    expect(tests).toContain(name);
    expect(text(name)).toContain(`rowsOfItem(${item})`);
  }
  for (const [id, name] of Object.entries(CHECKED_ROWS)) expect(text(name)).toContain(`'${id}'`);
  const rows = new Set(Object.keys(WAITING).flatMap((item) => rowsOfItem(Number(item)).map((r) => r.id)));
  for (const id of Object.keys(CHECKED_ROWS)) expect(rows).toContain(id);
});
