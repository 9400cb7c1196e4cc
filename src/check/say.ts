/** Numbers in the text of findings. */
import { formatNumber, withUnit } from '../units/format.ts';
import type { Cause, Length } from '../units/quantity.ts';

/** A length as read by people: `0.18 mm`, two decimals in mm and three in inches unless more were written. */
export function say(q: { readonly unit: string; readonly decimals: number }, nm: number): string {
  return withUnit(formatNumber(nm, q.unit, Math.max(q.decimals, q.unit === 'in' ? 3 : 2)), q.unit);
}

/** `±0.12 stages.body.machined.crown + ±0.08 plant.machines.router.depth-error`: the causes of a stack, largest first. */
export function sayCauses(q: Length, causes: readonly Cause[]): string {
  return [...causes]
    .map((cause) => ({
      name: cause.cause.replace(/#.*/, ''),
      half: (Math.abs(cause.sensitivity) * (cause.plus - cause.minus)) / 2,
    }))
    .sort((a, b) => b.half - a.half)
    .map(({ name, half }) => `±${say(q, half)} (${name})`)
    .join(' + ');
}
