/**
 * Shapes of cavities, holes and outlines as plain data in mm, and their polygons. A shape's length runs along y, its
 * width along x, about its own centre; a placement turns it by an angle and moves it (transform.ts).
 */
import { CHORD_MM, flatten } from './flatten.ts';
import { roundCorners, type Corner } from './corner-round.ts';
import { signedArea } from './measure.ts';
import { parsePath } from './path.ts';
import { reversed, type Polygon } from './polygon.ts';
import type { Arc, Path } from './segment.ts';
import { place, type Placement } from './transform.ts';

export type Shape =
  | { readonly kind: 'circle'; readonly radiusMm: number }
  | { readonly kind: 'circle'; readonly diameterMm: number }
  /** Two half circles of the width joined by straight sides; the length is over all. */
  | { readonly kind: 'slot'; readonly lengthMm: number; readonly widthMm: number }
  | { readonly kind: 'rectangle'; readonly lengthMm: number; readonly widthMm: number; readonly cornerMm?: number }
  | { readonly kind: 'polygon'; readonly points: readonly Corner[] }
  | { readonly kind: 'path'; readonly d: string };

/** A shape that can't be made: what is wrong, what mends it, and the offset in `d` where a path is at fault. */
export interface ShapeProblem {
  readonly ok: false;
  readonly what: string;
  readonly mend: string;
  readonly at?: number;
}

/** The shape in its own axes as one counter-clockwise polygon, turned and moved where a placement is given. */
export function shapePolygon(
  shape: Shape,
  placement: Placement = { xMm: 0, yMm: 0 },
  chordMm = CHORD_MM,
): { readonly ok: true; readonly polygon: Polygon } | ShapeProblem {
  const made = shapePath(shape);
  if (!made.ok) return made;
  const [polygon, ...others] = flatten(made.path, chordMm);
  if (others.length > 0)
    return problem('the path draws more than one outline', 'keep one; give the others ids of their own');
  const area = polygon === undefined ? 0 : signedArea(polygon);
  if (polygon === undefined || area === 0) {
    return problem('the shape encloses nothing', 'draw an outline that goes round an area');
  }
  return { ok: true, polygon: place(area > 0 ? polygon : reversed(polygon), placement) };
}

type Made = { readonly ok: true; readonly path: Path } | ShapeProblem;

/** The true curves of a shape, in its own axes. */
export function shapePath(shape: Shape): Made {
  if (shape.kind === 'path') return parsePath(shape.d);
  if (shape.kind === 'circle') return circle('radiusMm' in shape ? shape.radiusMm : shape.diameterMm / 2);
  if (shape.kind === 'polygon') {
    if (shape.points.length < 3) return problem('a polygon of fewer than three points', 'give three points or more');
    return rounded(shape.points);
  }
  const { lengthMm, widthMm } = shape;
  if (!isSize(lengthMm, widthMm)) return problem(`a ${shape.kind} of no size`, 'give a length and a width above zero');
  if (shape.kind === 'rectangle') return rounded(box(lengthMm, widthMm, shape.cornerMm ?? 0));
  if (lengthMm < widthMm) {
    return problem('the slot is shorter than wide', 'swap length and width, and turn the slot by 90 degrees');
  }
  return rounded(box(lengthMm, widthMm, widthMm / 2));
}

function circle(radius: number): Made {
  if (!isSize(radius)) return problem('a circle of no size', 'give a radius or diameter above zero');
  const end = { x: radius, y: 0 };
  const ellipse = { centre: { x: 0, y: 0 }, radiusX: radius, radiusY: radius, rotationRad: 0 };
  const whole: Arc = { kind: 'arc', from: end, to: end, ...ellipse, startRad: 0, sweepRad: 2 * Math.PI };
  return { ok: true, path: [{ segments: [whole], closed: true }] };
}

function rounded(corners: readonly Corner[]): Made {
  if (corners.some(({ cornerMm = 0 }) => !(cornerMm >= 0 && Number.isFinite(cornerMm)))) {
    return problem('a corner radius below zero', 'give a radius of zero or more');
  }
  const made = roundCorners(corners);
  if (made.ok) return { ok: true, path: [made.subpath] };
  return problem('a corner radius too large for its sides', 'make the radius smaller or the sides longer');
}

function box(lengthMm: number, widthMm: number, cornerMm: number): Corner[] {
  const [x, y] = [widthMm / 2, lengthMm / 2];
  return [
    { xMm: x, yMm: -y, cornerMm },
    { xMm: x, yMm: y, cornerMm },
    { xMm: -x, yMm: y, cornerMm },
    { xMm: -x, yMm: -y, cornerMm },
  ];
}

function isSize(...sizesMm: readonly number[]): boolean {
  return sizesMm.every((size) => size > 0 && Number.isFinite(size));
}

function problem(what: string, mend: string): ShapeProblem {
  return { ok: false, what, mend };
}
