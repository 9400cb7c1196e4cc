/** platen check [MODEL…]: findings. */
import type { Command } from 'commander';
import { checkAll, isError } from '../../compile.ts';
import type { Finding } from '../../findings/finding.ts';
import { findingText, renderFinding } from '../../findings/render.ts';
import { unique } from '../../findings/unique.ts';
import { counted } from '../count.ts';
import { busy } from '../busy.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { pick } from '../pick.ts';

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('check')
    .description('check models and say what is wrong, where, why it matters and what mends it')
    .argument('[models...]', 'ids of models; all where none is named')
    .option('--json', 'findings as JSON')
    .action((names: string[], options: Common & { json?: boolean }) => done(check(names, options, io)));
}

function check(names: readonly string[], options: Common & { json?: boolean }, io: Io): number {
  const checked = busy(io, 'Checking', () => checkAll(io.host(options.root), options.on));
  const picked = pick(names, checked.models, io);
  if (!picked) return EXIT.usage;
  // Models on one base meet the same mistake of it: said once.
  const findings = unique([...checked.findings, ...picked.flatMap((model) => model.findings)]);
  const owner = (finding: Finding) => picked.find((model) => model.findings.includes(finding))?.id ?? null;
  const shown = findings.map((finding) => renderFinding(finding, checked.workspace.texts));
  const errors = findings.filter(isError).length;
  if (options.json) {
    const models = picked.map(({ id, revision }) => ({ model: id, revision }));
    const owned = shown.map((one, i) => ({ model: owner(findings[i]!), ...one }));
    const cautions = findings.length - errors;
    io.out(`${JSON.stringify({ models, errors, cautions, findings: owned }, undefined, 2)}\n`);
  } else {
    for (const finding of shown) io.out(`${findingText(finding)}\n\n`);
    io.out(
      `${counted(picked.length, 'model')} checked: ${counted(errors, 'error')}, ${counted(findings.length - errors, 'caution')}.\n`,
    );
  }
  return errors > 0 ? EXIT.errors : EXIT.good;
}
