import type { Edge } from './edge.ts';
import { cutting } from './cutting.ts';
import { examples } from './examples.ts';
import { gauges } from './gauges.ts';
import { neck } from './neck.ts';
import { press } from './press.ts';
import { woods } from './woods.ts';
import { words } from './words.ts';

export const edges: readonly Edge[] = [...cutting, ...examples, ...gauges, ...neck, ...press, ...woods, ...words];
