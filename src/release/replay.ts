/** Stored cards posted again: the pages as they were released, with what is said of them today in their slots. Pure. */
import type { Filling } from '../print/overlay.ts';
import { filled } from '../print/overlay.ts';
import { escaped } from '../print/markup.ts';
import type { DeviationAct, HoldAct, Start } from './entries.ts';
import { answerTo } from './answer.ts';
import type { ReleasedCard } from './record.ts';
import type { State } from './state.ts';
import type { Known } from './wall.ts';
import { deviationsOf, heldOf, sinceOf } from './wall.ts';

export interface Replayed {
  /** Pages and drawings by path. */
  readonly pages: ReadonlyMap<string, string>;
  /** What paper is printed from. */
  readonly sheets: readonly {
    readonly name: string;
    readonly title: string;
    readonly body: string;
    readonly paper: string;
  }[];
}

/** Cards of one release on a day: all of them, or those asked for. */
export function replay(
  of: Known,
  on: string,
  { known, state }: { readonly known: readonly Known[]; readonly state: State },
  wanted: (card: ReleasedCard) => boolean = () => true,
): Replayed {
  const cards = of.record.cards.filter(wanted);
  const pages = new Map<string, string>();
  const sheets: Replayed['sheets'][number][] = [];
  for (const card of cards) {
    const filling = (language: string) => fillingOf(card, of, on, { known, state }, language);
    for (const path of card.files) pages.set(path, filled(of.record.pages[path]!, filling));
    for (const sheet of of.record.sheets)
      if (sheet.page === card.files[0]) {
        const body = of.record.pages[sheet.page]!.slice(sheet.from, sheet.to);
        sheets.push({ name: sheet.name, title: sheet.title, paper: sheet.paper, body: filled(body, filling) });
      }
  }
  return { pages, sheets };
}

/** What is said of a card on a day, in the words of the day it was released. */
export function fillingOf(
  card: ReleasedCard,
  of: Known,
  on: string,
  { known, state }: { readonly known: readonly Known[]; readonly state: State },
  language = of.record.language,
): Filling {
  const words = of.record.words[language] ?? {};
  const text = (id: string, places: Readonly<Record<string, string>>) =>
    (words[id] ?? `[${id}]`).replace(/\{([a-z-]+)\}/g, (_, name: string) => places[name] ?? `[${name}]`);
  const start = (at: Start) =>
    'date' in at ? text('start-date', { date: at.date }) : text('start-order', { order: String(at.order) });
  const holds = heldOf(card, of.record, state);
  const deviations = deviationsOf(card, of.record, state);
  const over = [
    ...holds.map((hold) => holdText(hold, text)),
    ...deviations.map((one) => deviationText(one, card, text)),
  ];
  return {
    status: statusText(card, known, state, on, { text, start }),
    revision: text('since', { revision: sinceOf(of, card, known) }),
    date: on,
    over: over.join(''),
  };
}

type Text = (id: string, places: Readonly<Record<string, string>>) => string;

function statusText(
  card: ReleasedCard,
  known: readonly Known[],
  state: State,
  on: string,
  { text, start }: { readonly text: Text; readonly start: (at: Start) => string },
): string {
  const answer = answerTo(card.code, known, state, []);
  if (answer.is === 'held') return text('held', { date: on });
  if (answer.is === 'run-out')
    return text('run-out', { until: answer.hanging.until!, before: start(answer.hanging.range.to!) });
  if (answer.is === 'current') {
    const { from, to } = answer.hanging.range;
    const range = [
      ...(from ? [text('range-from', { start: start(from) })] : []),
      ...(to ? [text('range-to', { start: start(to) })] : []),
    ];
    return text('current', { date: on, range: range.map((one) => ` · ${one}`).join('') });
  }
  if (answer.is === 'coming') return text('coming', { start: start(answer.from) });
  if (answer.is === 'withdrawn') return text('withdrawn', { reason: answer.reason });
  if (answer.is === 'superseded') return text('superseded', { by: answer.by });
  return text('unknown', {});
}

const holdText = ({ held, lot, reason, name, on }: HoldAct, text: Text): string =>
  `<p><b>${escaped(text('hold', { held: lot === undefined ? held : `${held} ${lot}`, reason, name, date: on }))}</b></p>`;

/** Both values in bold; where it holds for so many bodies, a box to tick for each. */
function deviationText(
  { fact, was, now, until, count, reason, name }: DeviationAct,
  card: ReleasedCard,
  text: Text,
): string {
  const what = card.limits.find((one) => one.fact === fact)!.what;
  const bold = (value: string) => `<b>${escaped(value)}</b>`;
  const [before = '', between = '', after = ''] = text('deviation', {
    until,
    what,
    was: '\u0001',
    now: '\u0001',
    reason,
    name,
  }).split('\u0001');
  const boxes =
    count === undefined
      ? ''
      : ` ${escaped(text('deviation-count', { count: String(count) }))} ${'<span class="tick"></span>'.repeat(count)}`;
  return `<p>${escaped(before)}${bold(was)}${escaped(between)}${bold(now)}${escaped(after)}${boxes}</p>`;
}
