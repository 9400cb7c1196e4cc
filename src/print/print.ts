/**
 * The last phase: from cards as plain data to the published tree (HTML, SVG, JSON) and the sheets a printer makes PDFs of.
 *
 *     cards ─→ views ─→ templates ─→ a body each ─┬─→ pages of the tree, style and fonts linked
 *                                                └─→ sheets for PDF, printed into one shell that carries both
 *
 * Pure: files come in as text and bytes, and the same input gives the same bytes.
 */
import type { CardKey } from '../cards/card.ts';
import type { Finding } from '../findings/finding.ts';
import { carriedCss, drawingStyle, linkedCss } from './assets.ts';
import { cardsJson } from './card-data.ts';
import { cardView } from './card-view.ts';
import { referenceView } from './reference-view.ts';
import { drawOnPage } from './drawing/drawing.ts';
import { indexView, noValidCardView } from './index-view.ts';
import {
  hasErrors,
  type Paper,
  type PostedCard,
  type PrintAssets,
  type PrintInput,
  type PrintedModel,
} from './input.ts';
import { identifier, markup } from './markup.ts';
import { cardName, inRouteOrder, relative, sameKey } from './names.ts';
import { sheetView } from './sheet-view.ts';
import { drawingWords } from './speech.ts';
import { strayTemplates } from './templates.ts';
import { tongue } from './tongue.ts';
import type { Tongue } from './tongue.ts';

export interface PrintSheet {
  /** Path of the PDF in the published tree. */
  readonly name: string;
  readonly title: string;
  /** Goes into the shell's body. */
  readonly body: string;
  readonly paper: Paper;
}

export interface Pile {
  /** Path of the PDF in the published tree. */
  readonly name: string;
  readonly title: string;
  readonly language: string;
  /** Names of its sheets. */
  readonly of: readonly string[];
}

export interface PrintOutput {
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  /** The document the sheets are printed into. */
  readonly shell: string;
  readonly sheets: readonly PrintSheet[];
  /** PDFs of several sheets: all cards of a model, or of a station. */
  readonly piles: readonly Pile[];
  /** Mistakes in templates and words. */
  readonly findings: readonly Finding[];
}

interface Printing extends Tongue {
  readonly input: PrintInput;
  readonly assets: PrintAssets;
  readonly tongues: ReadonlyMap<string, Tongue>;
  readonly files: Map<string, string | Uint8Array>;
  readonly sheets: PrintSheet[];
  readonly piles: Pile[];
}

/** A card with its body, made once and used on every page and sheet it appears on. */
interface Made extends PostedCard {
  readonly model: PrintedModel;
  readonly name: string;
  readonly body: string;
}

export function printAll(input: PrintInput, assets: PrintAssets): PrintOutput {
  const findings = new Map<string, Finding>();
  const tell = (finding: Finding) => {
    const key = [finding.id, finding.place.file, finding.place.start, finding.what].join('\n');
    if (!findings.has(key)) findings.set(key, finding);
  };
  const tongues = new Map(
    [assets.words, ...assets.others].map((words) => [words.language, tongue(assets, words, tell)]),
  );
  const { talk, render, renderAt } = tongues.get(assets.words.language)!;
  strayTemplates(assets.templates, input.route).forEach(tell);
  const printing: Printing = {
    input,
    assets,
    talk,
    render,
    renderAt,
    tongues,
    files: new Map(),
    sheets: [],
    piles: [],
  };
  const made = input.models.flatMap((model) => (hasErrors(model) ? [] : makeCards(model, printing)));
  for (const model of input.models) {
    if (hasErrors(model)) noValidCard(model, printing);
    else
      modelPages(
        model,
        made.filter((each) => each.model === model),
        printing,
      );
  }
  for (const station of input.route)
    stationPages(
      station,
      made.filter(({ card }) => card.key.station === station),
      printing,
    );
  page('index.html', input.plantName, render('index', indexView(input, talk)), printing);
  page('checks.html', talk.phrase('reference.title'), render('reference', referenceView(input)), printing);
  put('cards.json', cardsJson(input), printing);
  put('assets/print.css', linkedCss(assets), printing);
  for (const font of assets.fonts) put(`assets/${font.file}`, font.bytes, printing);
  const shell = documentOf(printing, {
    title: input.plantName,
    style: `<style>${carriedCss(assets)}</style>`,
    body: '',
  });
  const { files, sheets, piles } = printing;
  return { files, shell, sheets, piles, findings: [...findings.values()] };
}

