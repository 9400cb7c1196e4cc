/** What stands on every page of a card, whichever page is lifted from the pile: a named page of CSS with its own head and foot. */
import type { Paper } from './input.ts';
import { cssString } from './markup.ts';
import type { Speech } from './speech.ts';

/** Letter is 215.9 mm wide: these margins leave the 190 mm that A4 leaves between its own. */
const COMMON_WIDTH = 'margin-left:12.95mm;margin-right:12.95mm;';

export interface PageFoot {
  readonly model: string;
  readonly station: string;
  readonly code: string;
  /** In the middle of the foot. */
  readonly status: string;
  readonly date: string;
  readonly paper: Paper;
}

export function pageRule(
  page: string,
  { model, station, code, status, date, paper }: PageFoot,
  talk: Speech,
  turned = false,
): string {
  const left = [model, station, code].filter((part) => part !== '').join(' · ');
  const [before = '', between = '', after = ''] = talk
    .phrase('sheet.page', { page: '\u0001', pages: '\u0001' })
    .split('\u0001');
  const count = `${cssString(`${date} · `)} ${cssString(before)} counter(page) ${cssString(between)} counter(pages) ${cssString(after)}`;
  return (
    `@page ${page}{size:${paper}${turned ? ' landscape' : ''};${paper === 'Letter' && !turned ? COMMON_WIDTH : ''}` +
    `@top-left{content:${cssString(`${talk.phrase('sheet.first-piece')} ${talk.phrase('sheet.in-doubt')}`)}}` +
    `@bottom-left{content:${cssString(left)}}` +
    `@bottom-center{content:${cssString(status)}}` +
    `@bottom-right{content:${count}}}`
  );
}
