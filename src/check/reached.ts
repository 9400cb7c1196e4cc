/** Which cuts a wire gets to from another: through cuts that are meant to meet and do. */
import type { CutId } from '../facts/cuts.ts';
import { cutId, meantToMeet, pairsOf } from '../facts/cuts.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';

/** All cuts that are joined to one, however far round. */
export function reachedFrom({ subject: { spec }, facts }: Bench, first: CutId): ReadonlySet<CutId> {
  const meets = pairsOf(spec).filter(
    ({ a, b, left }) =>
      // What cannot be known may well meet: that is another finding's business.
      look(facts, (use) => {
        const wood = meantToMeet(use, a, b) ? use.fact(left)?.wood : undefined;
        return wood !== undefined && (wood.high ?? wood.value) < 0;
      }) ?? true,
  );
  const reached = new Set([first]);
  for (let more = true; more;) {
    more = false;
    for (const { a, b } of meets) {
      if (reached.has(cutId(a)) === reached.has(cutId(b))) continue;
      reached.add(cutId(a)).add(cutId(b));
      more = true;
    }
  }
  return reached;
}

/** What is meant to meet and may not: that explains what is not reached. */
export const meantMeetings = ({ subject: { spec }, facts }: Bench): readonly string[] =>
  pairsOf(spec).flatMap(({ a, b, left }) => (look(facts, (use) => meantToMeet(use, a, b)) ? [left] : []));
