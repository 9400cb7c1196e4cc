/** platen recompute: what released models would say with the plant and the formulas of today. */
import type { Command } from 'commander';
import { recompute } from '../../recompute.ts';
import type { Moved, Recomputed } from '../../recompute.ts';
import { hangs } from '../../release/state.ts';
import { offer } from '../../findings/nearest.ts';
import { formatNumber } from '../../units/format.ts';
import { busy } from '../busy.ts';
import { counted } from '../count.ts';
import type { Common, Io } from '../io.ts';
import { opened } from '../opened.ts';
import { EXIT } from '../io.ts';

type Options = Common & { json?: boolean; all?: boolean };

/** Numbers shown of one model, unless all are asked for. */
const MOST = 12;

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('recompute')
    .description(
      'compare released models with what they would say today: what a change of the plant moves, and by how much',
    )
    .argument('[releases...]', 'MODEL@REVISION; all that hang where none is named')
    .option('--all', 'every number that moved')
    .option('--json', 'as JSON')
    .action((releases: string[], options: Options) => done(compare(releases, options, io)));
}

/** 0 where nothing moved. */
function compare(names: readonly string[], options: Options, io: Io): number {
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const { host, on } = ledger;
  const all = ledger.known.map((one) => ({ name: `${one.record.model}@${one.record.revision}`, ...one }));
  const unknown = names.filter((name) => !all.some((one) => one.name === name));
  for (const name of unknown)
    io.err(
      `${name} was never released. ${offer(
        name,
        all.map((one) => one.name),
      )}\n`,
    );
  if (unknown.length > 0) return EXIT.usage;
  const chosen = all.filter(({ name, released }) => (names.length > 0 ? names.includes(name) : hangs(released)));
  const results = chosen.map(({ record }) => busy(io, 'Computing', () => recompute(host, record, on)));
  if (options.json) io.out(`${JSON.stringify(results.map(asJson), undefined, 2)}\n`);
  else for (const result of results) io.out(textOf(result, options.all === true));
  if (results.length === 0) io.out(`Nothing hangs on ${on}.\n`);
  return results.some(({ errors, moved, stations }) => errors.length + moved.length + stations.length > 0)
    ? EXIT.errors
    : EXIT.good;
}

const asJson = ({ release, errors, moved, stations }: Recomputed) => ({
  model: release.model,
  revision: release.revision,
  errors,
  stations,
  moved,
});

function textOf({ release, errors, moved, stations }: Recomputed, all: boolean): string {
  const name = `${release.model}@${release.revision}`;
  if (errors.length + moved.length + stations.length === 0) return `${name}: nothing moved.\n`;
  const shown = all ? moved : moved.slice(0, MOST);
  const rest = moved.length - shown.length;
  return [
    `${name}: ${counted(moved.length, 'number')} moved.`,
    ...errors.map((what) => `  it could not be released today: ${what}`),
    ...(stations.length > 0 ? [`  cards that would read otherwise: ${stations.join('; ')}`] : []),
    ...shown.map((one) => `  ${lineOf(one)}`),
    ...(rest > 0 ? [`  and ${rest} more: --all`] : []),
    '',
  ].join('\n');
}

function lineOf({ fact, was, now, by, ofTolerance }: Moved): string {
  const share = ofTolerance === undefined ? '' : `, ${formatNumber(ofTolerance, '%', 0)} % of its limits`;
  return `${fact}  ${was} → ${now}${by === undefined ? '' : `  (${by}${share})`}`;
}
