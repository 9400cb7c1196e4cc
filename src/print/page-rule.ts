/** What stands on every page of a card, whichever page is lifted from the pile: a named page of CSS with its own foot. */
import type { Posting } from '../cards/card.ts';
import type { Paper } from './input.ts';
import { cssString } from './markup.ts';
import type { Speech } from './speech.ts';

export interface PageFoot {
  readonly model: string;
  readonly station: string;
  readonly posting: Posting;
  readonly paper: Paper;
}

export function pageRule(
  page: string,
  { model, station, posting, paper }: PageFoot,
  talk: Speech,
  turned = false,
): string {
  const left = [model, station, posting.code].filter((part) => part !== '').join(' · ');
  const [before = '', between = '', after = ''] = talk
    .phrase('sheet.page', { page: '\u0001', pages: '\u0001' })
    .split('\u0001');
  const count = `${cssString(`${posting.date} · `)} ${cssString(before)} counter(page) ${cssString(between)} counter(pages) ${cssString(after)}`;
  return (
    `@page ${page}{size:${paper}${turned ? ' landscape' : ''};` +
    `@bottom-left{content:${cssString(left)}}` +
    `@bottom-center{content:${cssString(talk.phrase(`sheet.status-${posting.status}`))}}` +
    `@bottom-right{content:${count}}}`
  );
}
