/** What stands on every page of a card, whichever page is lifted from the pile: a named page of CSS with its own head and foot. */
import type { Paper } from './input.ts';
import { cssString } from './markup.ts';
import { slotted } from './overlay.ts';
import type { Speech } from './speech.ts';

/** Letter is 215.9 mm wide: these margins leave the 190 mm that A4 leaves between its own. */
const COMMON_WIDTH = 'margin-left:12.95mm;margin-right:12.95mm;';

export interface PageFoot {
  readonly model: string;
  readonly station: string;
  readonly code: string;
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
  const [before = '', between = '', after = ''] = talk
    .phrase('sheet.page', { page: '\u0001', pages: '\u0001' })
    .split('\u0001');
  const count = `${cssString(`${status} · ${date} · `)} ${cssString(before)} counter(page) ${cssString(between)} counter(pages) ${cssString(after)}`;
  const said = [
    slotted(status) ? STATUS_ROOM : status.length,
    date.length,
    before.length,
    between.length,
    after.length,
  ];
  const left = footName([code, model, station], FOOT_ROOM - said.reduce((sum, length) => sum + length));
  return (
    `@page ${page}{size:${paper}${turned ? ' landscape' : ''};${paper === 'Letter' && !turned ? COMMON_WIDTH : ''}` +
    `@top-left{content:${cssString(`${talk.phrase('sheet.first-piece')} ${talk.phrase('sheet.in-doubt')}`)}}` +
    `@bottom-left{content:${cssString(left)}}` +
    `@bottom-right{content:${count}}}`
  );
}

/** Characters that the foot has room for at all, page numbers and dots taken off: it never takes a second line. */
const FOOT_ROOM = 94;
/** What a status takes of a release, filled in when it is posted: RUN-OUT until 2026-12-20. */
const STATUS_ROOM = 26;
const LEAST_NAME = 12;

/** What page it is of: the code whole, whatever names there are; each of these has its whole length at the head of page 1. */
function footName(parts: readonly string[], all: number): string {
  const [first = '', ...names] = parts.filter((part) => part !== '');
  let room = all - first.length;
  return [
    first,
    ...names.map((name, i) => {
      const later = names.length - 1 - i;
      const cut = shortened(name, Math.max(LEAST_NAME, room - 3 - later * (LEAST_NAME + 3)));
      room -= cut.length + 3;
      return cut;
    }),
  ].join(' · ');
}

const shortened = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 1).trimEnd()}…`;
