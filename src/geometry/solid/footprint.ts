/** What a void covers in plan. */
import { bounds } from '../measure.ts';
import type { Region } from '../polygon.ts';
import type { Point3, Tube, Void } from './solid.ts';

/** A pocket's own region; of a tube its shadow, flat ends included. */
export function footprint(cut: Void): Region {
  if (cut.kind === 'pocket') return cut.region;
  const shadow = shadows.get(cut) ?? shadowOf(cut);
  shadows.set(cut, shadow);
  return shadow;
}

/** A channel is asked for its shadow beside every other cut, and is never written to. */
const shadows = new WeakMap<Tube, Region>();

function shadowOf({ from, to, radiusMm }: Tube): Region {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const flat = Math.hypot(dx, dy);
  const [ux, uy] = flat === 0 ? [1, 0] : [dx / flat, dy / flat];
  // The flat ends of one that dips are seen as ellipses, and as circles from right above.
  const dip = to.zMm === from.zMm ? 0 : Math.abs(to.zMm - from.zMm) / Math.hypot(flat, to.zMm - from.zMm);
  const end = (at: Point3, startRad: number): number[] =>
    Array.from({ length: dip === 0 ? 2 : END_POINTS }, (_, k) => {
      const angle = startRad + (Math.PI * k) / (dip === 0 ? 1 : END_POINTS - 1);
      const [along, across] = [radiusMm * dip * Math.cos(angle), radiusMm * Math.sin(angle)];
      return [at.xMm + along * ux - across * uy, at.yMm + along * uy + across * ux];
    }).flat();
  return [Float64Array.from([...end(to, -Math.PI / 2), ...end(from, Math.PI / 2)])];
}

/** Of a half circle seen at the end of a tube. */
const END_POINTS = 65;

/** The box of a void in plan. */
export const boxOf = (cut: Void) => bounds(footprint(cut)[0]!)!;
