/** The command line as a function: each command is a file of commands/; this one reads the arguments and answers with an exit code. */
import { Command, CommanderError } from 'commander';
import { all } from './commands/all.generated.ts';
import { day } from './day.ts';
import { EXIT } from './io.ts';
import type { Io } from './io.ts';

/** Whatever a user does ends in one of the documented exit codes; what is thrown is a bug of the program, and says so. */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  try {
    return await answer(argv, io);
  } catch (thrown) {
    const error = thrown instanceof Error ? thrown : new Error(String(thrown));
    io.err(`This is a bug of Platen, not of your files; please report it with these lines.\n${error.stack}\n`);
    return EXIT.bug;
  }
}

async function answer(argv: readonly string[], io: Io): Promise<number> {
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
      .option('--on <date>', 'the day to answer for, YYYY-MM-DD; today where not given', day);
  }
  try {
    await program.parseAsync([...argv], { from: 'user' });
  } catch (stop) {
    if (!(stop instanceof CommanderError)) throw stop;
    return stop.exitCode === 0 ? EXIT.good : EXIT.usage;
  }
  return code;
}
