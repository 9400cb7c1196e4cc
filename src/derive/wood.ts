/**
 * Why the wood left between two cuts, or between a cut and a face, may be more or less than drawn. A cut's floor lies anywhere
 * its own limits pass it: those count, not what the machine can hold, because every body the gauge passes goes on.
 */
import type { Use } from '../facts/facts.ts';
import type { Cut } from '../facts/cuts.ts';
import { cutId } from '../facts/cuts.ts';
import type { SetupId } from '../facts/cutting-order.ts';
import { highestPoint } from '../facts/parts.ts';
import type { Subject } from '../facts/subject.ts';
import { bounds } from '../geometry/measure.ts';
import type { Height } from '../geometry/solid/profile.ts';
import { depthOn, heightOn } from '../geometry/solid/face.ts';
import type { Void } from '../geometry/solid/solid.ts';
import { floorAt } from '../geometry/solid/solid.ts';
import type { Left } from '../geometry/solid/wood-left.ts';
import { mergedCauses, scale, scaledCauses, worstCase } from '../units/arithmetic.ts';
import type { Cause } from '../units/quantity.ts';
import { floorOf, requirementOf } from './cuts.ts';
import { recurveCauses } from './heights.ts';
import type { Edge, SurfaceId } from './surfaces.ts';
import { apartCauses, sideOf } from './location.ts';
import { causesApart, placeError, setupOf, surfaceOf } from './surfaces.ts';

/** What is below or above a layer of wood. */
export type End = 'top' | 'back' | CutEnd | FixedEnd;

interface CutEnd {
  readonly cut: Cut;
  /** Its roof, the cap's underside, and not its floor. */
  readonly roof?: true;
}

/** What stands at a surface and moves with it: a tack. */
interface FixedEnd {
  readonly surface: SurfaceId;
}

const isCutEnd = (end: End): end is CutEnd => typeof end !== 'string' && 'cut' in end;

/** Of an upright layer: z of what lies above less z of what lies below, at the place where it is thinnest. */
export function causesUpright(subject: Subject, use: Use, below: End, above: End, left: Left): readonly Cause[] {
  const edges = [below, above].flatMap((end) => (isCutEnd(end) ? [passed(subject, use, end.cut)] : []));
  const from = surfaceOfEnd(subject, below);
  const own = [...fallCauses(subject, use, below, left, -1), ...fallCauses(subject, use, above, left, 1)];
  const between = (to: SurfaceId) => causesApart(subject, use, from, to, edges);
  if (above !== 'top') return mergedCauses([...between(surfaceOfEnd(subject, above)), ...own]);
  const height = heightOn(use.fact('face.top'), left.xMm, left.yMm);
  return mergedCauses([
    ...topCauses(subject, height, between),
    ...recurveCauses(subject, use, height),
    ...slopeCauses(subject, use, below, left),
    ...own,
  ]);
}

/** The top between its named points moves with both, each by its share. */
function topCauses(
  subject: Subject,
  { share }: Height,
  between: (to: SurfaceId) => readonly Cause[],
): readonly Cause[] {
  const high = scaledCauses(between(surfaceOf(subject.spec, 'machined-top', highestPoint(subject.spec))), share);
  return share === 1
    ? high
    : [...high, ...scaledCauses(between(surfaceOf(subject.spec, 'machined-top', 'land')), 1 - share)];
}

