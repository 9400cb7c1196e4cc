/** The gap under a flat plate on a face: it rests on what stands highest, and what lies lower has air over it. */
import type { Region } from '../polygon.ts';
import { awayFrom } from './contour.ts';
import type { Face } from './face.ts';
import { depthOn } from './face.ts';
import { lowestOver } from './lowest.ts';

export interface AirUnder {
  readonly mm: number;
  /** Where that is. */
  readonly xMm: number;
  readonly yMm: number;
}

/**
 * `rests` is where the plate lies as drawn, `reaches` where it may come to lie at worst. A plate that lies wholly on the plane
 * of a contour rests on that: the least of both is the gap. Undefined where it rests on nothing.
 */
export function airUnder(face: Face, rests: Region, reaches: Region): AirUnder | undefined {
  if (isLevel(face)) return nothingUnder(rests);
  const level = (): number => 0;
  const planes = face.contours.flatMap((one) =>
    one.kind === 'plane' ? [(x: number, y: number) => one.slope * awayFrom(one, x, y)] : [],
  );
  const gaps = [level, ...planes].flatMap((plane): AirUnder[] => {
    const below = (x: number, y: number): number => depthOn(face, x, y) - plane(x, y);
    const high = lowestOver(rests, below);
    const low = lowestOver(reaches, (x, y) => -below(x, y));
    return high && low ? [{ mm: -low.value - high.value, xMm: low.xMm, yMm: low.yMm }] : [];
  });
  return gaps.toSorted((a, b) => a.mm - b.mm)[0];
}

const isLevel = ({ carve, contours, roundMm, ledge }: Face): boolean =>
  carve.profile.pieces.length === 0 && contours.length === 0 && roundMm === 0 && ledge === undefined;

/** On a level face there is no air anywhere, and nothing to look for. */
function nothingUnder([ring]: Region): AirUnder | undefined {
  return ring && { mm: 0, xMm: ring[0]!, yMm: ring[1]! };
}
