/**
 * A tile as a page shows it: its part of the picture at true scale, a bar each way to prove it, rings where it meets its
 * neighbours, and which they are.
 */
import { escaped } from '../markup.ts';
import { around, num, type Box, type Point } from '../drawing/paper.ts';
import { BAR_ROOM_MM, scaleBar } from '../drawing/scale-bar.ts';
import { labelMarkup, TEXT_MM } from '../drawing/text.ts';
import { cornersOf, OVERLAP_MM, type Grid, type Side, type Tile } from './grid.ts';
import { cross } from './picture.ts';
import type { Ground, Way } from './place-names.ts';

/** On every tile in both directions, mm. */
export const BAR_MM = 100;
/** Beside the picture, for a bar. */
const STRIP_MM = BAR_ROOM_MM + 0.5;
const RING_MM = 4;

/**
 * A browser puts a picture on whole pixels of 1/96 in and stretches it to fit them: only one of a whole number of pixels keeps
 * its scale.
 */
const PIXEL_MM = 25.4 / 96;

export interface Sheet {
  readonly widthPx: number;
  readonly heightPx: number;
}

export const mmOf = (px: number): number => px * PIXEL_MM;

/** What of the picture is to be seen on a sheet. */
export const shownOn = ({ widthPx, heightPx }: Sheet) => ({
  width: Math.floor((mmOf(widthPx) - STRIP_MM) * 100) / 100,
  height: Math.floor((mmOf(heightPx) - STRIP_MM) * 100) / 100,
});

export interface TileWords {
  readonly title: string;
  readonly joins: (side: Side, tile: string) => string;
}

/** `svg`: the whole picture. */
export function tilePage(tile: Tile, svg: string, sheet: Sheet, words: TileWords): string {
  const { window } = tile;
  const [width, height] = [window.right - window.left, window.bottom - window.top];
  const sides = (Object.entries(tile.joins) as [Side, string][]).map(
    ([side, other]) => edge(side, tile.cell) + hint(side, tile, words.joins(side, other)),
  );
  return (
    `<svg class="full-size-tile" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escaped(words.title)}" ` +
    `width="${sheet.widthPx}px" height="${sheet.heightPx}px" viewBox="0 0 ${mmOf(sheet.widthPx)} ${mmOf(sheet.heightPx)}" ` +
    `font-size="${TEXT_MM}">` +
    `<svg x="${STRIP_MM}" y="0" width="${num(width)}" height="${num(height)}" ` +
    `viewBox="${num(window.left)} ${num(window.top)} ${num(width)} ${num(height)}">` +
    `${svg}${sides.join('')}${cornersOf(tile.cell).map(ring).join('')}</svg>` +
    bothBars({ x: STRIP_MM, y: height }) +
    '</svg>'
  );
}

/** A bar to the right and one upward from a corner, their numbers outside. */
export const bothBars = ({ x, y }: Point): string =>
  scaleBar({ x: x + 2, y: y + 0.4 }, BAR_MM, false) + scaleBar({ x: x - 0.4, y: y - 2 - BAR_MM }, BAR_MM, true);

/** A cross in a ring, small enough to lie whole on every tile that meets there. */
export const ring = (at: Point): string =>
  `<circle class="ring" cx="${num(at.x)}" cy="${num(at.y)}" r="${RING_MM}" fill="none" stroke="#000" stroke-width="0.25"/>` +
  cross(at, OVERLAP_MM / 2 - 0.3);

/** What the names keep off: the cuts, and the rings. */
export const groundOf = ({ tiles, whole }: Grid): Ground => ({
  ways: tiles.flatMap(({ cell: { left, top, right, bottom }, joins }): Way[] => [
    ...(joins.right
      ? [
          [
            { x: right, y: top },
            { x: right, y: bottom },
          ] as const,
        ]
      : []),
    ...(joins.below
      ? [
          [
            { x: left, y: bottom },
            { x: right, y: bottom },
          ] as const,
        ]
      : []),
  ]),
  marks: tiles.flatMap(({ cell }) => cornersOf(cell).map((corner) => around([corner], OVERLAP_MM / 2))),
  within: whole,
});

/** Cut off at the left and above, dashed; at the right and below, dotted, the neighbour is laid over it. */
const DASHES: Readonly<Record<Side, string>> = { left: '4 2', above: '4 2', right: '0.4 1.6', below: '0.4 1.6' };

function edge(side: Side, { left, top, right, bottom }: Box): string {
  const half = OVERLAP_MM / 2;
  const d = {
    left: `M${num(left)} ${num(top - half)}V${num(bottom + half)}`,
    right: `M${num(right)} ${num(top - half)}V${num(bottom + half)}`,
    above: `M${num(left - half)} ${num(top)}H${num(right + half)}`,
    below: `M${num(left - half)} ${num(bottom)}H${num(right + half)}`,
  }[side];
  return `<path class="edge" d="${d}" fill="none" stroke="#000" stroke-width="0.3" stroke-dasharray="${DASHES[side]}"/>`;
}

/** In the strip that the neighbour shows as well. */
function hint(side: Side, { cell, window }: Tile, text: string): string {
  const x = { left: (cell.left + window.left) / 2, right: (cell.right + window.right) / 2 };
  const y = { above: (cell.top + window.top) / 2, below: (cell.bottom + window.bottom) / 2 };
  const middle = { x: (cell.left + cell.right) / 2, y: (cell.top + cell.bottom) / 2 };
  const upright = side === 'left' || side === 'right';
  const at = upright ? { x: x[side], y: middle.y } : { x: middle.x, y: y[side] };
  return labelMarkup({ at, text, anchor: 'middle', turn: upright ? -90 : 0 });
}
