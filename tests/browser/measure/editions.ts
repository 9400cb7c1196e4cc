/** The demo cards in every edition there can be: each paper, each language, names as they are and three times as long. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MadeCard, StationSheet } from '../../../src/cards/card.ts';
import { loadAssets } from '../../../src/assets.ts';
import { compileAll, printCompiled, type Compiled } from '../../../src/compile.ts';
import { Leaf } from '../../../src/facts/leaf.ts';
import type { Host } from '../../../src/host/host.ts';
import { memoryHost } from '../../../src/host/memory.ts';
import { cardName } from '../../../src/print/names.ts';
import type { PrintSheet } from '../../../src/print/print.ts';
import { printChartForms } from '../../../src/printing.ts';
import { demoFiles, root } from '../../cards/demo.ts';
import { longer, withLongNames } from './long-names.ts';

export type Paper = 'A4' | 'Letter';
export const NAMES = ['as they are', 'three times as long'] as const;
export type Names = (typeof NAMES)[number];

/** Every language there are words of. */
export const languages: readonly string[] = readdirSync(join(root, 'templates/words'))
  .map((file) => file.replace(/\.yaml$/, ''))
  .toSorted();

export interface Printing {
  readonly shell: string;
  readonly files: ReadonlyMap<string, string | Uint8Array>;
}

export interface Edition extends Printing {
  readonly title: string;
  readonly cards: readonly { readonly sheet: PrintSheet; readonly made: MadeCard }[];
  readonly stations: readonly { readonly sheet: PrintSheet; readonly station: StationSheet }[];
  /** All cards of a model or a station in one. */
  readonly collected: readonly PrintSheet[];
  readonly charts: Printing & { readonly sheets: readonly PrintSheet[] };
  /** 'page {page} of {pages}' */
  readonly counter: string;
}

const DAY = '2026-11-25';

/** Compiles once; gives what prints any edition. Cards know neither paper nor language: those are the plant's and the words'. */
export function makeEditions(): (paper: Paper, language: string, names: Names) => Edition {
  const compiled = compileAll(memoryHost(demoFiles()), DAY);
  const long = lengthened(compiled);
  return (paper, language, names) => {
    const isLong = names === 'three times as long';
    const { checked, models, sheets } = isLong ? long : compiled;
    const { workspace } = checked;
    const general = workspace.plant.plant!;
    const plant = {
      ...workspace.plant,
      plant: {
        ...general,
        paper: written(general.paper, () => paper),
        name: written(general.name, (name) => (isLong ? longer(name) : name)),
      },
    };
    const put = { checked: { ...checked, workspace: { ...workspace, plant } }, models, sheets };
    return edition(speaking(language), put, `${paper}, ${language}, names ${names}`);
  };
}

/** A leaf as it would be, had something else been written there. */
function written<T extends string>(leaf: Leaf<T> | undefined, as: (value: T) => T): Leaf<T> {
  const value = as(Leaf.open(leaf!));
  return new Leaf(leaf!.id, value, leaf!.writing, value);
}

function lengthened({ checked, models, sheets }: Compiled): Compiled {
  const longModels = models.map(({ id, file, title, revision, hands, cards, findings }) => {
    return { id, file, title: longer(title), revision, hands, findings, cards: withLongNames(cards) };
  });
  return { checked, models: longModels, sheets: withLongNames(sheets) };
}

/** Words, of the language the program asks for, that are those of another. */
const speaking = (language: string): Host =>
  memoryHost({ 'templates/words/en.yaml': readFileSync(join(root, `templates/words/${language}.yaml`)) });

function edition(host: Host, compiled: Compiled, title: string): Edition {
  const { shell, files, sheets, findings } = printCompiled(host, compiled, DAY);
  const charts = printChartForms(host, compiled, DAY);
  const told = [...findings, ...charts.findings].filter(({ id }) => id.startsWith('word'));
  if (told.length > 0) throw new Error(`the words are at fault: ${told[0]!.what}`);
  const of = (name: string): PrintSheet => sheets.find((sheet) => sheet.name === name)!;
  return {
    title,
    shell,
    files,
    cards: compiled.models.flatMap(({ id, cards }) => {
      const posted = cards.map(({ card, code }) => ({
        card,
        posting: { revision: '', status: 'draft' as const, date: DAY, code },
      }));
      return cards.map((made) => ({ made, sheet: of(`models/${id}/${cardName(made.card.key, posted)}.pdf`) }));
    }),
    stations: compiled.sheets.map((station) => ({ station, sheet: of(`stations/${station.station.id}/sheet.pdf`) })),
    collected: sheets.filter(({ name }) => /^(\w+)\/([\w-]+)\/\2\.pdf$/.test(name)),
    charts,
    counter: loadAssets(host).assets.words.sentences.get('sheet.page')!.text,
  };
}
