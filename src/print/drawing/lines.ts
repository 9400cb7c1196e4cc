/**
 * Line types after the open conventions of engineering drawing (continuous, dashed, chain, double-dot chain; thick and thin),
 * widths and dashes in millimetres of paper. Weight and dash alone tell them apart: a print in black loses nothing.
 */
import type { Hatch, LineKind } from '../../cards/card.ts';

export type { Hatch } from '../../cards/card.ts';

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
  // Points at something; needs no word of its own.
  leader: { width: 0.35, dashes: [] },
  contour: { width: 0.25, dashes: [4, 0.8] },
  relief: { width: 0.5, dashes: [3, 1, 0.6, 1] },
  cover: { width: 0.25, dashes: [0.6, 0.9] },
  // Dots for what is no more, the thickest line for what has come: neither is taken for a line of a card.
  was: { width: 0.6, dashes: [0.6, 1.5] },
  now: { width: 1, dashes: [] },
};

export function lineAttributes(kind: LineKind): string {
  const { width, dashes } = LINE_TYPES[kind];
  const dash = dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.join(' ')}"`;
  return `fill="none" stroke="#000" stroke-width="${width}"${dash} stroke-linejoin="round"`;
}

export const LINE_KINDS = Object.keys(LINE_TYPES) as readonly LineKind[];
export const HATCHES: readonly Hatch[] = [
  'cap',
  'back',
  'slab',
  'glue',
  'removed',
  'tack-zone',
  'gasket',
  'levelling-board',
  'left-thick',
  'left-thinner',
  'left-thin',
  'left-thinnest',
  'nothing',
];

/** A tile of a hatching, as an SVG pattern with the given id. */
export function hatchPattern(hatch: Hatch, id: string): string {
  const { size, angle, inside } = TILES[hatch];
  return (
    `<pattern id="${id}" width="${size}" height="${size}" patternUnits="userSpaceOnUse" ` +
    `patternTransform="rotate(${angle})">${inside}</pattern>`
  );
}

const white = (size: number): string => `<path d="M0 0H${size}V${size}H0Z" fill="#fff"/>`;

const stroke = (d: string, width: number): string => `<path d="${d}" stroke="#000" stroke-width="${width}"/>`;

const TILES: Readonly<Record<Hatch, { size: number; angle: number; inside: string }>> = {
  cap: { size: 1.6, angle: -45, inside: stroke('M0 .8H1.6', 0.2) },
  back: { size: 3, angle: 45, inside: stroke('M0 1.5H3', 0.2) },
  slab: { size: 3, angle: 0, inside: stroke('M0 1.5H3', 0.2) },
  glue: { size: 0.8, angle: 45, inside: stroke('M0 .4H.8M.4 0V.8', 0.3) },
  // Each covers what lies under it, and is darker than the one before: a map is one on the other, the thinnest last.
  'left-thick': { size: 2.4, angle: 45, inside: `${white(2.4)}<circle cx="1.2" cy="1.2" r=".2" fill="#000"/>` },
  'left-thinner': { size: 1.5, angle: 45, inside: white(1.5) + stroke('M0 .75H1.5', 0.22) },
  'left-thin': { size: 1.1, angle: 45, inside: white(1.1) + stroke('M0 .55H1.1M.55 0V1.1', 0.26) },
  'left-thinnest': { size: 0.8, angle: 45, inside: white(0.8) + stroke('M0 .4H.8M.4 0V.8', 0.5) },
  nothing: { size: 2, angle: 0, inside: white(2) },
  // A strip less than a millimetre wide on paper: dark enough to be seen as one.
  'tack-zone': { size: 0.7, angle: 45, inside: stroke('M0 .35H.7', 0.4) },
  gasket: { size: 0.9, angle: -45, inside: stroke('M0 .45H.9', 0.35) },
  'levelling-board': { size: 1, angle: 90, inside: stroke('M0 .5H1', 0.5) },
  removed: { size: 2, angle: 45, inside: '<circle cx="1" cy="1" r=".3" fill="#000"/>' },
};
