/**
 * What is laid over a card when it is printed: revision, status, date. A draft says so in words. A release is printed with
 * slots in their place, in HTML and in the foot of its pages, filled each time it is posted: the card itself stays as it was.
 */
import type { Posting } from '../cards/card.ts';
import { cssText, escaped, markup } from './markup.ts';
import type { Markup } from './markup.ts';
import type { Speech } from './speech.ts';

/** Texts of what is laid over, as the views need them. */
export interface Overlay {
  readonly status: string;
  readonly revision: string;
  readonly date: string;
  /** Between head and key numbers: limits that differ for a while; null where there is no such place. */
  readonly over: Markup | null;
  /** The same for the foot of pages. */
  readonly foot: { readonly status: string; readonly date: string };
}

export function overlayOf(posting: Posting, talk: Speech): Overlay {
  if (posting.status === 'released') {
    const slot = (name: string): string => `platen-slot-${talk.language}-${name}`;
    return {
      status: slot('status'),
      revision: slot('revision'),
      date: slot('date'),
      over: markup(slot('over')),
      foot: { status: slot('css-status'), date: slot('css-date') },
    };
  }
  const status = talk.phrase(`sheet.status-${posting.status}`);
  const revision = talk.phrase('labels.revision', { revision: posting.revision });
  return { status, revision, date: posting.date, over: null, foot: { status, date: posting.date } };
}

/** What goes into the slots: texts as they are, and markup that this program made. */
export interface Filling {
  readonly status: string;
  readonly revision: string;
  readonly date: string;
  readonly over: string;
}

/** Whether a text is filled in later. */
export const slotted = (text: string): boolean => text.startsWith('platen-slot-');

const SLOT = /platen-slot-([a-z]{2,3})-(css-)?(status|revision|date|over)/g;

/** A stored page with its slots filled, each in the language of the card it stands on. */
export const filled = (page: string, filling: (language: string) => Filling): string =>
  page.replace(SLOT, (_, language: string, css: string | undefined, name: keyof Filling) => {
    const text = filling(language)[name];
    return name === 'over' ? text : css === undefined ? escaped(text) : cssText(inFoot(text));
  });

/** The foot has room for what it is, not for which orders: that stands at the head of page 1. */
const inFoot = (status: string): string => status.split(/:| · /)[0]!.trim();
