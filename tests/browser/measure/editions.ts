/** The demo cards in every edition there can be: each paper, each language, names as they are and three times as long. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MadeCard, StationSheet } from '../../../src/cards/card.ts';
import { compileAll, printCompiled, type Compiled } from '../../../src/compile.ts';
import { Leaf } from '../../../src/facts/leaf.ts';
import { memoryHost } from '../../../src/host/memory.ts';
import { cardName } from '../../../src/print/names.ts';
import type { PrintSheet } from '../../../src/print/print.ts';
import { loadWords } from '../../../src/print/words.ts';
import { printChartForms } from '../../../src/forms.ts';
import { textsOf } from '../../../src/plant-texts.ts';
import type { PrintWish } from '../../../src/plant-texts.ts';
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
  readonly names: Names;
  /** A name in the language of the edition. */
  readonly called: (name: string) => string;
  readonly cards: readonly { readonly sheet: PrintSheet; readonly made: MadeCard }[];
  readonly stations: readonly { readonly sheet: PrintSheet; readonly station: StationSheet }[];
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
    const name = written(general.name, (given) => (isLong ? longer(given) : given));
    const plant = { ...workspace.plant, plant: { ...general, name, paper: written(general.paper, () => paper) } };
    const put = { checked: { ...checked, workspace: { ...workspace, plant } }, models, sheets };
    return { names, ...edition(put, { paper, languages: [language] }, `${paper}, ${language}, names ${names}`) };
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

function edition(compiled: Compiled, wish: Required<PrintWish>, title: string): Omit<Edition, 'names'> {
  const host = memoryHost(demoFiles());
  const { shell, files, sheets, findings } = printCompiled(host, compiled, DAY, wish);
  const charts = printChartForms(host, compiled, DAY, undefined, wish);
  const told = [...findings, ...charts.findings].filter(({ id }) => id.startsWith('word'));
  if (told.length > 0) throw new Error(`the words are at fault: ${told[0]!.what}`);
  const of = (name: string): PrintSheet => sheets.find((sheet) => sheet.name === name)!;
  const names = textsOf(compiled.checked.workspace.plant).names.get(wish.languages[0]!);
  return {
    title,
    called: (name) => names?.get(name) ?? name,
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
    charts,
    counter: wordsOf(wish.languages).sentences.get('sheet.page')!.text,
  };
}

const wordsOf = ([language]: readonly string[]) => {
  const file = `templates/words/${language}.yaml`;
  return loadWords(file, readFileSync(join(root, file))).words;
};
