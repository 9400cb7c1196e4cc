/** What the fast ways are held against: every edge asked, and faces as their formulas, mm below the high plane by the distance d. */
import { arch, bevel } from '../../src/geometry/solid/profile.ts';

/** Land 11 wide and 5 below the crown, a hollow 0.8 deep at 17, crown from 45 on: in half cosines. */
export const ARCH = arch({ landMm: 11, recurve: { atMm: 17, depthMm: 0.8 }, crownMm: 45 });
export const ARCH_RISE_MM = 5;
export function archDown(d: number): number {
  const half = (from: number, to: number) => (1 - Math.cos((Math.PI * (d - from)) / (to - from))) / 2;
  if (d < 11) return 5;
  if (d < 17) return 5 + 0.8 * half(11, 17);
  return d < 45 ? 5.8 * (1 - half(17, 45)) : 0;
}

/** Land 6.04 wide and 6 below, then straight up over 18.05. */
export const BEVEL = bevel(6.04, 18.05);
export const BEVEL_RISE_MM = 6;
export const bevelDown = (d: number): number => (d < 6.04 ? 6 : d < 24.09 ? (6 * (24.09 - d)) / 18.05 : 0);

/** What a quarter round takes. */
export const roundDown = (radiusMm: number, d: number): number =>
  d < radiusMm ? radiusMm - Math.sqrt(radiusMm ** 2 - (radiusMm - d) ** 2) : 0;

/** Least distance from a point to a line, closed or open: every piece of it asked, one after the other. */
export function byEveryEdge(line: Float64Array, closed: boolean, x: number, y: number): number {
  let least = Infinity;
  for (let i = closed ? 0 : 2, j = closed ? line.length - 2 : 0; i < line.length; j = i, i += 2) {
    const [px, py] = [x - line[j]!, y - line[j + 1]!];
    const [dx, dy] = [line[i]! - line[j]!, line[i + 1]! - line[j + 1]!];
    const along = px * dx + py * dy;
    const squared = dx * dx + dy * dy;
    const t = along <= 0 ? 0 : along >= squared ? 1 : along / squared;
    least = Math.min(least, (px - t * dx) ** 2 + (py - t * dy) ** 2);
  }
  return Math.sqrt(least);
}
