/** Polygons as the library of offsets and booleans takes and gives them. */
import type { PathD, PathsD } from '@countertype/clipper2-ts';
import type { Polygon, Region } from './polygon.ts';

export function toPaths(region: Region): PathsD {
  return region.map((ring) => {
    const path: PathD = [];
    for (let i = 0; i < ring.length; i += 2) path.push({ x: ring[i]!, y: ring[i + 1]! });
    return path;
  });
}

export function fromPaths(paths: PathsD): Polygon[] {
  return paths.map((path) => {
    const ring = new Float64Array(2 * path.length);
    path.forEach(({ x, y }, i) => {
      ring[2 * i] = x;
      ring[2 * i + 1] = y;
    });
    return ring;
  });
}
