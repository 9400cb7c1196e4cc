/** The change notice: what is put up beside the stations before a run, and signed there. */
import type { Arg, Drawing, Line } from '../cards/card.ts';
import { sizeText } from './change-marks.ts';
import { drawOnPage } from './drawing/drawing.ts';
import { printForms, type Form, type FormsOf } from './forms.ts';
import type { PrintAssets } from './input.ts';
import { identifier, markup } from './markup.ts';
import { pageRule } from './page-rule.ts';
import type { PrintOutput } from './print.ts';
import { drawingWords, type Speech } from './speech.ts';

/** One thing that is not what it was, in words. */
export interface ChangeTold {
  readonly tag: 'card' | 'check' | 'record';
  readonly line: Line;
  readonly also: readonly Line[];
  readonly because: readonly string[];
}

export interface GivenTold extends ChangeTold {
  readonly id: string;
  readonly old?: string;
  readonly new?: string;
  /** Where the lines stand, where that is known. */
  readonly oldAt?: string;
  readonly newAt?: string;
}

export interface CardTold {
  readonly title: string;
  /** Those it holds for; none of a model that is made in one. */
  readonly hands: readonly ('right' | 'left')[];
  /** What comes down and what goes up: a pair for each hand. */
  readonly codes: readonly { readonly old?: string; readonly new?: string }[];
  readonly changes: readonly ChangeTold[];
  readonly overlays: readonly Drawing[];
}

/** A notice as it is printed and shown. */
export interface NoticeTold {
  readonly old: string;
  readonly new: string;
  readonly models: readonly {
    readonly title: string;
    readonly is: string;
    readonly old?: string;
    readonly new?: string;
  }[];
  readonly given: readonly { readonly of: string | undefined; readonly changes: readonly GivenTold[] }[];
  readonly stations: readonly {
    readonly name: string;
    readonly cards: readonly CardTold[];
    readonly untouched: readonly string[];
  }[];
  readonly untouched: readonly string[];
  readonly elsewhere: number;
  readonly underWay: readonly {
    readonly title: string;
    readonly hands: readonly ('right' | 'left')[];
    readonly before: string;
    readonly rows: readonly { readonly past: Arg; readonly lines: readonly Line[] }[];
  }[];
}

export function printChangeNotice(notice: NoticeTold, name: string, of: FormsOf, assets: PrintAssets): PrintOutput {
  const form: Form = {
    name,
    made: (talk, render) => ({
      title: `${talk.phrase('change-notice.title')} · ${notice.old} · ${notice.new}`,
      body: render('change-notice', noticeView(notice, of, talk)),
    }),
  };
  return printForms([form], { ...of, carried: true }, assets);
}

