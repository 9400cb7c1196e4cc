/** Chart forms as pages and sheets for paper: lying across it, a sheet for each thing measured. */
import type { ChartLines, ChartSheet } from '../cards/card.ts';
import type { Finding } from '../findings/finding.ts';
import { carriedCss, linkedCss } from './assets.ts';
import { chartForm } from './drawing/chart-form.ts';
import type { FormLine } from './drawing/chart-form.ts';
import type { Paper, PrintAssets } from './input.ts';
import { identifier, markup } from './markup.ts';
import { pageRule } from './page-rule.ts';
import type { PrintOutput, PrintSheet } from './print.ts';
import { relative } from './names.ts';
import { speech, type Speech } from './speech.ts';
import { templateSet } from './templates.ts';

const COLUMNS = 19;
const COLUMN_MM = 11;
const LABEL_MM = 36;

export interface ChartInput {
  readonly sheets: readonly ChartSheet[];
  readonly plantName: string;
  readonly paper: Paper;
  /** YYYY-MM-DD the print is made for. */
  readonly date: string;
}

/** A page and a PDF for each model, hand and station. */
export function printCharts({ sheets, plantName, paper, date }: ChartInput, assets: PrintAssets): PrintOutput {
  const findings = new Map<string, Finding>();
  const tell = (finding: Finding) => findings.set([finding.id, finding.place.file, finding.what].join('\n'), finding);
  const talk = speech(assets.words, tell);
  const render = templateSet(assets.templates, assets.words, tell);
  const files = new Map<string, string | Uint8Array>();
  const printed: PrintSheet[] = [];
  const document = (title: string, style: string, body: string) =>
    render('document', {
      language: talk.language,
      title,
      plant: plantName,
      style: markup(style),
      home: null,
      body: markup(body),
    });
  for (const name of new Set(sheets.map(nameOf))) {
    const group = sheets.filter((sheet) => nameOf(sheet) === name);
    const title = `${group[0]!.model.text} · ${group[0]!.station.text}`;
    const body = group
      .map((sheet) => render('chart-sheet', chartView(sheet, { plantName, paper, date }, talk)))
      .join('\n');
    const link = `<link rel="stylesheet" href="${relative(`${name}.html`, 'assets/print.css')}">`;
    files.set(`${name}.html`, document(title, link, body));
    printed.push({ name: `${name}.pdf`, title, body, paper });
  }
  files.set('assets/print.css', linkedCss(assets));
  for (const font of assets.fonts) files.set(`assets/${font.file}`, font.bytes);
  const shell = document(plantName, `<style>${carriedCss(assets)}</style>`, '');
  return { files, shell, sheets: printed, piles: [], findings: [...findings.values()] };
}

const nameOf = ({ key }: ChartSheet): string => `${key.model}/${key.station}${key.hand === 'left' ? '-left' : ''}`;

function chartView(sheet: ChartSheet, { plantName, paper, date }: Omit<ChartInput, 'sheets'>, talk: Speech) {
  const { key, limits, size, means, ranges } = sheet;
  const page = identifier('chart', key.model, key.hand, key.station, sheet.fact);
  const station = sheet.station.text;
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
