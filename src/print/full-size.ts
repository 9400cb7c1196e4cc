/** Templates at full size: a picture of true size for each face, and the same in tiles that the plant's printer takes. */
import type { FullSize } from '../cards/card.ts';
import { drawingStyle } from './assets.ts';
import { printForms } from './forms.ts';
import type { Form, FormsOf } from './forms.ts';
import { gridOver, type Grid, type Tile } from './full-size/grid.ts';
import { keyMap } from './full-size/key-map.ts';
import { legendSvg } from './full-size/legend.ts';
import { linesOf, namesOf, type Picture } from './full-size/picture.ts';
import { BAR_MM, groundOf, shownOn, tilePage, type Sheet } from './full-size/tile-page.ts';
import { wholeSvg } from './full-size/whole.ts';
import type { Paper, PrintAssets } from './input.ts';
import { identifier, markup } from './markup.ts';
import type { PrintOutput } from './print.ts';
import type { Speech } from './speech.ts';

/** No printer prints up to the edge; A4 comes out of a browser up to a pixel narrower than it is. */
const MARGIN_MM = 7;
const SHEETS: Readonly<Record<Paper, Sheet>> = {
  A4: { widthPx: 738, heightPx: 1064 },
  Letter: { widthPx: 762, heightPx: 1000 },
};
/** The head of every page. */
const HEAD_PX = 52;

const drawingOn = (paper: Paper): Sheet => ({ ...SHEETS[paper], heightPx: SHEETS[paper].heightPx - HEAD_PX });

export interface FullSizeInput extends FormsOf {
  readonly templates: readonly { readonly template: FullSize; readonly revision: string }[];
}

/** A picture, a page and a PDF for each face of each hand. */
export function printFullSize({ templates, ...of }: FullSizeInput, assets: PrintAssets): PrintOutput {
  const forms = templates.map(({ template, revision }): Form => ({
    name: `${template.model}/${template.face}${template.hand === 'left' ? '-left' : ''}`,
    made: (talk, render) => {
      const head = headOf(template, revision, of.date, talk);
      const lines = linesOf(template, talk);
      const grid = gridOver(lines.box, shownOn(drawingOn(of.paper)));
      const picture = { ...lines, svg: lines.svg + namesOf(template, talk, groundOf(grid)) };
      const block = [head.title, head.seen, head.date, head.noCard, talk.plain(template.size)];
      return {
        title: head.title,
        body: render('full-size', pagesView({ template, picture, grid, head, of }, talk)),
        svg: wholeSvg(template, picture, block, talk, drawingStyle(assets, '../')),
      };
    },
  }));
  return printForms(forms, of, assets);
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
  readonly of: FormsOf;
}

function pagesView({ template, picture, grid, head, of: { paper } }: Pages, talk: Speech) {
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
