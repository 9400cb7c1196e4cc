/** platen run ORDERS.csv: tomorrow's run from its list of orders: run sheet and labels, and why a line is not run. */
import type { Command } from 'commander';
import { compileAll } from '../../compile.ts';
import { findingText } from '../../findings/render.ts';
import { folderAndName } from '../../host/paths.ts';
import { enter } from '../../release/enter.ts';
import { makeRun, printRun } from '../../run-sheets.ts';
import type { RunMade } from '../../run-sheets.ts';
import { busy } from '../busy.ts';
import { counted } from '../count.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { peopleOf, signed } from '../ledger-options.ts';
import type { Signed } from '../ledger-options.ts';
import { opened } from '../opened.ts';
import type { Opened } from '../opened.ts';
import { writeForms } from '../write-forms.ts';

interface Options extends Common {
  readonly json?: boolean;
  readonly begin?: true;
  readonly name?: string;
  readonly pdf: boolean;
  readonly out?: string;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('run')
    .description('the run of a day from its list of orders: run sheet and labels; a line that cannot be run is told')
    .argument('<orders>', 'a .csv file: order, model, finish, grade, hand, quantity, due, lead')
    .option('--json', 'the run as JSON, nothing written')
    .option('--begin', 'enter in the ledger that it begins today: what changed by the next run is told from here')
    .option('--name <name>', 'who begins it, as the plant writes it')
    .option('--no-pdf', 'no PDF')
    .option('--out <dir>', 'where to write; out/run/ and the day where not given')
    .action(async (file: string, options: Options) => done(await runList(file, options, io)));
}

async function runList(file: string, options: Options, io: Io): Promise<number> {
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const { host, on } = ledger;
  const { folder, name } = folderAndName(file);
  const bytes = io.host(folder).read(name);
  if (!bytes) {
    io.err(`There is no file ${file}.\n`);
    return EXIT.usage;
  }
  if (options.begin && on > host.today()) {
    io.err(`A run is entered on the day it begins: ${on} is still to come. Print it now, and enter it then.\n`);
    return EXIT.usage;
  }
  const compiled = busy(io, 'Checking', () => compileAll(host, on));
  const sign = options.begin ? signed({ ...options, reason: file }, peopleOf(compiled.checked), io) : undefined;
  if (options.begin && !sign) return EXIT.usage;
  const made = makeRun(file, bytes, ledger, compiled, on);
  const { run, refused, told } = made;
  const code = refused.length > 0 ? EXIT.errors : EXIT.good;
  if (options.json) {
    io.out(`${JSON.stringify(asJson(made), undefined, 2)}\n`);
    return code;
  }
  for (const finding of refused) io.err(`${findingText(finding)}\n\n`);
  io.out(
    `${counted(run.lines.length, 'order')}, ${counted(run.bodies, 'body', 'bodies')}; ${counted(refused.length, 'line')} not run. ` +
      `Set up ${told.changeovers.count} times, in the order of the list ${told.asListed.count}.\n`,
  );
  if (run.lines.length === 0) {
    io.err('The list has no order that can be run: nothing was written.\n');
    return EXIT.errors;
  }
  const out = options.out ?? `out/run/${on}`;
  const written = await writeForms(
    host,
    printRun(host, compiled, ledger, made),
    'the run',
    { pdf: options.pdf, out },
    io,
  );
  if (written !== EXIT.good) return written;
  return sign ? begin(made, sign, ledger, io) : code;
}

/** Entered last: what is in the ledger has its sheets. */
function begin({ run, refused }: RunMade, sign: Required<Signed>, ledger: Opened, io: Io): number {
  const releases = [...new Set(run.lines.map(({ by }) => by.of))];
  const done = enter(ledger.host, () => ({
    act: 'run',
    on: ledger.on,
    ...sign,
    by: releases.map(({ record: { model, revision } }) => ({ model, revision })),
    orders: run.lines.map(({ order }) => order.number),
  }));
  if ('failed' in done) {
    io.err(`${done.failed}\n`);
    return EXIT.errors;
  }
  io.out(`Entered: the run of ${ledger.on} has begun.\n`);
  return refused.length > 0 ? EXIT.errors : EXIT.good;
}

/** Its shape is a contract: fields are added, never renamed. */
function asJson({ refused, told }: RunMade): unknown {
  return { ...told, refused };
}
