/** Templates at full size: a picture of true size for each face, and the same in tiles that the plant's printer takes. */
import type { FullSize } from '../cards/card.ts';
import type { Finding } from '../findings/finding.ts';
import { carriedCss, drawingStyle, linkedCss } from './assets.ts';
import { gridOver, type Grid, type Tile } from './full-size/grid.ts';
import { keyMap } from './full-size/key-map.ts';
import { legendSvg } from './full-size/legend.ts';
import { linesOf, namesOf, type Picture } from './full-size/picture.ts';
import { BAR_MM, groundOf, shownOn, tilePage, type Sheet } from './full-size/tile-page.ts';
import { wholeSvg } from './full-size/whole.ts';
import type { Paper, PrintAssets } from './input.ts';
import { identifier, markup } from './markup.ts';
import { relative } from './names.ts';
import type { PrintOutput, PrintSheet } from './print.ts';
import { speech, type Speech } from './speech.ts';
import { templateSet } from './templates.ts';

/** No printer prints up to the edge; A4 comes out of a browser up to a pixel narrower than it is. */
const MARGIN_MM = 7;
const SHEETS: Readonly<Record<Paper, Sheet>> = {
  A4: { widthPx: 738, heightPx: 1064 },
  Letter: { widthPx: 762, heightPx: 1000 },
};
/** The head of every page. */
const HEAD_PX = 52;

const drawingOn = (paper: Paper): Sheet => ({ ...SHEETS[paper], heightPx: SHEETS[paper].heightPx - HEAD_PX });

export interface FullSizeInput {
  readonly templates: readonly { readonly template: FullSize; readonly revision: string }[];
  readonly plantName: string;
  readonly paper: Paper;
  /** YYYY-MM-DD the print is made for. */
  readonly date: string;
}

/** A picture, a page and a PDF for each face of each hand. */
export function printFullSize(input: FullSizeInput, assets: PrintAssets): PrintOutput {
  const findings = new Map<string, Finding>();
  const tell = (finding: Finding) => findings.set([finding.id, finding.place.file, finding.what].join('\n'), finding);
  const talk = speech(assets.words, tell);
  const render = templateSet(assets.templates, assets.words, tell);
  const files = new Map<string, string | Uint8Array>();
  const sheets: PrintSheet[] = [];
  const document = (title: string, style: string, body: string) =>
    render('document', {
      language: talk.language,
      title,
      plant: input.plantName,
      style: markup(style),
      home: null,
      body: markup(body),
    });
  for (const { template, revision } of input.templates) {
    const name = `${template.model}/${template.face}${template.hand === 'left' ? '-left' : ''}`;
    const what = headOf(template, revision, input.date, talk);
    const sheet = drawingOn(input.paper);
    const lines = linesOf(template, talk);
    const grid = gridOver(lines.box, shownOn(sheet));
    const picture = { ...lines, svg: lines.svg + namesOf(template, talk, groundOf(grid)) };
    const block = [what.title, what.seen, what.date, what.noCard, talk.plain(template.size)];
    files.set(`${name}.svg`, `${wholeSvg(template, picture, block, talk, drawingStyle(assets, '../'))}\n`);
    const body = render('full-size', pagesView({ template, picture, grid, head: what, input }, talk));
    const link = `<link rel="stylesheet" href="${relative(`${name}.html`, 'assets/print.css')}">`;
    files.set(`${name}.html`, document(what.title, link, body));
    sheets.push({ name: `${name}.pdf`, title: what.title, body, paper: input.paper });
  }
  files.set('assets/print.css', linkedCss(assets));
  for (const font of assets.fonts) files.set(`assets/${font.file}`, font.bytes);
  const shell = document(input.plantName, `<style>${carriedCss(assets)}</style>`, '');
  return { files, shell, sheets, piles: [], findings: [...findings.values()] };
}

/** What stands on every page and in the title block. */
function headOf({ title, hand, face }: FullSize, revision: string, date: string, talk: Speech) {
  const parts = [
    title.text,
    talk.phrase('labels.revision', { revision }),
    talk.phrase(`hand.${hand}`),
    talk.phrase(`full-size.face.${face}`),
    talk.phrase('full-size.scale', { scale: '1:1' }),
  ];
  return {
    title: parts.join(' · '),
    seen: talk.phrase(`full-size.seen.${face}`),
    date: talk.phrase('sheet.printed-for', { date }),
    noCard: talk.phrase('full-size.no-card'),
  };
}

interface Pages {
  readonly template: FullSize;
  readonly picture: Picture;
  readonly grid: Grid;
  readonly head: ReturnType<typeof headOf>;
  readonly input: FullSizeInput;
}

function pagesView({ template, picture, grid, head, input: { paper } }: Pages, talk: Speech) {
  const page = identifier('full-size', template.model, template.hand, template.face);
  const sheet = SHEETS[paper];
  const pages = String(grid.tiles.length + 1);
  const onPage = (i: number) => talk.phrase('sheet.page', { page: String(i), pages });
  const tileWords = (tile: Tile) => ({
    title: talk.phrase('full-size.tile', { tile: tile.name }),
    joins: (side: string, other: string) => talk.phrase(`full-size.joins.${side}`, { tile: other }),
  });
  return {
    page,
    pageRule: markup(`<style>@page ${page}{size:${paper};margin:${MARGIN_MM}mm}</style>`),
    box: `width:${sheet.widthPx}px;height:${sheet.heightPx}px`,
    headBox: `height:${HEAD_PX}px`,
    ...head,
    size: talk.html(template.size),
    bar: `${BAR_MM}\u00a0mm`,
    firstPage: onPage(1),
    map: markup(keyMap(template, grid, talk.phrase('full-size.map'))),
    legend: markup(legendSvg(template, talk.phrase('full-size.lines'), talk)),
    tiles: grid.tiles.map((tile, i) => ({
      ...tileWords(tile),
      place: placeOf(tile, grid, talk),
      onPage: onPage(i + 2),
      drawing: markup(tilePage(tile, picture.svg, drawingOn(paper), tileWords(tile))),
    })),
  };
}

function placeOf({ row, column }: Tile, { rows, columns }: Grid, talk: Speech): string {
  const span = (names: readonly string[]) => (names.length === 1 ? names[0]! : `${names[0]}–${names.at(-1)}`);
  return talk.phrase('full-size.place', { row, column, rows: span(rows), columns: span(columns) });
}
