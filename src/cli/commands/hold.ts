/** platen hold NAME: a model or a row of the plant is not to be used from now; lifted by name. */
import type { Command } from 'commander';
import { compileAll } from '../../compile.ts';
import { namesOf } from '../../facts/row.ts';
import { offer } from '../../findings/nearest.ts';
import { enter } from '../../release/enter.ts';
import { hangingOn } from '../../release/wall.ts';
import type { Common, Io } from '../io.ts';
import { opened } from '../opened.ts';
import { EXIT } from '../io.ts';
import { peopleOf, signed } from '../ledger-options.ts';
import type { Signed } from '../ledger-options.ts';

interface Options extends Common, Signed {
  readonly lot?: string;
  readonly lift?: boolean;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('hold')
    .description('a model, cutter, jig, gauge, adhesive or any row of the plant is not to be used from now')
    .argument('<name>', 'id of a model or of a row of the plant')
    .option('--lot <lot>', 'only that lot of it')
    .option('--reason <text>', 'why')
    .option('--name <name>', 'who, as the plant writes it')
    .option('--lift', 'it may be used again')
    .action((name: string, options: Options) => done(hold(name, options, io)));
}

function hold(name: string, options: Options, io: Io): number {
  const host = io.host(options.root);
  const on = options.on ?? host.today();
  const compiled = compileAll(host, on);
  const tables = tablesOf(compiled, name);
  if (tables.length !== 1) {
    const what = tables.length === 0 ? `Nothing is called "${name}".` : `"${name}" is in ${tables.join(' and ')}.`;
    io.err(
      `${what} ${tables.length === 0 ? offer(name, everyName(compiled)) : 'Give one of them another name first.'}\n`,
    );
    return EXIT.usage;
  }
  const by = signed(options, peopleOf(compiled.checked), io);
  if (!by) return EXIT.usage;
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const [table] = tables as [string];
  const lot = options.lot === undefined ? {} : { lot: options.lot };
  const own = ledger.state.holds.filter((one) => one.table === table && one.held === name);
  // The whole may be held beside a lot of it, and is lifted with all its lots.
  const standing = own.some((one) => one.lot === options.lot || (options.lift && options.lot === undefined));
  if (options.lift ? !standing : standing) {
    io.err(`${name} is ${options.lift ? 'not' : 'already'} held on ${on}.\n`);
    return EXIT.errors;
  }
  const done = enter(host, () => ({ act: options.lift ? 'lift' : 'hold', on, ...by, table, held: name, ...lot }));
  if ('failed' in done) {
    io.err(`${done.failed}\n`);
    return EXIT.errors;
  }
  return tell(name, options, on, io);
}

/** The cards it touches: to be pulled, or to hang again. */
function tell(name: string, options: Options, on: string, io: Io): number {
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const what = options.lot === undefined ? name : `${name} ${options.lot}`;
  const up = hangingOn(ledger.known, ledger.state);
  if (options.lift) {
    const still = up.filter(({ holds }) => holds.length > 0).length;
    io.out(
      `${what} may be used again. ${still === 0 ? 'No card is held.' : `Cards still held for other things: ${still}.`}\n`,
    );
    return EXIT.good;
  }
  const held = up.filter(({ holds }) => holds.some((one) => one.held === name && one.lot === options.lot));
  io.out(`${what} is held from ${on}. Cards that hang and ask for it: ${held.length}.\n`);
  for (const { card, title } of held)
    io.out(`  pull or mark  ${card.code}  ${card.station}, ${title}${card.key.hand === 'left' ? ', left hand' : ''}\n`);
  return EXIT.good;
}

type Compiled = ReturnType<typeof compileAll>;

/** Sections whose rows nobody holds in his hand. */
const NO_THINGS: readonly string[] = ['plant', 'stations', 'lines', 'grades', 'reworks'];

/** `model`, or the section of the plant a row of that name is in. */
function tablesOf({ checked }: Compiled, name: string): readonly string[] {
  const tables = Object.entries(checked.workspace.plant).filter(
    ([, rows]) => !Array.isArray(rows) && namesOf(rows as object).includes(name),
  );
  const models = checked.models.some(({ id }) => id === name) ? ['model'] : [];
  return [...models, ...tables.map(([table]) => table).filter((table) => !NO_THINGS.includes(table))];
}

const everyName = ({ checked }: Compiled): readonly string[] => [
  ...checked.models.map(({ id }) => id),
  ...Object.entries(checked.workspace.plant).flatMap(([table, rows]) =>
    Array.isArray(rows) || NO_THINGS.includes(table) ? [] : namesOf(rows as object),
  ),
];
