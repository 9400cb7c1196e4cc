/**
 * The cards on one paper, measured: each language, names as they are and three times as long. The default run takes some
 * sheets of every other edition, the other paper those of the rest; CARDS_ALL=1 takes all.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { MadeCard } from '../../../src/cards/card.ts';
import type { PrintSheet } from '../../../src/print/print.ts';
import { notAsMany, notOnEveryPage, notOnFirstPage, notOnPaper } from './content.ts';
import { openDesk, type Desk } from './desk.ts';
import { languages, makeEditions, NAMES, type Edition, type Paper } from './editions.ts';
import { faultsOf, look, MEASURES, type Faults, type Measure, type Shown } from './measured.ts';
import { readPaper, type PaperPage } from './paper.ts';
import { unreadable } from './qr.ts';
import { makeTally } from './tally.ts';

export const ALL = process.env['CARDS_ALL'] !== undefined;
/** One sheet of so many, where not all are taken: no divisor of what a model has. */
const EVERY = ALL ? 1 : 71;
/** Sheets printed at a time, while others are laid out. */
const BATCH = 12;

interface Job {
  readonly edition: Edition;
  readonly shell: string;
  readonly sheet: PrintSheet;
  /** Absent for a sheet that is no card. */
  readonly made?: MadeCard;
}

export function measurePaper(paper: Paper): void {
  const found = new Map<Measure, string[]>(MEASURES.map((measure) => [measure, []]));
  const tally = makeTally();
  let desk: Desk;

  beforeAll(async () => {
    const begun = performance.now();
    desk = await openDesk();
    const edition = makeEditions();
    const here = (i: number, j: number) => ALL || (i + j) % 2 === (paper === 'A4' ? 0 : 1);
    const jobs = languages.flatMap((language, i) =>
      NAMES.flatMap((names, j) => (here(i, j) ? jobsOf(edition(paper, language, names)) : [])),
    );
    const taken = jobs.filter((_, i) => i % EVERY === 0);
    // Long lists of sheets of one shell: the browser reads its fonts once.
    for (const shell of new Set(taken.map((job) => job.shell)))
      for (const batch of batches(taken.filter((job) => job.shell === shell))) await measureBatch(shell, batch);
    const seconds = ((performance.now() - begun) / 1000).toFixed(0);
    process.stdout.write(`\nThe cards on ${paper}, ${languages.join(', ')}, in ${seconds} s:\n${tally.table()}\n\n`);
  }, 3_600_000);

  afterAll(() => desk.close());

  async function measureBatch(shell: string, batch: readonly Job[]): Promise<void> {
    const printing = desk.print(
      shell,
      batch.map(({ sheet }) => sheet),
    );
    const shown: Shown[] = [];
    for (const { sheet } of batch) shown.push(await look(desk, shell, sheet));
    const printed = await printing;
    for (const [i, job] of batch.entries()) await measure(job, shown[i]!, printed.get(job.sheet.name)!);
  }

  async function measure({ edition, sheet, made }: Job, shown: Shown, pdf: Uint8Array): Promise<void> {
    const pages = await readPaper(pdf);
    tally.add(shown, pages);
    note(edition, sheet, faultsOf(shown, pages, sheet, edition.counter));
    if (!made) return;
    const qr = await unreadable(made.code, pdf);
    tally.addQr(qr.length === 0);
    note(edition, sheet, { QR: qr, 'first page': missing(shown, pages, made, edition) });
  }

  function note({ title }: Edition, { name }: PrintSheet, faults: Faults): void {
    for (const [measure, of] of Object.entries(faults))
      found.get(measure as Measure)!.push(...of.map((fault) => `${title}: ${name}: ${fault}`));
  }

  describe(`the cards on ${paper}`, () => {
    test.each(MEASURES)('%s', (measure) => {
      expect(found.get(measure)).toEqual([]);
    });
  });
}

function jobsOf(edition: Edition): Job[] {
  const { shell, charts } = edition;
  return [
    ...edition.cards.map((card) => ({ ...card, edition, shell })),
    ...edition.stations.map(({ sheet }) => ({ sheet, edition, shell })),
    ...charts.sheets.map((sheet) => ({ sheet, edition, shell: charts.shell })),
  ];
}

/** A print takes no two sheets of one name: editions are not mixed. */
function batches(jobs: readonly Job[]): Job[][] {
  const made: Job[][] = [];
  for (const job of jobs) {
    const last = made.at(-1);
    if (last && last.length < BATCH && last[0]!.edition === job.edition) last.push(job);
    else made.push([job]);
  }
  return made;
}

/** What the data of a card hold, against what its page 1 and every page show. */
function missing(
  { content }: Shown,
  pages: readonly PaperPage[],
  { card, code }: MadeCard,
  { names, called }: Edition,
): string[] {
  const panels = new Set(card.cautions.map(({ signal }) => signal).filter((signal) => signal !== 'notice'));
  return [
    // With names as no floor has them a card grows by a page: nothing of it is lost, and nothing gets smaller.
    ...(names === 'as they are' ? notOnFirstPage(content, pages) : notOnPaper(content, pages)),
    ...notAsMany(content, {
      step: card.steps.length,
      'key-value': card.keyNumbers.length,
      'check-what': card.checks.length,
      'check-limits': card.checks.filter(({ limits }) => limits !== undefined).length,
      signal: panels.size,
    }),
    // A long name is cut short in the foot of the pages: its whole length stands at the head of the first.
    ...notOnEveryPage([card.model.text.slice(0, 11), called(card.station.text).slice(0, 11), code], pages),
  ];
}
