/** Chart forms as pages and sheets for paper: lying across it, a sheet for each thing measured. */
import type { ChartLines, ChartSheet } from '../cards/card.ts';
import { chartForm } from './drawing/chart-form.ts';
import type { FormLine } from './drawing/chart-form.ts';
import { printForms, type Form, type FormsOf } from './forms.ts';
import type { PrintAssets } from './input.ts';
import { identifier, markup } from './markup.ts';
import { pageRule } from './page-rule.ts';
import type { PrintOutput } from './print.ts';
import type { Speech } from './speech.ts';

const COLUMNS = 19;
const COLUMN_MM = 11;
const LABEL_MM = 36;

export interface ChartInput extends FormsOf {
  readonly sheets: readonly ChartSheet[];
}

/** A page and a PDF for each model, hand and station. */
export function printCharts({ sheets, ...of }: ChartInput, assets: PrintAssets): PrintOutput {
  const forms = [...new Set(sheets.map(nameOf))].map((name): Form => {
    const group = sheets.filter((sheet) => nameOf(sheet) === name);
    return {
      name,
      made: (talk, render) => ({
        title: `${group[0]!.model.text} · ${talk.name(group[0]!.station.text)}`,
        body: group.map((sheet) => render('chart-sheet', chartView(sheet, of, talk))).join('\n'),
      }),
    };
  });
  return printForms(forms, of, assets);
}

const nameOf = ({ key }: ChartSheet): string => `${key.model}/${key.station}${key.hand === 'left' ? '-left' : ''}`;

function chartView(sheet: ChartSheet, { plantName, paper, date }: FormsOf, talk: Speech) {
  const { key, limits, size, means, ranges } = sheet;
  const page = identifier('chart', key.model, key.hand, key.station, sheet.fact);
  const station = talk.name(sheet.station.text);
  const field = { columns: COLUMNS, columnMm: COLUMN_MM, labelMm: LABEL_MM };
  const control = lines(means, talk);
  return {
    page,
    pageRule: markup(
      `<style>${pageRule(page, { model: sheet.model.text, station, code: '', status: talk.phrase('chart.form'), date, paper }, talk, true)}</style>`,
    ),
    plant: plantName,
    model: sheet.model.text,
    station,
    hand: sheet.handLine ? talk.html(sheet.handLine) : null,
    what: talk.html(sheet.what),
    fact: sheet.fact,
    limits: talk.number(limits),
    gauge: talk.html(sheet.gauge),
    often: talk.html(sheet.often),
    found: sheet.found.map((line) => talk.html(line)),
    known: sheet.found.length > 0,
    columns: Array.from({ length: COLUMNS }, () => ''),
    readings: Array.from({ length: size }, (_, i) => String(i + 1)),
    means: markup(chartForm({ ...field, title: talk.phrase('chart.means'), heightMm: 42, lines: control })),
    ranges: markup(
      chartForm({ ...field, title: talk.phrase('chart.ranges'), heightMm: 26, lines: lines(ranges, talk) }),
    ),
  };
}

/** Lowest, middle, highest. */
const lines = (of: ChartLines | undefined, talk: Speech): readonly FormLine[] =>
  (of ?? []).map(({ at, figure }, i) => ({ at, text: talk.plain(figure), kind: i === 1 ? 'middle' : 'control' }));
