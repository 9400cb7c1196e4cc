/**
 * A face on a grid: mm below its high plane at the middle of each cell. What `depthOn` says point by point, in bulk, but for
 * the ledge: that ends in a wall, and a cell on the wall has no one height (take.ts).
 */
import { contourDepth } from './contour.ts';
import { distanceBand } from './distance-band.ts';
import type { Face } from './face.ts';
import { depthOn, downBy } from './face.ts';
import type { Grid } from './grid.ts';
import { centreX, centreY } from './grid.ts';
import { profileAt, reachOf } from './profile.ts';

/** Only cells with a share are filled. The carve is good to 0.002 mm: see `table`. */
export function faceField(face: Face, grid: Grid, share: Float64Array): Float64Array {
  const depth = new Float64Array(share.length);
  carve(face, grid, share, depth);
  if (face.contours.length > 0) contours(face, grid, share, depth);
  if (face.roundMm > 0) rounding({ ...face, ledge: undefined }, grid, share, depth);
  return depth;
}

function carve(face: Face, grid: Grid, share: Float64Array, depth: Float64Array): void {
  const { profile, from } = face.carve;
  const reach = reachOf(profile);
  const beyond = downBy(face, profileAt(profile, Infinity));
  if (reach === 0) {
    if (beyond !== 0) depth.fill(beyond);
    return;
  }
  const away = distanceBand(from, reach, grid);
  const steps = table(face);
  for (let cell = 0; cell < depth.length; cell++) {
    if (share[cell] === 0) continue;
    const at = away[cell]! * PER_MM;
    if (at >= steps.length - 1) {
      depth[cell] = beyond;
      continue;
    }
    const i = Math.floor(at);
    depth[cell] = steps[i]! + (at - i) * (steps[i + 1]! - steps[i]!);
  }
}

/** Steps of the table in 1 mm. Between two of them the profile is taken as straight. */
const PER_MM = 32;

/**
 * Depth by distance. Error of the straight piece between steps of h: h²/8 times the bend of a cosine, Δ·π²/2w², which is
 * 0.0002 mm for 5 mm over a width of 5; at the corner of a bevel h/4 times the change of slope, 0.002 mm at 1 in 4.
 */
function table(face: Face): Float64Array {
  const { profile } = face.carve;
  const count = Math.ceil(reachOf(profile) * PER_MM) + 2;
  return Float64Array.from({ length: count }, (_, i) => downBy(face, profileAt(profile, i / PER_MM)));
}

function contours(face: Face, grid: Grid, share: Float64Array, depth: Float64Array): void {
  forCells(grid, share, (cell, x, y) => {
    for (const contour of face.contours) depth[cell] = Math.max(depth[cell]!, contourDepth(contour, x, y));
  });
}

/** The rounding reaches a few millimetres: those cells are asked one by one. */
function rounding(face: Face, grid: Grid, share: Float64Array, depth: Float64Array): void {
  const away = distanceBand(face.edge, face.roundMm, grid);
  forCells(grid, share, (cell, x, y) => {
    if (away[cell]! < face.roundMm) depth[cell] = depthOn(face, x, y);
  });
}

function forCells(grid: Grid, share: Float64Array, visit: (cell: number, x: number, y: number) => void): void {
  for (let row = 0, cell = 0; row < grid.rows; row++) {
    const y = centreY(grid, row);
    for (let col = 0; col < grid.cols; col++, cell++) if (share[cell] !== 0) visit(cell, centreX(grid, col), y);
  }
}
