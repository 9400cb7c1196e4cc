/** Why a line of a list of orders is not run: permanent ids, and why each matters on the floor. The rest of the list goes on. */
import type { Finding, Place } from '../findings/finding.ts';

const WHY = {
  'orders-unreadable': 'A list read wrongly is a day of the wrong bodies.',
  'order-unclear': 'What can be read two ways is made the one way that was not meant.',
  'order-unknown-model': 'Nobody at the stations has a card for it.',
  'order-not-released': 'Without a card in force a body is made by a draft, or by one that should be down.',
  'order-hand': 'The jigs and fixtures of the other hand fit no cut of this one.',
  'order-finish': 'Wood is picked and shaded for its finish: what is not offered has no band to pick by.',
  'order-grade-unknown': 'A grade that no scale has is picked by guess.',
  'order-too-poor': 'Its flaws would show under this finish, and the body comes back from sanding or finishing.',
  'order-too-good': 'A better piece than the finish shows is wasted, and is missing where it would.',
  'order-lead': 'A name that nobody answers to lets nothing through.',
  'order-held': 'What is held must not be used: bodies made with it would have to be found again.',
} as const;

export type RefusalId = keyof typeof WHY;

export const refusalIds = Object.keys(WHY) as readonly RefusalId[];

export const refused = (
  id: RefusalId,
  { place, what, mend }: { readonly place: Place; readonly what: string; readonly mend: string },
): Finding => ({ id, severity: 'error', place, what, why: WHY[id], mend, notes: [], about: [] });
