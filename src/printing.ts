/** What is printed beside the cards of a compile: a model for its release, templates at full size, the page that leads to what hangs. */
import type { CardChanges } from './cards/card.ts';
import type { Compiled, Printed } from './compile.ts';
import { isError, shownPictures } from './compile.ts';
import { languagesAt, textsOf } from './plant-texts.ts';
import { loadAssets } from './assets.ts';
import { fullSizes } from './cards/full-size.ts';
import type { Hand } from './facts/subject.ts';
import type { Finding } from './findings/finding.ts';
import { inOrder, renderFinding } from './findings/render.ts';
import type { Host } from './host/host.ts';
import { printFullSize } from './print/full-size.ts';
import { limitsTexts } from './print/limits-text.ts';
import { linkedCss } from './print/assets.ts';
import type { Paper } from './print/input.ts';
import { markup } from './print/markup.ts';
import { templateSet } from './print/templates.ts';
import type { Words } from './print/words.ts';
import { printAll } from './print/print.ts';

/** Step five for a release: one model's cards with slots for what is laid over them, standing by themselves. */
export function printForRelease(
  host: Host,
  compiled: Compiled,
  id: string,
  on: string,
  changes: ReadonlyMap<string, CardChanges>,
) {
  const general = textsOf(compiled.checked.workspace.plant);
  const { assets, findings } = loadAssets(host, general);
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
            posting: { revision: model.revision, status: 'released', date: on, code, ...changedAt(changes, code) },
          })),
          findings: [],
        },
      ],
      sheets: [],
      plantName: general.name,
      paper: general.paper,
      languagesAt: languagesAt(general),
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
  const postedWords = ({ sentences }: Words) =>
    [...sentences].flatMap(([key, { text }]) =>
      key.startsWith('posted.') ? [[key.slice('posted.'.length), text]] : [],
    );
  const words = [assets.words, ...assets.others].map((one) => [one.language, Object.fromEntries(postedWords(one))]);
  const files = new Map([...output.files].filter(([path]) => /^(?:models|assets)\//.test(path)));
  const sheets = output.sheets.filter(({ name }) => name.startsWith('models/'));
  return {
    ...output,
    files,
    sheets,
    limits,
    language: assets.words.language,
    words: Object.fromEntries(words) as Readonly<Record<string, Readonly<Record<string, string>>>>,
    findings: [...findings, ...output.findings],
  };
}

const changedAt = (changes: ReadonlyMap<string, CardChanges>, code: string) => {
  const of = changes.get(code);
  return of ? { changes: of } : {};
};

/** Templates at full size of these models, of which none has an error: of all hands, or of one; on the plant's paper, or another. */
export function printFullSizes(
  host: Host,
  { checked, models }: Pick<Compiled, 'checked' | 'models'>,
  on: string,
  { hand, paper }: { readonly hand?: Hand; readonly paper?: Paper },
): Printed {
  const general = textsOf(checked.workspace.plant);
  const { assets, findings, texts: own } = loadAssets(host, general);
  const templates = models.flatMap(({ hands, revision }) =>
    hands
      .filter(({ subject }) => hand === undefined || subject.hand === hand)
      .flatMap(({ subject, facts }) => fullSizes(subject, facts))
      .map((template) => ({ template, revision })),
  );
  const input = { templates, plantName: general.name, paper: paper ?? general.paper, date: on };
  const output = printFullSize(input, assets);
  const texts = new Map([...checked.workspace.texts, ...own]);
  return { ...output, findings: inOrder([...findings, ...output.findings]).map((one) => renderFinding(one, texts)) };
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
