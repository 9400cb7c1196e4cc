/** platen traveller MODEL: what goes with an order through the stations, to compare codes, write readings and sign. */
import { InvalidArgumentError, Option } from 'commander';
import type { Command } from 'commander';
import { printTravellerForms, travellerFor } from '../../forms.ts';
import { formCards } from '../form-cards.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { writeForms } from '../write-forms.ts';

interface Options extends Common {
  readonly order: string;
  readonly finish?: string;
  readonly hand: 'right' | 'left';
  readonly pair?: string;
  readonly grade?: string;
  readonly quantity: number;
  readonly pdf: boolean;
  readonly out?: string;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('traveller')
    .description('print the traveller of an order: the codes of its cards, boxes for readings, names and remarks')
    .argument('<model>', 'id of a model')
    .option('--order <number>', 'number of the order; left out or empty, a box to write it in', '')
    .option('--finish <finish>', 'id of a finish of the model')
    .addOption(new Option('--hand <hand>', 'the hand').choices(['right', 'left']).default('right'))
    .option('--pair <id>', 'what cap and back are marked with')
    .option('--grade <steps>', 'steps the wood is graded by, with commas between them')
    .option('--quantity <bodies>', 'bodies of the order', bodies, 1)
    .option('--no-pdf', 'no PDF')
    .option('--out <dir>', 'where to write; a folder of out/travellers/ for each order where not given')
    .action(async (model: string, options: Options) => done(await traveller(model, options, io)));
}

function bodies(text: string): number {
  if (/^[1-9]\d{0,3}$/.test(text)) return Number(text);
  throw new InvalidArgumentError('It is a number of bodies, one or more.');
}

async function traveller(model: string, options: Options, io: Io): Promise<number> {
  const { order, hand, finish, pair, grade, quantity } = options;
  const number = order.trim();
  const source = formCards(model, number, options, io);
  if (typeof source === 'number') return source;
  const made = travellerFor(source, source.compiled, {
    number,
    hand,
    quantity,
    ...(finish === undefined ? {} : { finish }),
    ...(pair === undefined ? {} : { pair }),
    ...(grade === undefined ? {} : { grade }),
  });
  if ('refused' in made) {
    io.err(`${model}: ${made.refused}\n`);
    return EXIT.usage;
  }
  const { host, on } = source.ledger;
  const printed = printTravellerForms(host, source.compiled, [made], on);
  const out = options.out ?? `out/travellers/${made.name}`;
  return await writeForms(host, printed, 'travellers', { pdf: options.pdf, out }, io);
}
