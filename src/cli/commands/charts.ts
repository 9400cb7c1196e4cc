/** platen charts [MODEL…]: forms for control charts, with what the readings so far come to. */
import type { Command } from 'commander';
import { compileAll, isError } from '../../compile.ts';
import { printChartForms } from '../../forms.ts';
import { busy } from '../busy.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { pick } from '../pick.ts';
import { writeForms } from '../write-forms.ts';

interface Options extends Common {
  readonly station?: string;
  readonly pdf: boolean;
  readonly out: string;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('charts')
    .description('print chart forms: a sheet for everything a station measures, with what its readings come to so far')
    .argument('[models...]', 'ids of models; all where none is named')
    .option('--station <station>', 'only the forms of this station')
    .option('--no-pdf', 'no PDF')
    .option('--out <dir>', 'where to write', 'out/charts')
    .action(async (models: string[], options: Options) => done(await charts(models, options, io)));
}

async function charts(names: readonly string[], options: Options, io: Io): Promise<number> {
  const host = io.host(options.root);
  const on = options.on ?? host.today();
  const whole = busy(io, 'Checking', () => compileAll(host, on));
  const models = pick(names, whole.models, io);
  if (!models) return EXIT.usage;
  const stopped = models.filter((model) => model.findings.some(isError)).map(({ id }) => id);
  const printed = printChartForms(host, { checked: whole.checked, models }, on, options.station);
  if (stopped.length > 0) io.err(`Has errors, see platen check: ${stopped.join(', ')}.\n`);
  if (printed.sheets.length === 0) {
    io.err('Nothing to chart: no check with limits there, or the plant gives no "capability" (models/plant/).\n');
    return stopped.length > 0 ? EXIT.errors : EXIT.usage;
  }
  const code = await writeForms(host, printed, 'chart forms', options, io);
  return stopped.length > 0 ? EXIT.errors : code;
}
