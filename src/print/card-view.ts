/**
 * A card as its templates see it: every text resolved, every name always there (null where a card has nothing), so that a
 * template that asks for something else asks in vain.
 */
import type { Card, Caution, Check, Drawing, Line, Table } from '../cards/card.ts';
import { changeMarks } from './change-marks.ts';
import type { Mark } from './change-marks.ts';
import { drawOnPage } from './drawing/drawing.ts';
import type { Paper, PostedCard, PrintInput } from './input.ts';
import { keyNumberView } from './key-number-view.ts';
import { identifier, markup, type Markup } from './markup.ts';
import { overlayOf } from './overlay.ts';
import { pageRule } from './page-rule.ts';
import { pictureView } from './picture-view.ts';
import { qrMarkup } from './qr.ts';
import { signMarkup } from './signs.ts';
import { drawingWords, type Speech } from './speech.ts';

export interface CardViewInput extends PostedCard {
  readonly pictures: PrintInput['pictures'];
  readonly plantName: string;
  readonly paper: Paper;
}

export function cardView({ card, posting, plantName, paper, pictures }: CardViewInput, talk: Speech) {
  const page = identifier('card', talk.language, ...keyParts(card));
  const drawings = card.drawings.map((drawing) => drawingView(drawing, page, talk));
  const model = card.model.text;
  const station = talk.name(card.station.text);
  const overlay = overlayOf(posting, talk);
  const often = oftenAll(card, talk);
  const { changed, mark } = changeMarks(posting.changes, talk);
  const marked = (section: string, lines: readonly Line[]) =>
    lines.map((line, i) => mark(`${section}/${i}`, talk.html(line)));
  const tables = card.tables.map((table, i) => tableView(table, `tables/${i}`, talk, mark));
  return {
    page,
    pageRule: markup(
      `<style>${pageRule(page, { model, station, code: posting.code, ...overlay.foot, paper }, talk)}</style>`,
    ),
    language: talk.language,
    unreviewed: talk.unreviewed,
    plant: plantName,
    model,
    modelId: card.key.model,
    station,
    stationId: card.key.station,
    revision: overlay.revision,
    date: overlay.date,
    over: overlay.over,
    changed,
    code: posting.code,
    status: overlay.status,
    qr: qrMarkup(posting.code),
    hand: card.handLine ? talk.html(card.handLine) : null,
    leftHand: card.key.hand === 'left',
    finishes: card.finishNames.map((name) => talk.name(name.text)).join(' · '),
    decides: talk.name(card.decides.text),
    keyNumbers: card.keyNumbers.map((number, i) => {
      const view = keyNumberView(number, talk);
      return { ...view, label: mark(`keyNumbers/${i}`, view.label) };
    }),
    steps: marked('steps', card.steps),
    pictures: (card.pictures ?? []).map((picture) => pictureView(picture, pictures, talk)),
    drawings: drawings.map((view) => ({ ...view, caption: mark(`drawings/${view.id}`, view.caption) })),
    tools: card.tools.map(({ role, name }, i) => ({
      role: mark(`tools/${i}`, talk.html(role)),
      name: talk.html(name),
    })),
    // What holds for all checks is said once, above them.
    oftenAll: often,
    checks: card.checks.map((check, i) => {
      const view = checkView(check, talk, often !== null);
      return { ...view, what: mark(`checks/${i}`, view.what) };
    }),
    accepts: card.accepts ? talk.html(card.accepts) : null,
    whenOut: marked('whenOut', card.whenOut),
    cautions: SIGNALS.flatMap((signal) => cautionView(signal, card, talk, mark)),
    notices: cautionView('notice', card, talk, mark),
    firstTables: tables.filter(({ first }) => first),
    tables: tables.filter(({ first }) => !first),
    notes: card.notes.map((note, i) => mark(`notes/${i}`, talk.html(note))),
    permits: marked('permits', card.permits),
    signOff: marked('signOff', card.signOff),
  };
}

function keyParts({ key }: Card): string[] {
  return [key.model, key.station, key.hand, ...key.finishes];
}

const SIGNALS = ['danger', 'warning', 'caution'] as const;

/** All cautions of one signal word in one panel; none where there are none. */
function cautionView(signal: Caution['signal'], card: Card, talk: Speech, mark: Mark) {
  const lines = card.cautions.flatMap((caution, i) =>
    caution.signal === signal ? [mark(`cautions/${i}`, talk.html(caution.line))] : [],
  );
  return lines.length > 0
    ? [{ signal, word: talk.phrase(`signals.${signal}`), sign: signMarkup(signal), lines, unreviewed: talk.unreviewed }]
    : [];
}

/** A table of one long row is read down, a name beside each number, two of them side by side. */
const MOST_COLUMNS = 6;

function tableView({ title, columns, rows, place }: Table, at: string, talk: Speech, mark: Mark) {
  const heads = columns.map((column) => talk.html(column));
  const cells = rows.map((row, i) =>
    row.map((cell, column) => (column === 0 ? mark(`${at}/${i}`, talk.html(cell)) : talk.html(cell))),
  );
  const turned = rows.length === 1 && columns.length > MOST_COLUMNS && place !== 'form';
  return {
    first: place === 'first',
    form: place === 'form',
    title: talk.html(title),
    columns: heads,
    rows: cells,
    pairs: turned ? inPairs(heads.map((head, i) => ({ head, cell: cells[0]![i]! }))) : null,
  };
}

const inPairs = <T>(items: readonly T[]): readonly (readonly T[])[] =>
  items.flatMap((_, i) => (i % 2 === 0 ? [items.slice(i, i + 2)] : []));

function oftenAll({ checks }: Card, talk: Speech): Markup | null {
  const said = new Set(checks.map(({ often }) => talk.plain(often)));
  return said.size === 1 && checks.length > 1 ? talk.html(checks[0]!.often) : null;
}

function checkView(check: Check, talk: Speech, alike: boolean) {
  return {
    what: talk.html(check.what),
    limits: check.limits ? talk.number(check.limits) : null,
    gauge: talk.html(check.gauge),
    often: alike ? null : talk.html(check.often),
    boxes: check.boxes.map((box) => box.text),
  };
}

interface DrawingView {
  readonly id: string;
  readonly caption: Markup;
  readonly svg: Markup;
}

function drawingView(drawing: Drawing, page: string, talk: Speech): DrawingView {
  const caption = talk.plain(drawing.caption);
  const { svg } = drawOnPage(drawing, `${page}-${drawing.id}`, (scale) => drawingWords(talk, caption, scale));
  return { id: drawing.id, caption: talk.html(drawing.caption), svg: markup(svg) };
}
