/** platen new MODEL [--based-on BASE]: a spec to start from, that passes at once. */
import type { Command } from 'commander';
import { startModel } from '../../start.ts';
import { busy } from '../busy.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { findingText, renderFinding } from '../../findings/render.ts';

type Options = Common & { basedOn?: string };

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('new')
    .description('write a commented spec to start from, that passes at once')
    .argument('<model>', 'id of the new model: lower-case letters, digits and hyphens')
    .option('--based-on <base>', 'a model or base file to take over from, relative to models/, without .yaml')
    .action((model: string, options: Options) => done(start(model, options, io)));
}

function start(id: string, { root, on, basedOn }: Options, io: Io): number {
  const host = io.host(root);
  const started = busy(io, 'Starting', () => startModel(host, id, basedOn, on ?? host.today()));
  if ('refused' in started) {
    io.err(`${started.refused}\n`);
    return started.usage ? EXIT.usage : EXIT.errors;
  }
  const { path, findings, texts } = started;
  for (const finding of findings) io.out(`${findingText(renderFinding(finding, texts))}\n\n`);
  io.out(
    `${path} is written${findings.length === 0 ? ' and passes' : ''}. Next: change it, and run platen check ${id}.\n`,
  );
  return findings.length === 0 ? EXIT.good : EXIT.errors;
}
