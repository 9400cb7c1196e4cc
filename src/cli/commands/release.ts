/** platen release MODEL: what would change at the stations; then the model is frozen and entered in the ledger. */
import { InvalidArgumentError, Option } from 'commander';
import type { Command } from 'commander';
import { compileAll, isError } from '../../compile.ts';
import { findingText, renderFinding } from '../../findings/render.ts';
import { present } from '../../facts/row.ts';
import { revisionNumber } from '../../facts/revision.ts';
import { enter } from '../../release/enter.ts';
import { freeze, openReleases, recordFile } from '../../releases.ts';
import type { Frozen, Released } from '../../releases.ts';
import { startText, UNDER_WAY } from '../../release/entries.ts';
import type { UnderWay } from '../../release/entries.ts';
import { changesOf, refusal, releaseAct, sameCards } from '../../release/plan.ts';
import type { Asked, Change } from '../../release/plan.ts';
import type { Known } from '../../release/wall.ts';
import { busy } from '../busy.ts';
import { day } from '../day.ts';
import { counted } from '../count.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { peopleOf, signed } from '../ledger-options.ts';
import type { Signed } from '../ledger-options.ts';
import { pick } from '../pick.ts';

interface Options extends Common, Signed {
  readonly preview?: boolean;
  readonly from?: string;
  readonly fromOrder?: number;
  readonly underWay?: UnderWay;
  readonly oldUntil?: string;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('release')
    .description('freeze a model as it stands and enter it in the ledger: its cards may hang from then on')
    .argument('<model>', 'id of a model')
    .option('--preview', 'show what would change at the stations, and write nothing')
    .option('--reason <text>', 'why')
    .option('--name <name>', 'who, as the plant writes it')
    .option('--from <date>', 'bodies begun from that day on; the day it is made where not given', day)
    .addOption(new Option('--from-order <number>', 'from that order on').argParser(order).conflicts('from'))
    .addOption(new Option('--under-way <how>', 'what becomes of bodies begun on the release before').choices(UNDER_WAY))
    .option('--old-until <date>', 'last day on which bodies are finished on the old cards', day)
    .action((model: string, options: Options) => done(release(model, options, io)));
}

function order(text: string): number {
  if (/^[1-9]\d{0,14}$/.test(text)) return Number(text);
  throw new InvalidArgumentError('It is the number of an order.');
}

function release(name: string, options: Options, io: Io): number {
  const host = io.host(options.root);
  const on = options.on ?? host.today();
  const compiled = busy(io, 'Checking', () => compileAll(host, on));
  const model = pick([name], compiled.models, io)?.[0];
  if (!model) return EXIT.usage;
  const errors = [...compiled.checked.findings, ...model.findings].filter(isError);
  for (const error of errors) io.err(`${findingText(renderFinding(error, compiled.checked.workspace.texts))}\n\n`);
  if (errors.length > 0) {
    io.err(`${name} is not released: ${counted(errors.length, 'error')}.\n`);
    return EXIT.errors;
  }
  const opened = openReleases(host, on);
  if ('altered' in opened) {
    io.err(`${opened.altered} Nothing is released over it.\n`);
    return EXIT.errors;
  }
  const before = opened.known.filter(({ released }) => released.model === name).at(-1);
  const same = before?.released.revision === model.revision;
  // Of the same letter it is worded anew, and is held against what was before that.
  const against = same ? opened.known.filter(({ released }) => released.model === name).at(-2) : before;
  const frozen = busy(io, 'Freezing', () => freeze(host, compiled, name, on, against?.record));
  if (frozen.broken) {
    io.err('The templates or words have errors: see platen cards. Nothing is released.\n');
    return EXIT.errors;
  }
  const changes = changesOf(frozen.release, before);
  if (options.preview) {
    io.out(previewText(frozen, changes, before?.released.revision));
    return EXIT.good;
  }
  const by = signed(options, peopleOf(compiled.checked), io);
  if (!by) return EXIT.usage;
  const letters = present(present(compiled.checked.workspace.plant.plant)?.['revision-letters'])?.text;
  return carryOut({ frozen, opened, changes, letters }, askedOf(options, by, on), options.root, io);
}

