/** platen full-size [MODEL…]: templates at true size, to check by and to make patterns from. */
import type { Command } from 'commander';
import { Option } from 'commander';
import { compileAll, isError } from '../../compile.ts';
import { printFullSizes } from '../../printing.ts';
import { findingText, renderFinding } from '../../findings/render.ts';
import { unique } from '../../findings/unique.ts';
import { counted } from '../count.ts';
import { busy } from '../busy.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { addPaper } from '../paper.ts';
import { pick } from '../pick.ts';

interface Options extends Common {
  readonly hand?: 'right' | 'left';
  readonly paper?: 'A4' | 'Letter';
  readonly pdf: boolean;
  readonly out: string;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('full-size')
    .description('print templates at full size: each face worked as one SVG, and as tiles on PDF')
    .argument('[models...]', 'ids of models; all where none is named')
    .addOption(new Option('--hand <hand>', 'only this hand').choices(['right', 'left']))
    .addOption(new Option('--paper <paper>', 'other paper than the plant’s').choices(['A4', 'Letter']))
    .option('--no-pdf', 'no PDF')
    .option('--out <dir>', 'where to write', 'out/full-size')
    .action(async (models: string[], options: Options) => done(await fullSize(models, options, io)));
}

async function fullSize(names: readonly string[], options: Options, io: Io): Promise<number> {
  const host = io.host(options.root);
  const on = options.on ?? host.today();
  const whole = busy(io, 'Checking', () => compileAll(host, on));
  const asked = pick(names, whole.models, io);
  if (!asked) return EXIT.usage;
  // What may be wrong is not drawn: a pattern outlives the print it was made from.
  const { findings: ofPlant, workspace } = whole.checked;
  const errors = unique([...ofPlant, ...asked.flatMap(({ findings }) => findings)].filter(isError));
  for (const finding of errors) io.err(`${findingText(renderFinding(finding, workspace.texts))}\n\n`);
  const models = ofPlant.some(isError) ? [] : asked.filter(({ findings }) => !findings.some(isError));
  const stopped = asked.filter((model) => !models.includes(model)).map(({ id }) => id);
  if (stopped.length > 0) io.err(`Has errors, no template: ${stopped.join(', ')}.\n`);
  const printed = printFullSizes(host, { checked: whole.checked, models }, on, options);
  for (const finding of printed.findings) io.err(`${findingText(finding)}\n\n`);
  if (printed.findings.some(({ severity }) => severity === 'error')) {
    io.err('Nothing was written: mend the templates or words first.\n');
    return EXIT.errors;
  }
  const broken = errors.length > 0;
  if (printed.sheets.length === 0) {
    if (!broken) io.err(`No model here${options.hand ? ` for the ${options.hand} hand` : ''}.\n`);
    return broken ? EXIT.errors : EXIT.usage;
  }
  const tree = new Map(printed.files);
  const failed = options.pdf ? await addPaper(host, printed, tree, io) : undefined;
  const published = failed === undefined ? host.publish(options.out, tree) : { failed };
  if ('failed' in published) {
    io.err(`${published.failed}\n`);
    return EXIT.errors;
  }
  const made = counted(printed.sheets.length, 'face');
  io.out(`${made} at full size${published.changed ? '' : ', unchanged'}: ${published.path}\n`);
  return broken ? EXIT.errors : EXIT.good;
}