function makeCards(model: PrintedModel, printing: Printing): Made[] {
  const { input } = printing;
  return inRouteOrder(model.cards, input.route).map((posted) => {
    const { plantName, paper, pictures } = input;
    const { station } = posted.card.key;
    const body = inEach(station, printing, ({ talk, renderAt }) =>
      renderAt(station)('card', cardView({ ...posted, plantName, paper, pictures }, talk)),
    );
    return { ...posted, model, name: cardName(posted.card.key, model.cards), body };
  });
}

/** The languages of a station; the main one where there are words for none of them. */
function tonguesAt(station: string, { input, tongues, ...main }: Printing): readonly Tongue[] {
  const at = input.languagesAt(station).flatMap((language) => tongues.get(language) ?? []);
  return at.length > 0 ? at : [main];
}

/** One after the other in each language of the station, under one code: a card in two languages is two cards in one. */
const inEach = (station: string, printing: Printing, body: (tongue: Tongue) => string): string =>
  tonguesAt(station, printing).map(body).join('\n');

function modelPages(model: PrintedModel, made: readonly Made[], printing: Printing): void {
  const folder = `models/${model.id}`;
  const bodies = made.map((each) => each.body).join('\n');
  page(`${folder}/index.html`, model.title, bodies, printing);
  if (made.length > 0) pile(`${folder}/${model.id}.pdf`, model.title, made, printing);
  for (const each of made) {
    const title = `${model.title} · ${printing.talk.name(each.card.station.text)} · ${each.posting.code}`;
    page(`${folder}/${each.name}.html`, title, each.body, printing);
    sheet(`${folder}/${each.name}.pdf`, title, each.body, printing);
    for (const [i, { talk }] of tonguesAt(each.card.key.station, printing).entries()) {
      const tag = i === 0 ? '' : `.${talk.language}`;
      for (const drawing of each.card.drawings) {
        const uid = identifier(model.id, each.name, drawing.id);
        const words = (scale: number) => drawingWords(talk, talk.plain(drawing.caption), scale);
        const { svg } = drawOnPage(drawing, uid, words, drawingStyle(printing.assets));
        put(`${folder}/${each.name}-${drawing.id}${tag}.svg`, `${svg}\n`, printing);
      }
    }
  }
}

function noValidCard(model: PrintedModel, printing: Printing): void {
  const body = printing.render('no-valid-card', noValidCardView(model, printing.input));
  page(`models/${model.id}/index.html`, model.title, body, printing);
}

function stationPages(station: string, made: readonly Made[], printing: Printing): void {
  const { input } = printing;
  const folder = `stations/${station}`;
  const bodies = made.map((each) => each.body).join('\n');
  const title = printing.talk.name(made[0]?.card.station.text ?? station);
  if (made.length > 0) {
    page(`${folder}/index.html`, title, bodies, printing);
    pile(`${folder}/${station}.pdf`, title, made, printing);
  }
  const codeOf = (key: CardKey) => made.find(({ card }) => sameKey(card.key, key))?.posting.code;
  for (const posted of input.sheets.filter((each) => each.sheet.station.id === station)) {
    const body = inEach(station, printing, ({ talk, renderAt }) =>
      renderAt(station)(
        'station-sheet',
        sheetView({ ...posted, plantName: input.plantName, paper: input.paper, codeOf }, talk),
      ),
    );
    page(`${folder}/sheet.html`, title, body, printing);
    sheet(`${folder}/sheet.pdf`, title, body, printing);
  }
}

function page(path: string, title: string, body: string, printing: Printing): void {
  const style = `<link rel="stylesheet" href="${relative(path, 'assets/print.css')}">`;
  const home = path === 'index.html' || printing.input.alone ? null : relative(path, 'index.html');
  put(
    path,
    documentOf(printing, { title, style: `${style}<style>@page{size:${printing.input.paper}}</style>`, body, home }),
    printing,
  );
}

function documentOf(
  { render, talk, input }: Printing,
  { title, style, body, home = null }: { title: string; style: string; body: string; home?: string | null },
): string {
  const view = {
    language: talk.language,
    title,
    plant: input.plantName,
    style: markup(style),
    home,
    body: markup(body),
  };
  return render('document', view);
}

function sheet(name: string, title: string, body: string, { sheets, input }: Printing): void {
  sheets.push({ name, title, body, paper: input.paper });
}

/** Each card keeps its own page numbers. */
function pile(name: string, title: string, made: readonly Made[], { piles, talk }: Printing): void {
  piles.push({
    name,
    title,
    language: talk.language,
    of: made.map((each) => `models/${each.model.id}/${each.name}.pdf`),
  });
}

/** Two files of one name would lose a card without a word: a bug of ours. */
function put(path: string, content: string | Uint8Array, { files }: Printing): void {
  if (files.has(path)) throw new Error(`two files would be written as ${path}`);
  files.set(path, content);
}
