/** platen first-piece MODEL: reports to fill in when a station was set up, before the second piece is begun. */
import { Option } from 'commander';
import type { Command } from 'commander';
import { printFirstPieceForms } from '../../forms.ts';
import { formCards } from '../form-cards.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { writeForms } from '../write-forms.ts';

interface Options extends Common {
  readonly station?: string;
  readonly hand?: 'right' | 'left';
  readonly pdf: boolean;
  readonly out: string;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('first-piece')
    .description('print first-piece reports: every check of a station, its set-up, and who lets the run go on')
    .argument('<model>', 'id of a model')
    .option('--station <station>', 'only the report of this station')
    .addOption(new Option('--hand <hand>', 'one hand; all it is made in where not given').choices(['right', 'left']))
    .option('--no-pdf', 'no PDF')
    .option('--out <dir>', 'where to write', 'out/first-piece')
    .action(async (model: string, options: Options) => done(await firstPiece(model, options, io)));
}

async function firstPiece(model: string, options: Options, io: Io): Promise<number> {
  const source = formCards(model, '', options, io);
  if (typeof source === 'number') return source;
  const { host, on } = source.ledger;
  const { station, hand } = options;
  const made = printFirstPieceForms(host, source.compiled, source, on, {
    ...(station === undefined ? {} : { station }),
    ...(hand ? { hand } : {}),
  });
  if ('refused' in made) {
    io.err(`${model}: ${made.refused}\n`);
    return EXIT.usage;
  }
  return await writeForms(host, made, 'first-piece reports', options, io);
}
