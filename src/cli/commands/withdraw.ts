/** platen withdraw MODEL@REVISION: no body is made by that release any more, and its codes say so. */
import type { Command } from 'commander';
import { checkAll } from '../../compile.ts';
import { enter } from '../../release/enter.ts';
import { offer } from '../../findings/nearest.ts';
import type { Common, Io } from '../io.ts';
import { opened } from '../opened.ts';
import { EXIT } from '../io.ts';
import { peopleOf, signed } from '../ledger-options.ts';
import type { Signed } from '../ledger-options.ts';

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('withdraw')
    .description('take a release back: its codes answer do not use')
    .argument('<release>', 'MODEL@REVISION')
    .option('--reason <text>', 'why')
    .option('--name <name>', 'who, as the plant writes it')
    .action((release: string, options: Common & Signed) => done(withdraw(release, options, io)));
}

function withdraw(release: string, options: Common & Signed, io: Io): number {
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const { host, on } = ledger;
  const names = ledger.state.releases.map(({ model, revision }) => `${model}@${revision}`);
  const found = ledger.state.releases[names.indexOf(release)];
  if (!found) {
    io.err(`${release} was never released. ${offer(release, names)}\n`);
    return EXIT.usage;
  }
  if (found.standing.is === 'withdrawn') {
    io.err(`${release} is withdrawn already, since ${found.standing.act.on}.\n`);
    return EXIT.errors;
  }
  const by = signed(options, peopleOf(checkAll(host, on)), io);
  if (!by) return EXIT.usage;
  const { model, revision } = found;
  const done = enter(host, () => ({ act: 'withdraw', on, ...by, model, revision }));
  if ('failed' in done) {
    io.err(`${done.failed}\n`);
    return EXIT.errors;
  }
  io.out(`${release} is withdrawn. What must come down: platen posted.\n`);
  return EXIT.good;
}
