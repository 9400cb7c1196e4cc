/** How much of the plan a cutter goes over, level by level, when a face is cut down in steps. */
import type { Polygon } from '../polygon.ts';
import { coverage } from './coverage.ts';
import type { Face } from './face.ts';
import { faceField } from './face-field.ts';

/** Fine enough for a time: half the narrowest land. */
const CELL_MM = 2;

export interface Steps {
  /** Wood above the high plane of the face, mm: it comes off everywhere. */
  readonly overMm: number;
  /** Deepest cut of one step, mm. */
  readonly stepMm: number;
}

/** mm² at each level, the uppermost first: where more than so many steps of wood have to come off. Ends at the last with any. */
export function levelAreas(face: Face, outline: Polygon, { overMm, stepMm }: Steps): readonly number[] {
  const { grid, share } = coverage([outline], CELL_MM);
  const depth = faceField(face, grid, share);
  const areas: number[] = [];
  for (let cell = 0; cell < depth.length; cell++) {
    if (share[cell] === 0) continue;
    const levels = Math.ceil((overMm + depth[cell]!) / stepMm - ROUNDING);
    for (let level = 0; level < levels; level++) areas[level] = (areas[level] ?? 0) + share[cell]!;
  }
  return areas.map((cells) => cells * grid.cellMm ** 2);
}

/** A step that is filled to the last bit is one step. */
const ROUNDING = 1e-9;
