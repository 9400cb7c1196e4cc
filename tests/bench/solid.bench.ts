/**
 * The height field and the solid of every demo model, step by step, and the same body by an independent kernel for solids,
 * all in one run on one core. Nothing here passes or fails: what is read off is the table.
 */
import { bench, describe } from 'vitest';
import { derive } from '../../src/derive/derive.ts';
import { bounds } from '../../src/geometry/measure.ts';
import { coverage } from '../../src/geometry/solid/coverage.ts';
import { faceField } from '../../src/geometry/solid/face-field.ts';
import { fieldOf } from '../../src/geometry/solid/field.ts';
import { CELL_MM } from '../../src/geometry/solid/grid.ts';
import { leftBetween, leftToFace } from '../../src/geometry/solid/wood-left.ts';
import type { Solid } from '../../src/geometry/solid/solid.ts';
import { compileDemo } from '../cards/demo.ts';
