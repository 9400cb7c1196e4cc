import type { Edge } from './edge.ts';
import { woods } from './woods.ts';

export const edges: readonly Edge[] = [...woods];
