/** Every sketch of a check: inside its frame, in black ink, with a mark at what is wrong and no word in it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { all } from '../../src/check/checks/all.generated.ts';
import type { Check } from '../../src/check/check.ts';
import { bore, cut, cuts, gap } from '../../src/check/sketch.ts';
import { SKETCH_MM, type Sketch } from '../../src/findings/sketch.ts';
import { flatten } from '../../src/geometry/flatten.ts';
import { parsePath } from '../../src/geometry/path.ts';
import { drawSketch } from '../../src/print/sketch.ts';
import { elements } from './well-formed.ts';

const checks: readonly Check[] = all;
const sketched = checks.flatMap(({ id, sketch }) => (sketch ? [[id, sketch] as const] : []));

const drawn = (id: string, sketch: Sketch): string => drawSketch(sketch, `sketch-${id}`, id);

/** Everything that has a place, as far as its line reaches beyond it. */
function places({ marks }: Sketch): readonly { readonly x: number; readonly y: number; readonly reach: number }[] {
  return marks.flatMap((mark) => {
    if (mark.kind === 'cross') return [{ x: mark.at[0], y: mark.at[1], reach: 2.2 }];
    if (mark.kind === 'arrow') return [mark.from, mark.to].map(([x, y]) => ({ x, y, reach: 0.5 }));
    const read = parsePath(mark.path);
    if (!read.ok) throw new Error(`${mark.path}: ${read.what}`);
    const reach = mark.line === undefined ? 0 : 0.5;
    // Flat numbers: x, y, x, y.
    return flatten(read.path).flatMap((ring) =>
      Array.from({ length: ring.length / 2 }, (_, i) => ({ x: ring[2 * i]!, y: ring[2 * i + 1]!, reach })),
    );
  });
}

describe.each(sketched)('%s', (id, sketch) => {
  const svg = drawn(id, sketch);

  test('draws numbers, within its frame', () => {
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    const [left, top] = sketch.from;
    const found = places(sketch);
    expect(found.length).toBeGreaterThan(10);
    const out = found.filter(
      ({ x, y, reach }) =>
        !(x - reach >= left && x + reach <= left + SKETCH_MM.width) ||
        !(y - reach >= top && y + reach <= top + SKETCH_MM.height),
    );
    expect(out).toEqual([]);
  });

  test('marks what is wrong: a cross, on a heavy ring or at a heavy arrow', () => {
    const crosses = sketch.marks.filter(({ kind }) => kind === 'cross').length;
    const heavy = sketch.marks.filter((mark) => mark.kind !== 'cross' && mark.line === 'wrong').length;
    expect(crosses).toBeGreaterThanOrEqual(1);
    expect(crosses).toBeLessThanOrEqual(2);
    expect(heavy).toBeGreaterThanOrEqual(crosses);
  });

  test('is a picture in black, its lines no thinner than a printer holds, its hatching its own', () => {
    const met = elements(svg);
    expect(
      [...new Set(met)].filter((name) => !['svg', 'defs', 'path', 'circle', 'clipPath', 'use'].includes(name)),
    ).toEqual([]);
    const inks = [...svg.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map(([, ink]) => ink!);
    expect(inks.filter((ink) => !/^(?:none|#000|#fff|#ccc)$/.test(ink))).toEqual([]);
    const widths = [...svg.matchAll(/stroke-width="([^"]*)"/g)].map(([, width]) => Number(width));
    expect(Math.min(...widths)).toBeGreaterThanOrEqual(0.25);
    const asked = [...svg.matchAll(/(?:url\(|href=")#([\w-]+)/g)].map(([, name]) => name!);
    const made = [...svg.matchAll(/ id="([\w-]+)"/g)].map(([, name]) => name!);
    expect(made.toSorted()).toEqual([...new Set(asked)].toSorted());
  });
});

test('no two checks have the same one', () => {
  const pictures = sketched.map(([, sketch]) => JSON.stringify(sketch));
  expect(new Set(pictures).size).toBe(pictures.length);
});

test('a distance too short for its arrow is pointed at from both sides, a longer one from within', () => {
  const heads = (length: number) =>
    gap(30, 5, 5 + length).flatMap((mark) => (mark.kind === 'arrow' ? [[mark.from[1], mark.to[1], mark.both]] : []));
  expect(heads(2)).toEqual([
    [1, 5, undefined],
    [11, 7, undefined],
  ]);
  expect(heads(10)).toEqual([[5, 15, true]]);
});

test('cuts that run into each other leave no wall between them: the air of each lies on the walls of all', () => {
  const marks = cuts(cut({ from: 8, to: 30, depth: 9 }), bore({ from: [28, 5], to: [50, 5], width: 3 }));
  expect(marks.map((mark) => (mark.kind === 'shape' ? (mark.fill ?? mark.line) : ''))).toEqual([
    'wall',
    'wall',
    'air',
    'air',
  ]);
});

test('a title is escaped, and said to those who cannot see it', () => {
  const [[id, sketch]] = sketched as [(typeof sketched)[0], ...typeof sketched];
  const svg = drawSketch(sketch, id, 'a "b" & <c>');
  expect(svg).toContain('role="img" aria-label="a &quot;b&quot; &amp; &lt;c&gt;"');
  expect(elements(svg)[0]).toBe('svg');
});

/** What a check reckons with in the plane or in the solid can be seen: of the kernel only the box of a picture is no wood. */
test('every check that reckons with shapes has one', () => {
  const shapes = /from '(?:\.\.\/\.\.\/geometry\/(?!picture-box)|\.\.\/(?:covers|shaped|tacks)\.ts')/;
  const without = checks
    .filter(({ id, sketch }) => {
      if (sketch) return false;
      const text = readFileSync(join(import.meta.dirname, '../../src/check/checks', `${id}.ts`), 'utf8');
      return shapes.test(text);
    })
    .map(({ id }) => id);
  expect(without).toEqual([]);
});
