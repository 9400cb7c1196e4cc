/** Floors and walls, and cuts that meet or miss. */
import type { Edge } from './edge.ts';
import { inPlant } from './edge.ts';

export const woods: readonly Edge[] = [
  { check: 'wall-too-thin', name: 'far enough', edits: [inPlant('least-wall: 2.0', 'least-wall: 2.1')], found: [] },
];
