/** What is printed beside the cards of a compile: a model for its release, and forms for control charts. */
import type { Compiled, Printed } from './compile.ts';
import { isError, shownPictures, textsOf } from './compile.ts';
import { loadAssets } from './assets.ts';
import { chartSheets } from './cards/charts.ts';
import type { Finding } from './findings/finding.ts';
import { inOrder, renderFinding } from './findings/render.ts';
import type { Host } from './host/host.ts';
import { printCharts } from './print/charts.ts';
import { limitsTexts } from './print/limits-text.ts';
import { linkedCss } from './print/assets.ts';
import { markup } from './print/markup.ts';
import { templateSet } from './print/templates.ts';
import { printAll } from './print/print.ts';

/** Step five for a release: one model's cards with slots for what is laid over them, standing by themselves. */
export function printForRelease(host: Host, compiled: Compiled, id: string, on: string) {
  const { assets, findings } = loadAssets(host);
  const { plant } = compiled.checked.workspace;
  const general = textsOf(plant);
  const model = compiled.models.find((one) => one.id === id)!;
  const output = printAll(
    {
      models: [
        {
          id,
          title: model.title,
          revision: model.revision,
          cards: model.cards.map(({ card, code }) => ({
            card,
            posting: { revision: model.revision, status: 'released', date: on, code },
          })),
          findings: [],
        },
      ],
      sheets: [],
      plantName: general.name,
      paper: general.paper,
      date: on,
      alone: true,
      route: general.route,
      kinds: [],
      pictures: shownPictures(compiled.checked.workspace),
      findings: [],
    },
    assets,
  );
  const limits = new Map(model.cards.map(({ card, code }) => [code, limitsTexts(card, assets)]));
  const words = [...assets.words.sentences].filter(([key]) => key.startsWith('posted.'));
  const files = new Map([...output.files].filter(([path]) => /^(?:models|assets)\//.test(path)));
  const sheets = output.sheets.filter(({ name }) => name.startsWith('models/'));
  return {
    ...output,
    files,
    sheets,
    limits,
    words: Object.fromEntries(words.map(([key, { text }]) => [key.slice('posted.'.length), text])),
    findings: [...findings, ...output.findings],
  };
}

/** Chart forms of these models: for all stations, or for one. */
export function printChartForms(host: Host, { checked, models }: Compiled, on: string, station?: string): Printed {
  const { assets, findings, texts: own } = loadAssets(host);
  const sheets = models.flatMap(({ cards, hands }) =>
    cards
      .filter(({ card }) => station === undefined || card.key.station === station)
      .flatMap(({ card }) => {
        const { subject, facts } = hands.find((one) => one.subject.hand === card.key.hand)!;
        return chartSheets(card, subject, facts);
      }),
  );
  const { name, paper } = textsOf(checked.workspace.plant);
  const output = printCharts({ sheets, plantName: name, paper, date: on }, assets);
  const texts = new Map([...checked.workspace.texts, ...own]);
  const shown = inOrder([...findings, ...output.findings]).map((finding) => renderFinding(finding, texts));
  return { ...output, findings: shown };
}

/** A released card on the page that leads to them. */
export interface PostedRow {
  readonly stationId: string;
  readonly station: string;
  readonly code: string;
  readonly title: string;
  readonly left: boolean;
  readonly status: string;
  readonly since: string;
  /** Path of its page from the landing page. */
  readonly href: string;
}

/** The landing page of what hangs, and the style and fonts it needs; undefined where the templates are broken. */
export function printPostedIndex(
  host: Host,
  rows: readonly PostedRow[],
  on: string,
): ReadonlyMap<string, string | Uint8Array> | undefined {
  const { assets, findings } = loadAssets(host);
  const told: Finding[] = [...findings];
  const tell = (finding: Finding) => void told.push(finding);
  const render = templateSet(assets.templates, assets.words, tell);
  const stations = [...new Map(rows.map((row) => [row.stationId, row.station]))].map(([id, name]) => ({
    name,
    cards: rows.filter((row) => row.stationId === id),
  }));
  const body = render('posted', { date: on, stations });
  const page = render('document', {
    language: assets.words.language,
    title: on,
    plant: '',
    style: markup('<link rel="stylesheet" href="assets/print.css">'),
    home: null,
    body: markup(body),
  });
  if (told.some(isError)) return undefined;
  const fonts = assets.fonts.map(({ file, bytes }) => [`assets/${file}`, bytes] as const);
  return new Map<string, string | Uint8Array>([
    ['index.html', page],
    ['assets/print.css', linkedCss(assets)],
    ...fonts,
  ]);
}
