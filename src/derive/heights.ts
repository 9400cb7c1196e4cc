/** Heights of the machined top between its named points. */
import type { Use } from '../facts/facts.ts';
import { highestPoint } from '../facts/parts.ts';
import type { Subject } from '../facts/subject.ts';
import type { Height } from '../geometry/solid/profile.ts';
import { combine, scaledCauses, withCauses } from '../units/arithmetic.ts';
import type { Cause, Length } from '../units/quantity.ts';
import { lengthOfMm, toMm } from './lengths.ts';

/**
 * Thickness of the machined body, or the white one, at a height of its top: (1 − share) · land + share · high point − drop. It is off by as
 * much of either as it has a share in, and of a recurve by its share of the depth.
 */
export function topAtHeight(
  subject: Subject,
  use: Use,
  { share, dropMm }: Height,
  stage: 'machined' | 'white' = 'machined',
): Length {
  const high = use.fact(`thickness.body.${stage}.${highestPoint(subject.spec)}`);
  const between =
    share === 1
      ? high
      : combine({ factor: 1 - share, of: use.fact(`thickness.body.${stage}.land`) }, { factor: share, of: high });
  const drop = lengthOfMm(dropMm);
  const value = Math.round(between.value - drop.value);
  return withCauses({ ...between, value, unit: high.unit }, [
    ...(between.causes ?? []),
    ...recurveCauses(subject, use, { share, dropMm }),
  ]);
}

/** Where the drop is that of a recurve with limits. */
export function recurveCauses({ spec }: Subject, use: Use, { dropMm }: Height): readonly Cause[] {
  const depth = dropMm > 0 ? spec.carve.recurve?.depth : undefined;
  if (!depth) return [];
  const q = use(depth);
  const part = Math.min(1, dropMm / toMm(q));
  return scaledCauses(q.causes ?? [], -part);
}
