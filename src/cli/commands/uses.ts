/** platen uses NAME: where a cutter, jig, gauge, adhesive, species, finish is used. */
import type { Command } from 'commander';
import { compileAll } from '../../compile.ts';
import { offer } from '../../findings/nearest.ts';
import type { UseOfName } from '../../uses.ts';
import { plantNames, usesOf } from '../../uses.ts';
import { counted } from '../count.ts';
import { openReleases } from '../../releases.ts';
import type { Released } from '../../releases.ts';
import { busy } from '../busy.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('uses')
    .description('show where a row of the plant is used: lines, models, cards')
    .argument('<name>', 'a cutter, jig, gauge, adhesive, species, finish or any other row of the plant')
    .option('--json', 'as JSON')
    .action((name: string, options: Common & { json?: boolean }) => done(uses(name, options, io)));
}

function uses(name: string, options: Common & { json?: boolean }, io: Io): number {
  const compiled = busy(io, 'Reading', () => compileAll(io.host(options.root), options.on));
  const found = usesOf(compiled, name);
  if (found.length === 0) {
    io.err(`Nothing in the plant is called "${name}". ${offer(name, plantNames(compiled))}\n`);
    return EXIT.usage;
  }
  const opened = openReleases(io.host(options.root), options.on ?? io.host(options.root).today());
  if ('altered' in opened) io.err(`${opened.altered}\n`);
  const all = found.map((one) => ({ ...one, releases: 'altered' in opened ? [] : releasesWith(opened, one) }));
  if (options.json) io.out(`${JSON.stringify(all, undefined, 2)}\n`);
  else for (const one of all) io.out(`${[...lines(one), ...one.releases.map(releaseLine)].join('\n')}\n`);
  return EXIT.good;
}

interface InRelease {
  readonly release: string;
  readonly standing: string;
  readonly codes: readonly string[];
}

/** Released cards that the row went into, whatever became of them. */
const releasesWith = ({ known }: Released, { table, name }: UseOfName): readonly InRelease[] =>
  known.flatMap(({ record, released }) => {
    const codes = record.cards.filter(({ rows }) => rows.includes(`${table}.${name}`)).map(({ code }) => code);
    const release = `${record.model}@${record.revision}`;
    return codes.length === 0 ? [] : [{ release, standing: released.standing.is, codes }];
  });

const releaseLine = ({ release, standing, codes }: InRelease): string =>
  `  released ${release}, ${standing}: ${codes.join(', ')}`;

function lines({ table, name, at, plant, models }: UseOfName): string[] {
  const cards = models.reduce((sum, model) => sum + model.cards.length, 0);
  return [
    `${name}, of the ${table}: ${at}. ${counted(models.length, 'model')}, ${counted(cards, 'card')}.`,
    ...plant.map((one) => `  plant    ${one.at} ${one.id}`),
    ...models.flatMap((model) => [
      `  ${model.model}`,
      ...model.lines.map((one) => `    line   ${one.at} ${one.id}`),
      ...model.cards.map(
        ({ station, hand, code }) => `    card   ${code} ${station}${hand === 'left' ? ', left hand' : ''}`,
      ),
    ]),
  ];
}
