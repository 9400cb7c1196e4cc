/**
 * The line a bandsaw blade can follow round a body, and the relief cuts for the bays it can't get into.
 * Its distance from the outline is least where the blade can follow; inside bends tighter than the blade's least radius
 * are filled by that radius (morphological closing: out by both, back in by the radius).
 */
import { evenOffset } from './even-offset.ts';
import { signedArea } from './measure.ts';
import { ARC_TOLERANCE_MM } from './offset.ts';
import type { Polygon } from './polygon.ts';
import { reliefCuts, type ReliefCuts } from './relief.ts';

export interface SawLine extends ReliefCuts {
  readonly line: Polygon;
}

/**
 * `outline` runs counter-clockwise and doesn't cross itself; `distanceMm` is zero or more, `bladeRadiusMm` above zero.
 * The line is nowhere nearer to the outline than the distance, but for the grid of the offsets (5e-6 mm), and lies up to
 * 0.003 mm outside the true one. A bay whose mouth the blade can't pass is filled, however wide it is inside.
 */
export function sawLine(outline: Polygon, distanceMm: number, bladeRadiusMm: number): SawLine {
  if (!(distanceMm >= 0 && bladeRadiusMm > 0)) {
    throw new RangeError('a saw line needs a distance of zero or more and a blade radius above zero');
  }
  // The chords of an arc lie inside it by up to the tolerance.
  const awayMm = distanceMm + ARC_TOLERANCE_MM;
  const plain = outermost(evenOffset([outline], awayMm));
  const grown = outermost(evenOffset([outline], awayMm + bladeRadiusMm));
  const line = outermost(evenOffset([grown], -bladeRadiusMm));
  return { line, ...reliefCuts(plain, line, bladeRadiusMm) };
}

/** The ring round all others: a blade doesn't get into what it encloses. */
function outermost(rings: readonly Polygon[]): Polygon {
  const [first, ...others] = rings;
  if (first === undefined) throw new RangeError('an outline that encloses nothing has no saw line');
  return others.reduce((most, ring) => (signedArea(ring) > signedArea(most) ? ring : most), first);
}
