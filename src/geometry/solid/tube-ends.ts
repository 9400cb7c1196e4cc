/** Where a channel comes through the side of the body, and how far it goes on past what it runs into. */
import { regionContains, contains } from '../nearness.ts';
import type { Polygon } from '../polygon.ts';
import type { Point3, Tube, Void } from './solid.ts';
import { pocketSpan } from './solid.ts';

/** Looks along the axis, mm. */
const STEP_MM = 0.5;
/** Halvings of a step: to a tenth of a micrometre. */
const HALVINGS = 12;

const lengthOf = ({ from, to }: Tube): number => Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm);

/** A point of the axis, by its way from the start. */
function along({ from, to }: Tube, share: number): Point3 {
  const on = (a: number, b: number) => a + share * (b - a);
  return { xMm: on(from.xMm, to.xMm), yMm: on(from.yMm, to.yMm), zMm: on(from.zMm, to.zMm) };
}

/** Whether a point lies in what a cut takes. */
export function isIn(cut: Void, { xMm, yMm, zMm }: Point3): boolean {
  if (cut.kind === 'pocket') {
    const { low, high } = pocketSpan(cut, yMm);
    return zMm >= low && zMm <= high && regionContains(cut.region, xMm, yMm);
  }
  const { from, to, radiusMm } = cut;
  const [ax, ay, az] = [to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm];
  const [px, py, pz] = [xMm - from.xMm, yMm - from.yMm, zMm - from.zMm];
  const t = Math.min(1, Math.max(0, (px * ax + py * ay + pz * az) / (ax * ax + ay * ay + az * az)));
  return Math.hypot(px - t * ax, py - t * ay, pz - t * az) <= radiusMm;
}

/** Where the axis of one that starts outside comes into wood; nothing where it comes in through a cut that is open there. */
export function throughSide(tube: Tube, outline: Polygon, others: readonly Void[]): Point3 | undefined {
  const isInside = (way: number): boolean => {
    const { xMm, yMm } = along(tube, way / lengthOf(tube));
    return contains(outline, xMm, yMm);
  };
  if (isInside(0)) return undefined;
  const way = firstWhere(isInside, 0, lengthOf(tube));
  if (way === undefined) return undefined;
  const at = along(tube, way / lengthOf(tube));
  return others.some((cut) => isIn(cut, at)) ? undefined : at;
}

/** How a channel ends past the last cut it comes through. */
export interface RunsOn {
  /** Where it leaves that cut. */
  readonly leaves: Point3;
  /** Which of those given. */
  readonly past: number;
  readonly mm: number;
}

/** Nothing where its tip lies in one of them, or where it comes through none but the one it starts in. */
export function runsOn(tube: Tube, cuts: readonly Void[]): RunsOn | undefined {
  const whole = lengthOf(tube);
  const back = (way: number): Point3 => along(tube, 1 - way / whole);
  const isMet = (way: number): boolean => cuts.some((cut) => isIn(cut, back(way)));
  if (isMet(0)) return undefined;
  const mm = firstWhere(isMet, 0, whole);
  if (mm === undefined) return undefined;
  const leaves = back(mm);
  const past = cuts.findIndex((cut) => isIn(cut, leaves));
  return isIn(cuts[past]!, tube.from) ? undefined : { leaves, past, mm };
}

/** The first way from one to the other at which something holds. */
function firstWhere(holds: (way: number) => boolean, from: number, to: number): number | undefined {
  for (let way = from; way < to; way += STEP_MM) {
    const next = Math.min(to, way + STEP_MM);
    if (!holds(next)) continue;
    let [low, high] = [way, next];
    for (let i = 0; i < HALVINGS; i += 1) {
      const middle = (low + high) / 2;
      if (holds(middle)) high = middle;
      else low = middle;
    }
    return high;
  }
  return undefined;
}
