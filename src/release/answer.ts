/** What a code on a print means today: the question of an operator in front of a card. Pure. */
import type { Start } from './entries.ts';
import type { ReleasedCard } from './record.ts';
import type { State } from './state.ts';
import { hangingOn } from './wall.ts';
import type { Hanging, Known } from './wall.ts';

export type Answer =
  | { readonly is: 'current' | 'run-out' | 'held'; readonly hanging: Hanging }
  | { readonly is: 'coming'; readonly card: ReleasedCard; readonly of: Known; readonly from: Start }
  | {
      readonly is: 'superseded';
      readonly card: ReleasedCard;
      readonly of: Known;
      readonly by: string;
      /** Codes that hang in its place. */
      readonly instead: readonly string[];
    }
  | { readonly is: 'withdrawn'; readonly card: ReleasedCard; readonly of: Known; readonly reason: string }
  | { readonly is: 'draft' }
  | { readonly is: 'unknown' };

/** `drafts`: codes of the cards as the specs stand now. */
export function answerTo(code: string, known: readonly Known[], state: State, drafts: readonly string[]): Answer {
  const wanted = plainCode(code);
  const hanging = hangingOn(known, state).find(({ card }) => plainCode(card.code) === wanted);
  if (hanging) return { is: hanging.holds.length > 0 ? 'held' : hanging.until ? 'run-out' : 'current', hanging };
  // The latest release that had it says what became of it.
  for (const of of known.toReversed()) {
    const card = of.record.cards.find((one) => plainCode(one.code) === wanted);
    if (!card) continue;
    const { standing } = of.released;
    if (standing.is === 'coming') return { is: 'coming', card, of, from: standing.from };
    if (standing.is === 'withdrawn') return { is: 'withdrawn', card, of, reason: standing.act.reason };
    const by = standing.is === 'superseded' ? standing.by : of.released.revision;
    const instead = hangingOn(known, state)
      .filter(
        (one) =>
          one.model === of.record.model &&
          one.card.key.station === card.key.station &&
          one.card.key.hand === card.key.hand,
      )
      .map((one) => one.card.code);
    return { is: 'superseded', card, of, by, instead };
  }
  return drafts.some((draft) => plainCode(draft) === wanted) ? { is: 'draft' } : { is: 'unknown' };
}

/** As typed or scanned: blanks, dashes and small letters make no difference. */
const plainCode = (code: string): string => code.toUpperCase().replace(/[^A-Z0-9]/g, '');
