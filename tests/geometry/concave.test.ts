import { describe, expect, it } from 'vitest';
import { leastConcaveBend } from '../../src/geometry/concave.ts';
import { parsePath } from '../../src/geometry/path.ts';

function bend(text: string) {
  const read = parsePath(text);
  if (!read.ok) throw new Error(read.what);
  return leastConcaveBend(read.path);
}

describe('least concave bend', () => {
  it('is none on a convex outline, run either way', () => {
    expect(bend('M0 0H10V10H0Z')).toBeUndefined();
    expect(bend('M0 0V10H10V0Z')).toBeUndefined();
    expect(bend('M50 0A50 50 0 0 1 -50 0A50 50 0 0 1 50 0Z')).toBeUndefined();
  });

  it('is the radius of a bay cut by an arc, run either way', () => {
    const there = bend('M0 0H100V60H65A15 15 0 0 0 35 60H0Z');
    // The two corners where the bay begins are outside corners.
    expect(there?.radiusMm).toBeCloseTo(15, 9);
    const back = bend('M0 0V60H35A15 15 0 0 1 65 60H100V0Z');
    expect(back?.radiusMm).toBeCloseTo(15, 9);
  });

  it('is zero at an inside corner', () => {
    expect(bend('M0 0H100V60H65A15 15 0 0 1 35 60H0Z')?.radiusMm).toBe(0);
    expect(bend('M0 0H60V20H20V50H0Z')).toEqual({ radiusMm: 0, at: { x: 20, y: 20 } });
  });

  it('of a parabola is that at its vertex', () => {
    // y = 40 − 4·u(1−u)·20 with x = 100u: y″ = 160/100² , so the radius at the vertex is 62.5.
    const found = bend('M0 0H100V40Q50 0 0 40Z');
    expect(found?.radiusMm).toBeCloseTo(62.5, 2);
    expect(found?.at.x).toBeCloseTo(50, 6);
  });
});
