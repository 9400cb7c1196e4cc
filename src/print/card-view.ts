/**
 * A card as its templates see it: every text resolved, every name always there (null where a card has nothing), so that a
 * template that asks for something else asks in vain.
 */
import type { Card, Caution, Check, Drawing, Table } from '../cards/card.ts';
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
    code: posting.code,
    status: overlay.status,
    qr: qrMarkup(posting.code),
    hand: card.handLine ? talk.html(card.handLine) : null,
    leftHand: card.key.hand === 'left',
    finishes: card.finishNames.map((name) => talk.name(name.text)).join(' · '),
    decides: talk.name(card.decides.text),
    keyNumbers: card.keyNumbers.map((number) => keyNumberView(number, talk)),
    steps: card.steps.map((step) => talk.html(step)),
    pictures: (card.pictures ?? []).map((picture) => pictureView(picture, pictures, talk)),
    drawings,
    tools: card.tools.map(({ role, name }) => ({ role: talk.html(role), name: talk.html(name) })),
    // What holds for all checks is said once, above them.
    oftenAll: often,
    checks: card.checks.map((check) => checkView(check, talk, often !== null)),
    accepts: card.accepts ? talk.html(card.accepts) : null,
    whenOut: card.whenOut.map((line) => talk.html(line)),
    cautions: SIGNALS.flatMap((signal) => cautionView(signal, card, talk)),
    notices: cautionView('notice', card, talk),
    firstTables: card.tables.filter(({ place }) => place === 'first').map((table) => tableView(table, talk)),
    tables: card.tables.filter(({ place }) => place !== 'first').map((table) => tableView(table, talk)),
    notes: card.notes.map((note) => talk.name(note.text)),
    permits: card.permits.map((line) => talk.html(line)),
    signOff: card.signOff.map((line) => talk.html(line)),
  };
}

function keyParts({ key }: Card): string[] {
  return [key.model, key.station, key.hand, ...key.finishes];
}

const SIGNALS = ['danger', 'warning', 'caution'] as const;

/** All cautions of one signal word in one panel; none where there are none. */
function cautionView(signal: Caution['signal'], card: Card, talk: Speech) {
  const lines = card.cautions.filter((caution) => caution.signal === signal).map(({ line }) => talk.html(line));
  return lines.length > 0
    ? [{ signal, word: talk.phrase(`signals.${signal}`), sign: signMarkup(signal), lines, unreviewed: talk.unreviewed }]
    : [];
}

/** A table of one long row is read down, a name beside each number, two of them side by side. */
const MOST_COLUMNS = 6;

function tableView({ title, columns, rows, place }: Table, talk: Speech) {
  const heads = columns.map((column) => talk.html(column));
  const cells = rows.map((row) => row.map((cell) => talk.html(cell)));
  const turned = rows.length === 1 && columns.length > MOST_COLUMNS && place !== 'form';
  return {
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