function noticeView(notice: NoticeTold, { plantName, ...foot }: FormsOf, talk: Speech) {
  const page = identifier('change-notice', talk.language);
  const title = talk.phrase('change-notice.title');
  const { old, new: now, stations, untouched, elsewhere } = notice;
  const rule = { model: `${old} · ${now}`, station: '', code: title, status: plantName, ...foot };
  return {
    page,
    pageRule: markup(`<style>${pageRule(page, rule, talk)}</style>`),
    plant: plantName,
    date: foot.date,
    against: talk.phrase('change-notice.against', { old, new: now }),
    models: notice.models.map(({ title: model, is, old: was, new: to }) => ({
      model,
      revisions:
        was !== undefined && to !== undefined && was !== to
          ? talk.phrase('change-notice.revisions', { model, old: was, new: to })
          : null,
      said: is === 'new' || is === 'gone' ? talk.phrase(`change-notice.${is}-model`) : null,
    })),
    given: notice.given.map(({ of: whose, changes }) => ({
      whose: whose ?? talk.phrase('change-notice.plant'),
      changes: changes.map((change) => givenView(change, talk)),
    })),
    stations: stations.map(({ name, cards, untouched: keep }) => ({
      name: talk.name(name),
      cards: cards.map((card) => cardView(card, talk)),
      keep:
        keep.length > 0
          ? talk.phrase('change-notice.untouched-here', { models: keep.join(talk.separator([]) + ' ') })
          : null,
    })),
    untouched:
      untouched.length > 0
        ? talk.phrase('change-notice.untouched-stations', {
            stations: untouched.map((one) => talk.name(one)).join(', '),
          })
        : null,
    elsewhere: elsewhere > 0 ? talk.phrase('change-notice.elsewhere', { count: String(elsewhere) }) : null,
    none:
      stations.length === 0
        ? talk.phrase(notice.given.length > 0 ? 'change-notice.record-only' : 'change-notice.nothing')
        : null,
    underWay: notice.underWay.map(({ before, rows, ...whose }) => ({
      whose: whoseText(whose, talk),
      before: talk.phrase('change-notice.before', { station: talk.name(before) }),
      rows: rows.map(({ past, lines }) => ({
        past: talk.phrase('change-notice.past', { station: talk.plain(past) }),
        lines: lines.map((line) => talk.html(line)),
      })),
    })),
    drawings: drawingViews(stations, page, talk),
    acknowledge: stations.flatMap(({ name, cards }) =>
      cards.flatMap(({ title: model, hands, codes }) =>
        codes.map((code, i) => ({
          station: talk.name(name),
          whose: whoseText({ title: model, hands: hands.slice(i, i + 1) }, talk),
          old: code.old ?? null,
          now: code.new ?? null,
        })),
      ),
    ),
  };
}

export const whoseText = ({ title, hands }: Pick<CardTold, 'title' | 'hands'>, talk: Speech): string =>
  [title, ...hands.map((hand) => talk.phrase(`hand.${hand}`))].join(', ');

function givenView({ id, old, new: now, oldAt, newAt, also, tag }: GivenTold, talk: Speech) {
  return {
    id,
    at: [...new Set([oldAt, newAt].flatMap((one) => one ?? []))].join(' · '),
    old: old === undefined ? null : talk.decimal(old),
    now: now === undefined ? null : talk.decimal(now),
    size: sizeText(also, talk),
    where: talk.phrase(`change-notice.tag-${tag}`),
  };
}

function cardView(card: CardTold, talk: Speech) {
  return {
    whose: whoseText(card, talk),
    codes: card.codes.map((codes) => codesText(codes, talk)),
    changes: card.changes.map(({ line, also, because }) => ({
      line: talk.html(line),
      also: sizeText(also, talk),
      because: because.length > 0 ? talk.phrase('change-notice.because', { given: becauseText(because) }) : null,
    })),
  };
}

/** One that several stations have is drawn once. */
function drawingViews(stations: NoticeTold['stations'], page: string, talk: Speech) {
  const drawn = new Map<string, { readonly drawing: Drawing; readonly at: string[] }>();
  for (const { name, cards } of stations)
    for (const drawing of cards.flatMap(({ overlays }) => overlays)) {
      const key = JSON.stringify([drawing.marks, drawing.scale]);
      const at = talk.name(name);
      const met = drawn.get(key);
      if (!met) drawn.set(key, { drawing, at: [at] });
      else if (!met.at.includes(at)) met.at.push(at);
    }
  return [...drawn.values()].map(({ drawing, at }, i) => {
    const words = (scale: number) => drawingWords(talk, talk.plain(drawing.caption), scale);
    const { svg } = drawOnPage(drawing, identifier(page, String(i), drawing.id), words);
    return { at: at.join(', '), caption: talk.html(drawing.caption), svg: markup(svg) };
  });
}

const MOST = 4;

/** Lines that are many are counted: the list of what was given has them all. */
export const becauseText = (because: readonly string[]): string =>
  because.length > MOST ? `${because.slice(0, MOST).join(', ')} +${because.length - MOST}` : because.join(', ');

export function codesText({ old, new: now }: CardTold['codes'][number], talk: Speech): string {
  if (old !== undefined && now !== undefined) return talk.phrase('change-notice.pull-post', { old, new: now });
  return now === undefined
    ? talk.phrase('change-notice.pull', { old: old! })
    : talk.phrase('change-notice.post', { new: now });
}
