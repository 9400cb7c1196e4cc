#!/usr/bin/env node
/** The command line. Each command is a file of commands/; this one reads the arguments and answers with an exit code. */
import { Command, CommanderError } from 'commander';
import { workspaceHost } from '../host/workspace.ts';
import { all } from './commands/all.generated.ts';
import { EXIT } from './io.ts';
import type { Io } from './io.ts';

export async function run(argv: readonly string[], io: Io): Promise<number> {
  const program = new Command('platen')
    .description('Compiles spec sheets of solid-body instrument models into cards for the stations that make them.')
    .exitOverride()
    .configureOutput({ writeOut: io.out, writeErr: io.err })
    .showHelpAfterError('(platen --help lists the commands)');
  let code: number = EXIT.good;
  for (const add of all) {
    add(program, io, (result) => {
      code = result;
    });
  }
  for (const command of program.commands) {
    command
      .exitOverride()
      .configureOutput({ writeOut: io.out, writeErr: io.err })
      .option('--root <dir>', 'the workspace, the folder that holds models/', '.')
      .option('--on <date>', 'the day to answer for, YYYY-MM-DD; today where not given');
  }
  try {
    await program.parseAsync([...argv], { from: 'user' });
  } catch (stop) {
    if (!(stop instanceof CommanderError)) throw stop;
    return stop.exitCode === 0 ? EXIT.good : EXIT.usage;
  }
  return code;
}

const io: Io = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  watched: process.stderr.isTTY,
  host: (root) => workspaceHost(root),
};
process.exitCode = await run(process.argv.slice(2), io);
