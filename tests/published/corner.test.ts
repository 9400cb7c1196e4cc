import { describe, expect, it } from 'vitest';
import { cornerRestArea, cornerRestGap } from '../../src/geometry/corner.ts';
import { regionArea } from '../../src/geometry/measure.ts';
import { difference, intersection, offset } from '../../src/geometry/offset.ts';

/** Rest in a corner: cutter radius, drawn radius (mm or in, all alike), angle. Source of each value beside it. */
const AREAS = [
  { id: 'corner.3.0.90', cutter: 3, drawn: 0, angleDeg: 90, area: 1.93142 }, // derived, verified by polar integration
  { id: 'corner.3.175.1.5.90', cutter: 3.175, drawn: 1.5, angleDeg: 90, area: 1.68047 }, // derived, verified by polar integration
  { id: 'corner.6.35.3.175.60', cutter: 6.35, drawn: 3.175, angleDeg: 60, area: 20.71125 }, // derived, verified by polar integration
  { id: 'corner 6.35/3.175/90°', cutter: 6.35, drawn: 3.175, angleDeg: 90, area: 6.48996 }, // derived, verified by polar integration
  { id: 'corner 6.35/3.175/120°', cutter: 6.35, drawn: 3.175, angleDeg: 120, area: 1.62555 }, // derived, verified by polar integration
] as const;

describe('what a cutter leaves in a corner', () => {
  it.each(AREAS)('$id', ({ cutter, drawn, angleDeg, area }) => {
    expect(Math.abs(cornerRestArea(cutter, drawn, angleDeg) - area)).toBeLessThanOrEqual(1e-5);
  });

  it('corner.gap', () => {
    // Derived from the two tangent arcs.
    expect(Math.abs(cornerRestGap(6.35, 3.175, 90) - 1.315128)).toBeLessThanOrEqual(1e-5);
  });

  it('is a right angle’s 0.214602 (R² − r²)', () => {
    // 1 − π/4.
    expect(cornerRestArea(10, 4, 90)).toBeCloseTo(0.214602 * (100 - 16), 3);
  });

  it('is what is missing after opening the corner by the cutter’s disc', () => {
    for (const angleDeg of [60, 90, 120]) {
      const a = (angleDeg * Math.PI) / 180;
      const wedge = Float64Array.of(0, 0, 100, 0, 100 * Math.cos(a), 100 * Math.sin(a));
      const opened = offset(offset([wedge], -6, 1e-5), 6, 1e-5);
      // The other two corners of the wedge are further away than this.
      const nearby = [Float64Array.of(-30, -30, 30, -30, 30, 30, -30, 30)];
      const rest = intersection(difference([wedge], opened), nearby);
      expect(Math.abs(regionArea(rest) - cornerRestArea(6, 0, angleDeg))).toBeLessThan(1e-3);
    }
  });

  it('is nothing where the cutter fits', () => {
    expect(cornerRestArea(3, 3, 90)).toBe(0);
    expect(cornerRestGap(2, 3, 90)).toBe(0);
    expect(() => cornerRestArea(3, 0, 180)).toThrow(RangeError);
  });
});
