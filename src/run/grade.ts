/** The grade of an order against the band of its finish: wood too poor is refused, and wood too good as well. Pure. */
import type { Finding } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import type { MadeBy } from './made-by.ts';
import type { Order } from './orders.ts';
import { refused } from './refusals.ts';

/** What is worst about it comes first: unknown, too poor, then too good. */
export function gradeRefused({ grade, finish, places }: Order, by: MadeBy): Finding | undefined {
  const place = places.grade;
  const band = by.grades[finish] ?? {};
  const scales = Object.keys(band);
  const known = scales.flatMap((scale) => by.scale(scale));
  const met = new Map<string, string>();
  let tooGood: Finding | undefined;
  for (const step of grade) {
    const scale = scales.find((one) => by.scale(one).includes(step));
    if (scale === undefined)
      return refused('order-grade-unknown', {
        place,
        what: `"${step}" is no step of ${scales.join(', ') || 'any scale that this finish is graded by'}.`,
        mend: offer(step, known),
      });
    const before = met.get(scale);
    if (before !== undefined)
      return refused('order-grade-unknown', {
        place,
        what: `"${before}" and "${step}" are two steps of the one scale ${scale}.`,
        mend: 'Name one step of each scale.',
      });
    met.set(scale, step);
  }
  for (const [scale, step] of met) {
    const steps = by.scale(scale);
    const allowed = band[scale]!;
    if (allowed.includes(step)) continue;
    const above = steps.indexOf(step) > Math.max(...allowed.map((one) => steps.indexOf(one)));
    const listed = steps.filter((one) => allowed.includes(one)).join(', ');
    const what = `${scale} "${step}" is too ${above ? 'good' : 'poor'} for ${finish}, which asks for ${listed}.`;
    if (!above)
      return refused('order-too-poor', {
        place,
        what,
        mend: `Order ${listed}, or a finish that it is good enough for.`,
      });
    const mend = `Order ${listed}; or the lead's name in the column lead.`;
    tooGood ??= refused('order-too-good', { place, what, mend });
  }
  return tooGood;
}
