import type { Arg, CardKey, Posting, StationSheet } from '../cards/card.ts';
import type { Paper } from './input.ts';
import { identifier, markup } from './markup.ts';
import { overlayOf } from './overlay.ts';
import { pageRule } from './page-rule.ts';
import { qrMarkup } from './qr.ts';
import type { Speech } from './speech.ts';

export interface SheetViewInput {
  readonly sheet: StationSheet;
  readonly posting: Posting;
  readonly plantName: string;
  readonly paper: Paper;
  readonly codeOf: (key: CardKey) => string | undefined;
}

/** The station sheet as its template sees it: a row a model, lying across the paper. */
export function sheetView({ sheet, posting, plantName, paper, codeOf }: SheetViewInput, talk: Speech) {
  const page = identifier('sheet', talk.language, sheet.station.id);
  const station = talk.name(sheet.station.name.text);
  const { status, date, foot: below } = overlayOf(posting, talk);
  const foot = { model: talk.phrase('sheet.station-sheet'), station, code: posting.code, ...below, paper };
  return {
    page,
    language: talk.language,
    pageRule: markup(`<style>${pageRule(page, foot, talk, true)}</style>`),
    plant: plantName,
    station,
    date,
    code: posting.code,
    qr: qrMarkup(posting.code),
    status,
    columns: sheet.columns.map((column) => talk.html(column)),
    rows: sheet.rows.map((row) => ({
      model: row.model.text,
      hand: row.key.hand === 'left' ? talk.phrase('labels.left-hand') : null,
      cells: row.cells.map((cell) => lines(cell, talk)),
      code: codeOf(row.key) ?? null,
    })),
  };
}

/** A part or a finish a line: a series in a cell is read down, not across. */
const lines = (cell: Arg, talk: Speech) =>
  cell.kind === 'series' ? markup(cell.items.map((item) => talk.html(item).toString()).join('<br>')) : talk.html(cell);
