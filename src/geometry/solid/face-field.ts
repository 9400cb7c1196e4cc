/**
 * A face on a grid: mm below its high plane at the middle of each cell. What `depthOn` says point by point, in bulk, but for
 * the ledge: that ends in a wall, and a cell on the wall has no one height (take.ts).
 */
import { contourDepth } from './contour.ts';
import { distanceBand } from './distance-band.ts';
import type { Face } from './face.ts';
import { downBy, roundDrop } from './face.ts';
import type { Grid } from './grid.ts';
import { centreX, centreY } from './grid.ts';
import { profileAt, reachOf } from './profile.ts';

/** Only cells with a share are filled. The carve is good to 0.002 mm: see `table`. */
export function faceField(face: Face, grid: Grid, share: Float64Array): Float64Array {
  const depth = new Float64Array(share.length);
  carve(face, grid, share, depth);
  if (face.contours.length > 0) contours(face, grid, share, depth);
  if (face.roundMm > 0) rounding(face, grid, share, depth);
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

function contours({ contours: cut }: Face, grid: Grid, share: Float64Array, depth: Float64Array): void {
  for (let row = 0, cell = 0; row < grid.rows; row++) {
    const y = centreY(grid, row);
    for (let col = 0; col < grid.cols; col++, cell++) {
      if (share[cell] === 0) continue;
      const x = centreX(grid, col);
      for (const contour of cut) {
        const deep = contourDepth(contour, x, y);
        if (deep > depth[cell]!) depth[cell] = deep;
      }
    }
  }
}

/** Along the edge, on top of all that was shaped before. */
function rounding({ edge, roundMm }: Face, grid: Grid, share: Float64Array, depth: Float64Array): void {
  const away = distanceBand(edge, roundMm, grid);
  for (let cell = 0; cell < depth.length; cell++) {
    if (share[cell] !== 0 && away[cell]! < roundMm) depth[cell]! += roundDrop(roundMm, away[cell]!);
  }
}