/** Moved sideways under a slope, against the carve of the top, a cut finds the top that much lower; beside a ledge, by its step. */
function slopeCauses(subject: Subject, use: Use, below: End, { xMm, yMm }: Left): readonly Cause[] {
  if (!isCutEnd(below)) return [];
  const face = use.fact('face.top');
  const { ledge } = face;
  const intoMm = ledge ? ledge.widthMm - face.edge.at(xMm, yMm) : -Infinity;
  // The floor of a ledge is level.
  if (intoMm > 0) return [];
  const carved = { ...face, ledge: undefined };
  const rise = (dx: number, dy: number) =>
    (depthOn(carved, xMm + dx, yMm + dy) - depthOn(carved, xMm - dx, yMm - dy)) / (2 * Math.hypot(dx, dy));
  const slope = Math.hypot(rise(SLOPE_MM, 0), rise(0, SLOPE_MM));
  const away = apartCauses(subject, use, sideOf(use, below.cut), { setup: 'top', cut: 'carve' }, { xMm, yMm });
  const offMm = worstCase(away).plus / 1e6;
  // As far off as it may be it lies under the ledge: all of the step counts.
  const step =
    ledge && -intoMm < offMm ? Math.max(0, face.riseMm + ledge.depthMm - depthOn(carved, xMm, yMm)) / offMm : 0;
  const most = Math.max(slope, step);
  return most < 1e-6 ? [] : scaledCauses(away, most);
}

/** How far to both sides the top is looked at for its slope, mm. */
const SLOPE_MM = 0.5;

function surfaceOfEnd({ spec }: Subject, end: End): SurfaceId {
  if (end === 'back') return surfaceOf(spec, 'back-face');
  if (end === 'top') return surfaceOf(spec, 'machined-top');
  if (!isCutEnd(end)) return end.surface;
  return end.roof ? 'glue-face' : floorOf(end.cut);
}

/** What the gauge passes: the distance from the floor to where it is measured from, within its limits. */
export function passed(subject: Subject, use: Use, cut: Cut): Edge {
  const { floor, end, distance, sign } = requirementOf(subject, use, cut);
  return { a: floor, b: end, apart: scale(distance, sign) };
}

/** A sloping floor, or the axis of a channel, moves with its fall by how far along it lies. */
function fallCauses(subject: Subject, use: Use, end: End, { xMm, yMm }: Left, sign: 1 | -1): readonly Cause[] {
  const falls = !isCutEnd(end) || end.roof ? undefined : end.cut.spec.falls;
  if (!isCutEnd(end) || !falls) return [];
  const cut = use.fact(`${cutId(end.cut)}.void`);
  const down = use(setupOf(subject.spec, requirementOf(subject, use, end.cut).setup).up) === 'back' ? 1 : -1;
  const along = cut.kind === 'pocket' ? alongY(bounds(cut.region[0]!)!, yMm) : alongTube(cut, xMm, yMm);
  return scaledCauses(use(falls).causes ?? [], sign * down * along);
}

const alongY = ({ minY, maxY }: { minY: number; maxY: number }, y: number): number => (y - minY) / (maxY - minY);

function alongTube({ from, to }: { from: Spot; to: Spot }, x: number, y: number): number {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  return Math.min(1, Math.max(0, ((x - from.xMm) * dx + (y - from.yMm) * dy) / (dx * dx + dy * dy)));
}

interface Spot {
  readonly xMm: number;
  readonly yMm: number;
}

/** A hole or channel drilled wider than drawn, within limits of its own, leaves less beside it: by half. */
export function widthCauses({ spec }: Subject, use: Use, { kind, id }: Cut): readonly Cause[] {
  const drilled = kind === 'hole' ? spec.holes![id] : kind === 'channel' ? spec.channels![id] : undefined;
  return drilled ? scaledCauses(use(drilled.diameter).causes ?? [], -1 / 2) : [];
}

/** How far the machine may put a cut off sideways. */
export const placeCauses = (subject: Subject, use: Use, cut: Cut): readonly Cause[] =>
  placeError(subject, use, use(cut.spec.setup) as SetupId, cutId(cut));

/** Lowest and highest z of a pocket's floor, mm; of a tube, of its axis. */
export function floorEnds(cut: Void): { readonly low: number; readonly high: number } {
  if (cut.kind === 'tube') {
    return { low: Math.min(cut.from.zMm, cut.to.zMm), high: Math.max(cut.from.zMm, cut.to.zMm) };
  }
  const { minY, maxY } = bounds(cut.region[0]!)!;
  const ends = [floorAt(cut.floor, minY), floorAt(cut.floor, maxY)];
  return { low: Math.min(...ends), high: Math.max(...ends) };
}