const askedOf = (options: Options, by: { reason: string; name: string }, on: string): Asked => ({
  on,
  ...by,
  from: options.fromOrder === undefined ? { date: options.from ?? on } : { order: options.fromOrder },
  ...(options.underWay === undefined ? {} : { underWay: options.underWay }),
  ...(options.oldUntil === undefined ? {} : { oldUntil: options.oldUntil }),
});

interface Plan {
  readonly frozen: Frozen;
  readonly opened: Released;
  readonly changes: readonly Change[];
  readonly letters: string | undefined;
}

function carryOut({ frozen, opened, changes, letters }: Plan, asked: Asked, root: string, io: Io): number {
  const host = io.host(root);
  const { release } = frozen;
  const same = sameCards(release, opened.known);
  if (same) return newVersion(frozen, same, asked, root, io);
  const refused = refusal(release, opened.known, asked, comesAfter(letters));
  if (refused !== undefined) {
    io.err(`${refused}\n`);
    return EXIT.errors;
  }
  const { path, text, sha256 } = recordFile(release);
  const done = enter(host, () => releaseAct(release, asked, { path, sha256 }), {
    path,
    text,
    assets: frozen.assets,
  });
  if ('failed' in done) {
    io.err(`${done.failed}\n`);
    return EXIT.errors;
  }
  io.out(
    `${release.model}@${release.revision} is released, ${startText(asked.from)}.\n${changeLines(changes).join('')}`,
  );
  io.out('Pull and post: platen posted. Print: platen cards --released.\n');
  return EXIT.good;
}

/** The same cards, worded or laid out otherwise: they keep their codes, and nothing is superseded. */
function newVersion({ release, assets }: Frozen, same: Known, asked: Asked, root: string, io: Io): number {
  const { path, text, sha256 } = recordFile(release);
  const { model, revision } = release;
  if (same.released.standing.is === 'withdrawn') {
    io.err(`${model}@${revision} was withdrawn: give it the next letter.\n`);
    return EXIT.errors;
  }
  if (same.released.record.sha256 === sha256) {
    io.err(`${model}@${revision} is released already, and nothing has changed since.\n`);
    return EXIT.errors;
  }
  const { on, name, reason } = asked;
  const done = enter(
    io.host(root),
    () => ({ act: 'version', on, name, reason, model, revision, record: { path, sha256 } }),
    { path, text, assets },
  );
  if ('failed' in done) {
    io.err(`${done.failed}\n`);
    return EXIT.errors;
  }
  io.out(
    `${model}@${revision} has a new version: the same cards under the same codes, otherwise worded or laid out.\n`,
  );
  return EXIT.good;
}

/** By the letters of the plant, where it has a row of its own. */
const comesAfter =
  (letters: string | undefined) =>
  (a: string, b: string): boolean => {
    const [first, second] = [revisionNumber(a, letters), revisionNumber(b, letters)];
    return first !== undefined && second !== undefined ? first > second : a > b;
  };

function previewText({ release }: Frozen, changes: readonly Change[], before: string | undefined): string {
  const head =
    before === undefined
      ? `${release.model}@${release.revision}: nothing of it was released before.\n`
      : `${release.model}@${release.revision} against ${before}:\n`;
  return `${head}${changeLines(changes).join('')}Nothing was written.\n`;
}

function changeLines(changes: readonly Change[]): string[] {
  const width = Math.max(...changes.map(({ station, hand }) => place(station, hand).length));
  const lines = changes
    .filter(({ what }) => what !== 'same')
    .map(({ station, hand, old, new: now }) => {
      const codes = [...(old ? [`pull ${old}`] : []), ...(now ? [`post ${now}`] : [])];
      return `  ${place(station, hand).padEnd(width)}  ${codes.join(', ')}\n`;
    });
  const same = changes.filter(({ what }) => what === 'same');
  const keep = same.map(({ station, hand }) => place(station, hand)).join('; ');
  return [...lines, ...(same.length > 0 ? [`  Unchanged, keep their cards: ${keep}.\n`] : [])];
}

const place = (station: string, hand: string): string => (hand === 'left' ? `${station}, left hand` : station);
