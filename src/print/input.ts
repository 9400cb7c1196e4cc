/** What printing is given: cards as plain data with what is laid over them, and the files a user may edit. */
import type { Card, Posting, StationSheet } from '../cards/card.ts';
import type { Kind } from '../findings/finding.ts';
import type { Words } from './words.ts';

export type Paper = 'A4' | 'Letter';

/** A finding as it is shown: the place in figures, the lines around it as text. */
export interface RenderedFinding {
  readonly id: string;
  readonly severity: 'error' | 'caution';
  /** `file:line:col`. */
  readonly where: string;
  readonly excerpt: string;
  readonly what: string;
  readonly why: string;
  readonly mend: string;
  readonly notes: readonly { readonly where: string; readonly text: string }[];
}

export interface PostedCard {
  readonly card: Card;
  readonly posting: Posting;
}

export interface PrintedModel {
  readonly id: string;
  readonly title: string;
  readonly revision: string;
  /** Empty, or left aside, where a finding is an error. */
  readonly cards: readonly PostedCard[];
  readonly findings: readonly RenderedFinding[];
}

/** A picture that cards show. */
export interface PrintPicture {
  readonly bytes: Uint8Array;
  /** Media type. */
  readonly type: string;
  /** Its sides, in any one unit. */
  readonly width: number;
  readonly height: number;
}

export interface PrintInput {
  readonly models: readonly PrintedModel[];
  readonly sheets: readonly { readonly sheet: StationSheet; readonly posting: Posting }[];
  readonly plantName: string;
  readonly paper: Paper;
  /** Languages of the cards of a station, the main one first. */
  readonly languagesAt: (station: string) => readonly string[];
  /** YYYY-MM-DD the print is made for. */
  readonly date: string;
  /** Pages stand by themselves: no landing page to lead back to. */
  readonly alone?: true;
  /** Ids of the stations in the order of the route. */
  readonly route: readonly string[];
  /** By the SHA-256 that cards name them by. */
  readonly pictures: ReadonlyMap<string, PrintPicture>;
  /** What can be found, for the reference page. */
  readonly kinds: readonly Kind[];
  /** Findings that belong to no model. */
  readonly findings: readonly RenderedFinding[];
}

export interface PrintFont {
  readonly family: string;
  readonly weight: number;
  /** File name it gets under assets/. */
  readonly file: string;
  /** WOFF2. */
  readonly bytes: Uint8Array;
}

export interface PrintAssets {
  /** Text by path below the templates folder: `card.hbs`, `blocks/steps.hbs`. */
  readonly templates: ReadonlyMap<string, string>;
  /** Of the main language. */
  readonly words: Words;
  /** Of the other languages in use. */
  readonly others: readonly Words[];
  /** print.css, without the fonts' rules. */
  readonly css: string;
  readonly fonts: readonly PrintFont[];
}

export function hasErrors(model: PrintedModel): boolean {
  return model.findings.some((finding) => finding.severity === 'error');
}
