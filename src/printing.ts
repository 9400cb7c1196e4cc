/** What is printed beside the cards of a compile: a model for its release, and forms for control charts. */
import type { Compiled, Printed } from './compile.ts';
import { textsOf } from './compile.ts';
import { loadAssets } from './assets.ts';
import { chartSheets } from './cards/charts.ts';
import { inOrder, renderFinding } from './findings/render.ts';
import type { Host } from './host/host.ts';
import { printCharts } from './print/charts.ts';
import { limitsTexts } from './print/limits-text.ts';
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
