/**
 * Line types after the open conventions of engineering drawing (continuous, dashed, chain, double-dot chain; thick and thin),
 * widths and dashes in millimetres of paper. Weight and dash alone tell them apart: a print in black loses nothing.
 */
import type { LineKind, Mark } from '../../cards/card.ts';

export type Hatch = Extract<Mark, { kind: 'area' }>['hatch'];

export interface LineType {
  readonly width: number;
  /** Dash, gap, dash, gap …; empty for a continuous line. */
  readonly dashes: readonly number[];
}

export const LINE_TYPES: Readonly<Record<LineKind, LineType>> = {
  outline: { width: 0.7, dashes: [] },
  cut: { width: 0.5, dashes: [] },
  board: { width: 0.25, dashes: [] },
  hidden: { width: 0.35, dashes: [2.4, 1.2] },
  centre: { width: 0.25, dashes: [7, 1.2, 1, 1.2] },
  seam: { width: 0.35, dashes: [5, 1.2, 1.6, 1.2, 1.6, 1.2] },
  'saw-line': { width: 0.6, dashes: [6, 1.3, 0.8, 1.3, 0.8, 1.3] },
  glue: { width: 0.7, dashes: [0.8, 1.2] },
};

export function lineAttributes(kind: LineKind): string {
  const { width, dashes } = LINE_TYPES[kind];
  const dash = dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.join(' ')}"`;
  return `fill="none" stroke="#000" stroke-width="${width}"${dash} stroke-linejoin="round"`;
}

export const LINE_KINDS = Object.keys(LINE_TYPES) as readonly LineKind[];
export const HATCHES: readonly Hatch[] = ['cap', 'back', 'slab', 'glue', 'removed'];

/** A tile of a hatching, as an SVG pattern with the given id. */
export function hatchPattern(hatch: Hatch, id: string): string {
  const { size, angle, inside } = TILES[hatch];
  return (
    `<pattern id="${id}" width="${size}" height="${size}" patternUnits="userSpaceOnUse" ` +
    `patternTransform="rotate(${angle})">${inside}</pattern>`
  );
}

const stroke = (d: string, width: number): string => `<path d="${d}" stroke="#000" stroke-width="${width}"/>`;

const TILES: Readonly<Record<Hatch, { size: number; angle: number; inside: string }>> = {
  cap: { size: 1.6, angle: -45, inside: stroke('M0 .8H1.6', 0.2) },
  back: { size: 3, angle: 45, inside: stroke('M0 1.5H3', 0.2) },
  slab: { size: 3, angle: 0, inside: stroke('M0 1.5H3', 0.2) },
  glue: { size: 0.8, angle: 45, inside: stroke('M0 .4H.8M.4 0V.8', 0.3) },
  removed: { size: 2, angle: 45, inside: '<circle cx="1" cy="1" r=".3" fill="#000"/>' },
};
