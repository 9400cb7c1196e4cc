import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parsePath } from '../../src/geometry/path.ts';
import { pointAt, type Path } from '../../src/geometry/segment.ts';

function path(text: string): Path {
  const read = parsePath(text);
  if (!read.ok) throw new Error(`${read.at}: ${read.what}`);
  return read.path;
}

/** End points and kinds, closing line included: enough to see that numbers went where they belong. */
function ends(text: string): string {
  return path(text)
    .map(({ segments, closed }) => {
      const [first] = segments;
      const points = segments.map(({ kind, to }) => `${kind[0]} ${to.x},${to.y}`);
      return `${first?.from.x},${first?.from.y} ${points.join(' ')}${closed ? ' closed' : ''}`;
    })
    .join(' | ');
}

describe('grammar', () => {
  it.each([
    ['M0 0L10 0 10 10Z', '0,0 l 10,0 l 10,10 l 0,0 closed'],
    ['M1.5.5-1-2', '1.5,0.5 l -1,-2'],
    ['m1,1 2,0 0,2z', '1,1 l 3,1 l 3,3 l 1,1 closed'],
    ['M0 0H5V6h-1v-1', '0,0 l 5,0 l 5,6 l 4,6 l 4,5'],
    ['M0 0h1 2 3', '0,0 l 1,0 l 3,0 l 6,0'],
    ['M 1e1 -.5E-1 L+3 .25', '10,-0.05 l 3,0.25'],
    ['M0 0a5 5 0 0110 0', '0,0 a 10,0'],
    ['M0 0a5 5 0 01.5.5 5 5 0 1 0 1,1', '0,0 a 0.5,0.5 a 1.5,1.5'],
    ['\n\tM0,0\r\n,1', undefined],
    ['M0 0c1 1 2 1 3 0s2-1 3 0', '0,0 c 3,0 c 6,0'],
    ['M0 0Q1 1 2 0T4 0 6 0', '0,0 q 2,0 q 4,0 q 6,0'],
    ['M0 0L1 0L1 1ZL5 5L0 5Z', '0,0 l 1,0 l 1,1 l 0,0 closed | 0,0 l 5,5 l 0,5 l 0,0 closed'],
    ['M0 0L4 0L4 4zm10 10l1 0l0 1z', '0,0 l 4,0 l 4,4 l 0,0 closed | 10,10 l 11,10 l 11,11 l 10,10 closed'],
    ['M0 0A0 5 0 0 1 3 3', '0,0 l 3,3'],
  ])('%s', (text, expected) => {
    if (expected === undefined) expect(parsePath(text).ok).toBe(false);
    else expect(ends(text)).toBe(expected);
  });

  it('reflects the last control point for S and T, and only of its own kind', () => {
    const [subpath] = path('M0 0C1 2 3 4 5 5S8 9 10 10');
    expect(subpath?.segments[1]).toMatchObject({ control1: { x: 7, y: 6 } });
    const [mixed] = path('M0 0Q3 4 5 5S8 9 10 10');
    expect(mixed?.segments[1]).toMatchObject({ control1: { x: 5, y: 5 } });
    const [chain] = path('M0 0Q1 2 2 0T4 0T6 0');
    expect(chain?.segments[2]).toMatchObject({ control: { x: 5, y: 2 } });
  });

  it('reads the same curve from relative and absolute numbers', () => {
    const number = fc.integer({ min: -5000, max: 5000 }).map((n) => n / 8);
    fc.assert(
      fc.property(
        fc.array(fc.array(number, { minLength: 6, maxLength: 6 }), { minLength: 1, maxLength: 6 }),
        (rows) => {
          let [x, y] = [0, 0];
          const relative = rows.map((row) => {
            const text = `c${row.map((n, i) => n - (i % 2 === 0 ? x : y)).join(' ')}`;
            [x, y] = [row[4], row[5]];
            return text;
          });
          const absolute = rows.map((row) => `C${row.join(',')}`);
          expect(path(`M0 0${relative.join('')}`)).toEqual(path(`M0 0${absolute.join('')}`));
        },
      ),
    );
  });
});

