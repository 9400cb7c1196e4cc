/** platen cards --released: stored cards posted again, with what is said of them today. */
import type { Host } from '../host/host.ts';
import { openReleases } from '../releases.ts';
import type { Released } from '../releases.ts';
import { FOLDER } from '../release/ledger.ts';
import { fillingOf, replay } from '../release/replay.ts';
import { printPostedIndex } from '../printing.ts';
import type { PostedRow } from '../printing.ts';
import { hangingOn } from '../release/wall.ts';
import type { Known } from '../release/wall.ts';
import { offer } from '../findings/nearest.ts';
import { counted } from './count.ts';
import type { Common, Io } from './io.ts';
import { EXIT } from './io.ts';
import { addPaper } from './paper.ts';

interface Options extends Common {
  readonly station?: string;
  readonly pdf: boolean;
  readonly out?: string;
  readonly released?: string | true;
}

type Tree = Map<string, string | Uint8Array>;
type Sheets = { name: string; title: string; body: string; paper: 'A4' | 'Letter' }[];

export async function releasedCards(models: readonly string[], options: Options, io: Io): Promise<number> {
  const host = io.host(options.root);
  const on = options.on ?? host.today();
  const opened = openReleases(host, on);
  if ('altered' in opened) {
    io.err(`${opened.altered} Nothing is posted from it.\n`);
    return EXIT.errors;
  }
  const chosen = choose(models, options, opened);
  if ('refused' in chosen) {
    io.err(`${chosen.refused}\n`);
    return EXIT.usage;
  }
  const tree: Tree = new Map();
  const shells = new Map<string, Sheets>();
  for (const { of, codes } of chosen.cards) {
    const folder = `${of.record.model}@${of.record.revision}`;
    const wanted = new Set(codes);
    const { pages, sheets } = replay(of, on, opened, (card) => wanted.has(card.code));
    for (const [path, text] of pages) tree.set(`${folder}/${path}`, text);
    for (const [path, hash] of Object.entries(of.record.assets)) {
      const bytes = host.read(`${FOLDER}/assets/${hash}`);
      if (!bytes) {
        io.err(`${FOLDER}/assets/${hash} is gone: ${folder} cannot be posted without it.\n`);
        return EXIT.errors;
      }
      if (path !== 'shell') tree.set(`${folder}/${path}`, bytes);
    }
    const shell = of.record.assets['shell']!;
    const own = sheets.map((sheet) => ({ ...sheet, name: `${folder}/${sheet.name}`, paper: sheet.paper as 'A4' }));
    shells.set(shell, [...(shells.get(shell) ?? []), ...own]);
  }
  if (options.released === true) addIndex(host, chosen, opened, on, tree);
  const failed = options.pdf ? await paper(host, shells, tree, io) : undefined;
  const published = failed === undefined ? host.publish(options.out ?? 'out/released', tree) : { failed };
  if ('failed' in published) {
    io.err(`${published.failed}\n`);
    return EXIT.errors;
  }
  const count = chosen.cards.reduce((sum, { codes }) => sum + codes.length, 0);
  io.out(`${counted(count, 'released card')} on ${on}${published.changed ? '' : ', unchanged'}: ${published.path}\n`);
  return EXIT.good;
}

interface Chosen {
  readonly cards: readonly { readonly of: Known; readonly codes: readonly string[] }[];
}

/** All cards of one release; or all that hang, of these models, at that station. */
function choose(
  models: readonly string[],
  { released, station }: Options,
  { known, state }: Released,
): Chosen | { readonly refused: string } {
  const at = (id: string) => station === undefined || station === id;
  if (released !== true && released !== undefined) {
    const names = known.map(({ record }) => `${record.model}@${record.revision}`);
    const of = known[names.indexOf(released)];
    if (!of) return { refused: `${released} was never released. ${offer(released, names)}` };
    const codes = of.record.cards.filter(({ key }) => at(key.station)).map(({ code }) => code);
    return { cards: [{ of, codes }] };
  }
  const up = hangingOn(known, state).filter(
    (one) => at(one.card.key.station) && (models.length === 0 || models.includes(one.model)),
  );
  if (up.length === 0) return { refused: 'No released card hangs there: see platen posted.' };
  const releases = [...new Set(up.map(({ of }) => of))];
  return {
    cards: releases.map((of) => ({ of, codes: up.filter((one) => one.of === of).map(({ card }) => card.code) })),
  };
}

/** Without it the cards are there all the same: what was stored does not hang on the templates of today. */
function addIndex(host: Host, { cards }: Chosen, { known, state }: Released, on: string, tree: Tree): void {
  const rows = cards.flatMap(({ of, codes }) =>
    of.record.cards
      .filter(({ code }) => codes.includes(code))
      .map((card): PostedRow => {
        const { status, revision } = fillingOf(card, of, on, { known, state });
        return {
          stationId: card.key.station,
          station: card.station,
          code: card.code,
          title: of.record.title,
          left: card.key.hand === 'left',
          status,
          since: revision,
          href: `${of.record.model}@${of.record.revision}/${card.files[0]}`,
        };
      }),
  );
  for (const [path, content] of printPostedIndex(host, rows, on) ?? []) tree.set(path, content);
}

async function paper(host: Host, shells: ReadonlyMap<string, Sheets>, tree: Tree, io: Io): Promise<string | undefined> {
  for (const [hash, sheets] of shells) {
    const shell = new TextDecoder().decode(host.read(`${FOLDER}/assets/${hash}`));
    const failed = await addPaper(host, { shell, sheets }, tree, io);
    if (failed !== undefined) return failed;
  }
  return undefined;
}
