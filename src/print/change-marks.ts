/**
 * What a card shows of its last change: a flag with the letter of the revision before each thing that changed, as drawings
 * have it, and a short block in words. The flag is part of the text it stands before: templates need not know of it.
 */
import type { CardChanges, Line } from '../cards/card.ts';
import { escaped, markup } from './markup.ts';
import type { Markup } from './markup.ts';
import type { Speech } from './speech.ts';

/** The text, flagged where what stands there changed. */
export type Mark = (at: string, text: Markup) => Markup;

export interface Changed {
  readonly flag: Markup;
  readonly title: string;
  readonly lines: readonly { readonly line: Markup; readonly size: string }[];
  readonly more: string | null;
}

/** What is to be said of a change besides: how far it moved, what became of its limits. */
export const sizeText = (also: readonly Line[], talk: Speech): string =>
  [...new Set(also.map((one) => talk.plain(one)))].join('; ');

export function changeMarks(
  changes: CardChanges | undefined,
  talk: Speech,
): { readonly changed: Changed | null; readonly mark: Mark } {
  if (!changes) return { changed: null, mark: (_, text) => text };
  const { since, revision, lines, more, at } = changes;
  const flag = `<b class="rev" role="img" aria-label="${escaped(talk.phrase('change.marked'))}">${escaped(revision)}</b>`;
  const marked = new Set(at);
  const title = lines.length > 0 ? 'change.on-card' : 'change.on-card-new';
  return {
    changed: {
      flag: markup(flag),
      title: talk.phrase(title, { revision: lines.length > 0 ? since : revision }),
      lines: lines.map(({ line, also }) => ({
        line: talk.html(line),
        size: sizeText(also, talk),
      })),
      more: more > 0 ? talk.phrase('change.more-flagged', { count: String(more) }) : null,
    },
    mark: (place, text) => (marked.has(place) ? markup(`${flag} ${text.toString()}`) : text),
  };
}
