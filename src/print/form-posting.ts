/** What is laid over a form of the cards it was made from, on the day it is printed. */
import { markup, type Markup } from './markup.ts';
import type { Speech } from './speech.ts';

export interface FormPosting {
  readonly revision: string;
  /** A draft is not for the floor. */
  readonly status: 'draft' | 'released';
  /** By the code of a card, where there is something to say of it today. */
  readonly said: ReadonlyMap<string, Said>;
}

export interface Said {
  /** Held, in run-out, for some orders only. */
  readonly status?: string;
  /** Markup this program made: what is held, which limits differ for a while. */
  readonly over: string;
}

export const draftBar = ({ status }: FormPosting, talk: Speech): string | null =>
  status === 'draft' ? talk.phrase('sheet.status-draft') : null;

export function saidView({ said }: FormPosting, code: string): { status: string | null; over: Markup | null } {
  const { status, over } = said.get(code) ?? { over: '' };
  return { status: status ?? null, over: over === '' ? null : markup(over) };
}
