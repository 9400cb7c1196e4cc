/** Height and top of the machined body of each demo model, by hand from the numbers of its spec. All sizes in mm. */
import type { Slope } from './mesh.ts';
import { LEVEL } from './mesh.ts';

export interface ByHand {
  readonly heightMm: number;
  readonly top: Slope;
}

/** Half a cosine from 0 at `from` to 1 at `to`. */
const half = (from: number, to: number, d: number): number => (1 - Math.cos((Math.PI * (d - from)) / (to - from))) / 2;

const between = (from: number, to: number, pieces: number): readonly number[] =>
  Array.from({ length: pieces + 1 }, (_, i) => from + ((to - from) * i) / pieces);

/**
 * Land 4 wide, 41.50 − 37.60 below the face, then straight up over 16.
 */
const carr: Slope = {
  down: (d) => (d <= 4 ? 3.9 : d < 20 ? (3.9 * (20 - d)) / 16 : 0),
  at: [4, 20],
};

/** Land 9 wide, 51.20 − 46.60 below the crown; 0.9 deeper at 22; crown from 88 on. */
const holm: Slope = {
  down: (d) => (d < 9 ? 4.6 : d < 22 ? 4.6 + 0.9 * half(9, 22, d) : d < 88 ? 5.5 * (1 - half(22, 88, d)) : 0),
  at: [...between(9, 22, 7), ...between(22, 88, 22).slice(1)],
};

/** Land 11 wide, 49.60 − 45.40 below the crown; 0.8 deeper at 26; crown from 95 on. */
const tarn: Slope = {
  down: (d) => (d < 11 ? 4.2 : d < 26 ? 4.2 + 0.8 * half(11, 26, d) : d < 95 ? 5 * (1 - half(26, 95, d)) : 0),
  at: [...between(11, 26, 8), ...between(26, 95, 23).slice(1)],
};

export const DEMO_SHAPES: Readonly<Record<string, ByHand>> = {
  brae: { heightMm: 43.9, top: LEVEL },
  carr: { heightMm: 41.5, top: carr },
  // 1.727 in.
  fell: { heightMm: 1.727 * 25.4, top: LEVEL },
  holm: { heightMm: 51.2, top: holm },
  ness: { heightMm: 43.9, top: LEVEL },
  skerry: { heightMm: 43.9, top: LEVEL },
  tarn: { heightMm: 49.6, top: tarn },
  voe: { heightMm: 43.3, top: LEVEL },
};
