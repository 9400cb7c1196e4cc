/** What stands on every page of a card, whichever page is lifted from the pile: a named page of CSS with its own head and foot. */
import type { Posting } from '../cards/card.ts';
import type { Paper } from './input.ts';
import { cssString } from './markup.ts';
import type { Speech } from './speech.ts';

/** Letter is 215.9 mm wide: these margins leave the 190 mm that A4 leaves between its own. */
const COMMON_WIDTH = 'margin-left:12.95mm;margin-right:12.95mm;';

export interface PageFoot {
  readonly model: string;
  readonly station: string;
  readonly posting: Posting;
  readonly paper: Paper;
  /** In the middle of the foot; where nothing is said, the status of the posting. */
  readonly middle?: string;
}

export function pageRule(
  page: string,
  { model, station, posting, paper, middle }: PageFoot,
  talk: Speech,
  turned = false,
): string {
  const left = [model, station, posting.code].filter((part) => part !== '').join(' · ');
  const [before = '', between = '', after = ''] = talk
    .phrase('sheet.page', { page: '\u0001', pages: '\u0001' })
    .split('\u0001');
  const count = `${cssString(`${posting.date} · `)} ${cssString(before)} counter(page) ${cssString(between)} counter(pages) ${cssString(after)}`;
  return (
    `@page ${page}{size:${paper}${turned ? ' landscape' : ''};${paper === 'Letter' && !turned ? COMMON_WIDTH : ''}` +
    `@top-left{content:${cssString(`${talk.phrase('sheet.first-piece')} ${talk.phrase('sheet.in-doubt')}`)}}` +
    `@bottom-left{content:${cssString(left)}}` +
    `@bottom-center{content:${cssString(middle ?? talk.phrase(`sheet.status-${posting.status}`))}}` +
    `@bottom-right{content:${count}}}`
  );
}
