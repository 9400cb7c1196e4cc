import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/geometry/flatten.ts';
import { centroid, perimeter, signedArea } from '../../src/geometry/measure.ts';
import { distanceToEdge } from '../../src/geometry/nearness.ts';
import { parsePath } from '../../src/geometry/path.ts';
import { derivativesAt, pointAt, type Path } from '../../src/geometry/segment.ts';

function path(text: string): Path {
  const read = parsePath(text);
  if (!read.ok) throw new Error(`${read.at}: ${read.what}`);
  return read.path;
}

function polygon(text: string, chordMm?: number) {
  const [first] = flatten(path(text), chordMm);
  if (first === undefined) throw new Error('no polygon');
  return first;
}

/** An inscribed polygon's area is short by at most 2/3 · chord · perimeter, mm². */
function short(perimeterMm: number, chordMm: number): number {
  return (2 / 3) * chordMm * perimeterMm;
}

describe('closed forms', () => {
  it('circle of two arcs', () => {
    const area = signedArea(polygon('M50 0A50 50 0 0 1 -50 0A50 50 0 0 1 50 0Z', 0.001));
    expect(area).toBeLessThan(Math.PI * 2500);
    expect(Math.PI * 2500 - area).toBeLessThan(short(Math.PI * 100, 0.001));
  });

  it('turned ellipse: π a b', () => {
    const area = signedArea(
      polygon('M40 30A50 20 36.86989764584402 1 1 -40 -30A50 20 36.86989764584402 1 1 40 30', 0.001),
    );
    expect(Math.PI * 1000 - area).toBeGreaterThan(0);
    expect(Math.PI * 1000 - area).toBeLessThan(short(2 * Math.PI * 50, 0.001));
  });

  it('parabola: two thirds of the box (Archimedes)', () => {
    const area = Math.abs(signedArea(polygon('M0 0Q30 120 60 0Z', 0.001)));
    expect(Math.abs(area - (2 / 3) * 60 * 60)).toBeLessThan(short(200, 0.001));
  });

  it('cubic: Green integral of its control points', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -200, max: 200 }), { minLength: 6, maxLength: 6 }), (n) => {
        const [x1, y1, x2, y2, x3, y3] = n as [number, number, number, number, number, number];
        // ½∮ x dy − y dx over the curve from (0, 0) and the chord back, expanded from the Bernstein form.
        const exact = (3 * (cross(x1, y1, x2, y2) + cross(x1, y1, x3, y3) + 2 * cross(x2, y2, x3, y3))) / 20;
        const [made] = flatten(path(`M0 0C${n.join(' ')}`), 0.001);
        const length = Math.hypot(x1, y1) + Math.hypot(x2 - x1, y2 - y1) + Math.hypot(x3 - x2, y3 - y2);
        expect(Math.abs((made === undefined ? 0 : signedArea(made)) - exact)).toBeLessThan(short(length, 0.001) + 1e-9);
      }),
    );
  });

  it('half disc: centroid at 4r/3π', () => {
    const centre = centroid(polygon('M30 0A30 30 0 0 1 -30 0Z', 0.0001));
    expect(centre?.x).toBeCloseTo(0, 9);
    expect(centre?.y).toBeCloseTo((4 * 30) / (3 * Math.PI), 4);
  });

  it('perimeter of a circle', () => {
    expect(perimeter(polygon('M50 0A50 50 0 0 1 -50 0A50 50 0 0 1 50 0Z', 0.001))).toBeCloseTo(Math.PI * 100, 1);
  });
});

function cross(ax: number, ay: number, bx: number, by: number): number {
  return ax * by - bx * ay;
}

describe('chord error', () => {
  const at = fc.integer({ min: -3000, max: 3000 }).map((n) => n / 10);
  const curve = fc.oneof(
    fc.array(at, { minLength: 6, maxLength: 6 }).map((n) => `C${n.join(' ')}`),
    fc.array(at, { minLength: 4, maxLength: 4 }).map((n) => `Q${n.join(' ')}`),
    fc
      .tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }), at, fc.boolean(), fc.boolean(), at, at)
      .map(([rx, ry, angle, large, sweep, x, y]) => `A${rx} ${ry} ${angle} ${large ? 1 : 0}${sweep ? 1 : 0} ${x} ${y}`),
  );

  it('holds at every sampled point of the true curve, and every vertex lies on the curve', () => {
    fc.assert(
      fc.property(curve, fc.constantFrom(0.002, 0.01, 0.1, 1), (text, chordMm) => {
        const [subpath] = path(`M0 0${text}`);
        const [made] = flatten(path(`M0 0${text}`), chordMm);
        const segment = subpath?.segments[0];
        fc.pre(segment !== undefined && made !== undefined);
        for (let i = 0; i <= 200; i++) {
          const { x, y } = pointAt(segment, i / 200);
          expect(distanceToEdge(made, x, y)).toBeLessThanOrEqual(chordMm * (1 + 1e-9) + 1e-9);
        }
      }),
    );
  });

  it('is not held by brute number: a coarser chord takes fewer points', () => {
    const circle = 'M50 0A50 50 0 0 1 -50 0A50 50 0 0 1 50 0Z';
    // 2π / (2 acos(1 − c/r)) = 157.1 edges at 0.01 mm; each half is rounded up.
    expect(polygon(circle, 0.01).length / 2).toBe(158);
    expect(polygon(circle, 1).length / 2).toBe(16);
  });

  it('refuses a chord of zero', () => {
    expect(() => flatten([], 0)).toThrow(RangeError);
  });
});

describe('polygons', () => {
  it('drop double points and bound nothing where nothing is drawn round', () => {
    expect(Array.from(polygon('M0 0L10 0L10 0L10 10L0 10L0 0Z'))).toEqual([0, 0, 10, 0, 10, 10, 0, 10]);
    expect(flatten(path('M0 0L10 0Z'))).toEqual([]);
  });
});

describe('derivatives', () => {
  it('agree with differences of the curve', () => {
    for (const text of ['M0 0C30 50 60-20 90 40', 'M0 0Q30 50 90 40', 'M0 0A60 30 25 1 1 20 40', 'M0 0L4 7']) {
      const segment = path(text)[0].segments[0];
      for (const t of [0.1, 0.5, 0.83]) {
        const h = 1e-4;
        const [a, b, c] = [pointAt(segment, t - h), pointAt(segment, t), pointAt(segment, t + h)];
        const { first, second } = derivativesAt(segment, t);
        expect(first.x).toBeCloseTo((c.x - a.x) / (2 * h), 3);
        expect(first.y).toBeCloseTo((c.y - a.y) / (2 * h), 3);
        expect(second.x).toBeCloseTo((a.x - 2 * b.x + c.x) / h ** 2, 2);
        expect(second.y).toBeCloseTo((a.y - 2 * b.y + c.y) / h ** 2, 2);
      }
    }
  });
});
