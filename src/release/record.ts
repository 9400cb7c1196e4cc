/** A frozen release: everything that is needed to post it again, whatever becomes of the plant, the templates and this program. */
import type { Card, CardChanges, CardKey } from '../cards/card.ts';
import type { FactState } from '../facts/state.ts';

export interface ReleasedCard {
  readonly key: CardKey;
  readonly code: string;
  readonly station: string;
  /** Paths of its page and its drawings in the tree, the page first. */
  readonly files: readonly string[];
  /** As plain data, numbers as text: a record of this format holds cards of this shape. */
  readonly card: Card;
  /** Ids of all facts that were looked at to make it. */
  readonly reads: readonly string[];
  /** Rows of the plant that went into it, `cutters.mill-8`. */
  readonly rows: readonly string[];
  /** Those of them that it names: what is asked for at the station itself. */
  readonly names: readonly string[];
  /** Against the release in which it was another card, or was not there; absent of a first release. */
  readonly changes?: CardChanges;
  /** Limits on it: what they are of in words, and as they stand there. */
  readonly limits: readonly { readonly fact: string; readonly what: string; readonly text: string }[];
}

export interface ReleasedSheet {
  /** Path of the PDF. */
  readonly name: string;
  readonly title: string;
  readonly paper: string;
  readonly page: string;
  /** Offsets in the text of that page. */
  readonly from: number;
  readonly to: number;
}

export interface Release {
  readonly format: 1;
  readonly model: string;
  readonly title: string;
  readonly revision: string;
  /** The spec with all it is based on merged in, as JSON in its own order; every length with its unit. */
  readonly spec: string;
  /** Rows of the plant that went into its cards: each line of them as written. */
  readonly plant: Readonly<Record<string, string>>;
  readonly cards: readonly ReleasedCard[];
  /** By hand. */
  readonly facts: Readonly<Record<string, readonly FactState[]>>;
  /** Pages and drawings by path; what is laid over them stands as slots. */
  readonly pages: Readonly<Record<string, string>>;
  /** What paper is printed from: a stretch of a page, and the paper. */
  readonly sheets: readonly ReleasedSheet[];
  /** Style, fonts and the shell of PDFs: path to SHA-256 of a file below `released/assets/`. */
  readonly assets: Readonly<Record<string, string>>;
  /** The main one of its cards. */
  readonly language: string;
  /** What a status is called, by language, in the words of the day it was released. */
  readonly words: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

/** Keys in one order at every depth: the same release is the same text. */
export function recordText(release: Release): string {
  return `${JSON.stringify(ordered(release))}\n`;
}

function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, field]) => [key, ordered(field)]));
}
