/** The mistakes that reading can find: permanent ids in the trade's words, and why each matters on the floor. */
import type { Finding, Note, Place } from '../findings/finding.ts';

const why = {
  'file-unreadable': 'What cannot be read cannot be checked, and a card printed from half a file is worse than none.',
  'file-missing': 'Numbers that should come from that file would be missing on every card.',
  'not-in-the-schema': 'A word nobody reads is a number nobody cuts by: what you meant by it reaches no card.',
  'not-given': 'A station would get a card with a gap where this number belongs.',
  'wrong-form': 'What stands here cannot be taken for what is asked, so no number can be made from it.',
  'not-a-choice': 'Only these have a meaning at the stations; another word would be passed over.',
  'given-twice': 'Two numbers for one thing: one station would go by the first and the next by the second.',
  'number-unreadable': 'A number that can be read two ways will be, at two stations.',
  'unit-unknown': 'Wood is cut by the number and the unit together; a guess at the unit can be off 25 times.',
  'limits-missing': 'Without limits nobody at the gauge can say whether a piece is in or out.',
  'not-positive': 'Nothing can be cut to a size of nothing or less.',
  'not-whole': 'Pieces, halves and pulses are counted; a part of one cannot be made.',
  'no-such-name': 'The card would name a thing that is not there, and somebody would take the next best.',
  'defined-twice': 'Two rows of one name: which of them a card shows would be chance.',
  'based-on-loop': 'Files that start from each other never end: nothing can be taken over from either.',
  'id-is-not-file-name': 'Cards, orders and releases go by the id; two names for one model get mixed up on a post.',
} as const;

export type MistakeId = keyof typeof why;

export interface Mistake {
  readonly place: Place;
  readonly what: string;
  readonly mend: string;
  readonly notes?: readonly Note[];
  readonly about?: readonly string[];
}

/** A finding of reading; always an error. */
export function mistake(id: MistakeId, { place, what, mend, notes = [], about = [] }: Mistake): Finding {
  return { id, severity: 'error', place, what, why: why[id], mend, notes, about };
}

/** The ids, for the reference page. */
export const mistakeIds = Object.keys(why) as readonly MistakeId[];
export const whyOf = (id: MistakeId): string => why[id];
