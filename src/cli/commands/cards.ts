/** platen cards [MODEL…]: checks, and where nothing stops it compiles the cards to HTML and PDF. */
import { Option } from 'commander';
import type { Command } from 'commander';
import { languagesThere } from '../../assets.ts';
import { compileAll, isError, printCompiled } from '../../compile.ts';
import type { Compiled, Printed } from '../../compile.ts';
import { findingText, renderFinding } from '../../findings/render.ts';
import type { RenderedFinding } from '../../findings/render.ts';
import type { PrintWish } from '../../plant-texts.ts';
import { changesInForce, openReleases } from '../../releases.ts';
import { unique } from '../../findings/unique.ts';
import { counted } from '../count.ts';
import { busy } from '../busy.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { pick } from '../pick.ts';
import { releasedCards } from '../released-cards.ts';
import { addPaper } from '../paper.ts';

interface Options extends Common {
  readonly station?: string;
  readonly pdf: boolean;
  readonly out?: string;
  /** true: all that hang. */
  readonly released?: string | true;
  readonly language?: string;
  readonly paper?: string;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('cards')
    .description('compile the cards: HTML, SVG, JSON, and PDF where there is a browser')
    .argument('[models...]', 'ids of models; all where none is named')
    .option('--station <station>', 'only the cards of this station')
    .option('--language <languages>', 'in this language, or in these (en,es), whatever the plant says')
    .addOption(new Option('--paper <paper>', 'on this paper, whatever the plant says').choices(['A4', 'Letter']))
    .option('--no-pdf', 'no PDF')
    .option(
      '--out <dir>',
      'where to write; out/ for all, out/part/ for a part, so that a part never takes the place of the whole',
    )
    .option('--released [release]', 'the released cards as they were stored: all that hang, or those of MODEL@REVISION')
    .action(async (models: string[], options: Options) =>
      done(await (options.released === undefined ? cards(models, options, io) : releasedCards(models, options, io))),
    );
}

async function cards(names: readonly string[], options: Options, io: Io): Promise<number> {
  const host = io.host(options.root);
  const on = options.on ?? host.today();
  const wish = wishOf(options, languagesThere(host));
  if ('refused' in wish) {
    io.err(`${wish.refused}\n`);
    return EXIT.usage;
  }
  const whole = busy(io, 'Checking', () => compileAll(host, on));
  if (whole.models.length === 0) {
    for (const finding of whole.checked.findings)
      io.err(`${findingText(renderFinding(finding, whole.checked.workspace.texts))}\n\n`);
    io.err(
      'There is no model here, and nothing was written: run platen in the folder that holds models/, or name it with --root.\n',
    );
    return EXIT.errors;
  }
  const compiled = part(whole, names, options.station, io);
  if (!compiled) return EXIT.usage;
  const releases = openReleases(host, on);
  if ('altered' in releases) io.err(`${releases.altered} What changed since a release is not shown.\n`);
  const changes = 'altered' in releases ? new Map() : changesInForce(releases, compiled);
  const printed = printCompiled(host, compiled, on, wish, changes);
  const findings = tell(compiled, printed, io);
  if (printed.findings.some((finding) => finding.severity === 'error')) {
    // A card with a gap in its words or blocks looks finished and is not: the cards there stay as they are.
    io.err('Nothing was written: mend the templates or words first.\n');
    return EXIT.errors;
  }
  const tree = new Map(printed.files);
  if (options.pdf) {
    const failed = await addPaper(host, printed, tree, io);
    if (failed !== undefined) {
      io.err(`${failed}\n`);
      return EXIT.errors;
    }
  }
  const asWritten = compiled === whole && Object.keys(wish).length === 0;
  const target = options.out ?? (asWritten ? 'out' : 'out/part');
  const published = host.publish(target, tree);
  if ('failed' in published) {
    io.err(`${published.failed}\n`);
    return EXIT.errors;
  }
  const made = compiled.models.reduce((sum, model) => sum + model.cards.length, 0);
  const stopped = compiled.models.filter((model) => model.findings.some(isError)).map(({ id }) => id);
  io.out(
    `${counted(made, 'card')} of ${counted(compiled.models.length, 'model')}${published.changed ? '' : ', unchanged'}: open ${published.path}/index.html\n`,
  );
  if (stopped.length > 0) io.out(`No valid card: ${stopped.join(', ')}.\n`);
  return findings.some((finding) => finding.severity === 'error') ? EXIT.errors : EXIT.good;
}

/** Paper and languages asked for. */
function wishOf({ language, paper }: Options, there: readonly string[]): PrintWish | { readonly refused: string } {
  const languages = language?.split(',').map((one) => one.trim());
  const unknown = languages?.find((one) => !there.includes(one));
  if (unknown !== undefined)
    return { refused: `There are no words for the language "${unknown}". There is: ${there.join(', ')}.` };
  return { ...(languages ? { languages } : {}), ...(paper === 'A4' || paper === 'Letter' ? { paper } : {}) };
}

/** The models and the station asked for; the whole where nothing is named. */
function part(whole: Compiled, names: readonly string[], station: string | undefined, io: Io): Compiled | undefined {
  const models = pick(names, whole.models, io);
  if (!models) return undefined;
  const known = whole.sheets.map((sheet) => sheet.station.id);
  if (station !== undefined && !known.includes(station)) {
    io.err(`No model passes a station "${station}". There is: ${known.join(', ')}.\n`);
    return undefined;
  }
  if (names.length === 0 && station === undefined) return whole;
  const at = (id: string) => station === undefined || id === station;
  const picked = new Set(models.map((model) => model.id));
  return {
    ...whole,
    models: models.map((model) => ({ ...model, cards: model.cards.filter(({ card }) => at(card.key.station)) })),
    sheets: whole.sheets
      .filter((sheet) => at(sheet.station.id))
      .map((sheet) => ({ ...sheet, rows: sheet.rows.filter((row) => picked.has(row.key.model)) })),
  };
}

function tell(compiled: Compiled, printed: Printed, io: Io): readonly RenderedFinding[] {
  const { checked, models } = compiled;
  // Models on one base meet the same mistake of it: said once.
  const own = unique([...checked.findings, ...models.flatMap((model) => model.findings)]);
  const findings = [...own.map((finding) => renderFinding(finding, checked.workspace.texts)), ...printed.findings];
  for (const finding of findings) io.err(`${findingText(finding)}\n\n`);
  return findings;
}
