/** Generators of polygons for property tests. */
import fc from 'fast-check';

/** Simple counter-clockwise polygon round the origin: a radius for each of 3 to 24 directions evenly spread. */
export const blob = fc
  .array(fc.double({ min: 20, max: 150, noNaN: true }), { minLength: 3, maxLength: 24 })
  .map((radii) => polar(radii.map((radius, i) => [radius, (2 * Math.PI * i) / radii.length])));

/** Convex counter-clockwise polygon: directions on an ellipse, none nearer to the next than a fiftieth of a turn. */
export const convex = fc
  .tuple(
    fc.array(fc.double({ min: 0.3, max: 1, noNaN: true }), { minLength: 3, maxLength: 16 }),
    fc.double({ min: 40, max: 200, noNaN: true }),
    fc.double({ min: 40, max: 200, noNaN: true }),
  )
  .map(([gaps, rx, ry]) => {
    const whole = gaps.reduce((sum, gap) => sum + gap, 0);
    let angle = 0;
    return Float64Array.from(
      gaps.flatMap((gap) => {
        angle += (2 * Math.PI * gap) / whole;
        return [rx * Math.cos(angle), ry * Math.sin(angle)];
      }),
    );
  });

function polar(points: readonly (readonly [number, number])[]): Float64Array {
  return Float64Array.from(points.flatMap(([radius, angle]) => [radius * Math.cos(angle), radius * Math.sin(angle)]));
}