describe('mistakes', () => {
  it.each([
    ['', 0],
    ['   ', 0],
    ['L1 1', 0],
    ['1 1', 0],
    ['M', 1],
    ['M1', 2],
    ['M1 2 3', 6],
    ['M0 0 L1 1 B2 2', 10],
    ['M0 0 L1 x', 8],
    ['M0 0 L1,,2', 8],
    ['M0 0 L1 1,', 9],
    ['M0 0 L1 1, Z', 9],
    ['M0 0 Z 5 5', 7],
    ['M0 0 A5 5 0 2 1 3 3', 12],
    ['M0 0 A5 5 0 1 1 3', 17],
    ['M0 0 L1. 2', 6],
    ['M0 0 L1..5', 6],
    ['M0 0 L1e9 2', 6],
    ['M0 0 L1e999 2', 6],
    ['M0 0 L1 2mm', 10],
    ['M0 0 C1 1 2 2 3', 15],
    ['M0 0', 0],
    ['M0 0M1 1Z', 0],
    ['M0 0 L−1 2', 6],
  ])('%j is refused at its character', (text, at) => {
    const read = parsePath(text);
    expect(read).toMatchObject({ ok: false, at });
    if (read.ok) return;
    expect(read.what.length).toBeGreaterThan(8);
    expect(read.mend.length).toBeGreaterThan(4);
  });

  it('never throws and points inside the text', () => {
    const text = fc.array(fc.constantFrom(...Array.from('MmLlCcAaZz0123456789.,-+eE \t%')), { maxLength: 40 });
    fc.assert(
      fc.property(text, (chars) => {
        const read = parsePath(chars.join(''));
        if (!read.ok) expect(read.at).toBeLessThanOrEqual(chars.length);
      }),
    );
  });
});

describe('arcs', () => {
  const size = fc.double({ min: 0.5, max: 200, noNaN: true });
  const spot = fc.double({ min: -200, max: 200, noNaN: true });
  it('lie on the ellipse asked for, start and end where told, and turn as the flags say', () => {
    fc.assert(
      fc.property(
        fc.record({ rx: size, ry: size, angle: fc.integer({ min: -360, max: 360 }), x: spot, y: spot }),
        fc.boolean(),
        fc.boolean(),
        ({ rx, ry, angle, x, y }, large, sweep) => {
          fc.pre(Math.hypot(x, y) > 1e-3);
          const [subpath] = path(`M0 0A${rx} ${ry} ${angle} ${large ? 1 : 0} ${sweep ? 1 : 0} ${x} ${y}`);
          const arc = subpath.segments[0];
          if (arc.kind !== 'arc') throw new Error('not an arc');
          expect(arc.radiusX / arc.radiusY).toBeCloseTo(rx / ry, 9);
          expect(arc.radiusX).toBeGreaterThanOrEqual(rx);
          expect(arc.sweepRad > 0).toBe(sweep);
          if (arc.radiusX === rx) expect(Math.abs(arc.sweepRad) > Math.PI - 1e-6).toBe(large);
          else expect(Math.abs(arc.sweepRad)).toBeCloseTo(Math.PI, 6);
          // Ends recomputed from the centre form, by way of points a hair inside.
          const [start, end] = [pointAt(arc, 1e-12), pointAt(arc, 1 - 1e-12)];
          expect(Math.hypot(start.x, start.y)).toBeLessThan(1e-6);
          expect(Math.hypot(end.x - x, end.y - y)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('of a quarter circle has its centre where drawn, and sweep 1 turns counter-clockwise', () => {
    const [subpath] = path('M10 0A10 10 0 0 1 0 10');
    const arc = subpath.segments[0];
    const middle = pointAt(arc, 0.5);
    expect(middle.x).toBeCloseTo(Math.SQRT1_2 * 10, 12);
    expect(middle.y).toBeCloseTo(Math.SQRT1_2 * 10, 12);
  });

  it('with radii too small are scaled up to a half ellipse', () => {
    const [subpath] = path('M-10 0A1 2 0 0 0 10 0');
    expect(subpath.segments[0]).toMatchObject({ radiusX: 10, radiusY: 20, centre: { x: 0, y: 0 } });
  });
});
