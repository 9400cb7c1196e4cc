/** platen diff [OLD] [NEW]: what changed, at which station, by how much, and what becomes of bodies under way. */
import type { Command } from 'commander';
import { noticeOf } from '../../diff/notice.ts';
import { findingText } from '../../findings/render.ts';
import { folderAndName } from '../../host/paths.ts';
import { noticeJson, noticeText, printNotice, toldOf } from '../../notices.ts';
import { addPaper } from '../paper.ts';
import { counted } from '../count.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { openSides } from '../sides.ts';
import type { Sides } from '../sides.ts';

interface Options extends Common {
  readonly json?: boolean;
  readonly html?: string;
  readonly pdf?: string;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('diff')
    .description(
      'what changed between two states, by station: numbers, limits, tools, steps, checks, and bodies under way',
    )
    .argument('[old]', 'MODEL as its spec stands, MODEL@REVISION, "released", a .yaml file, or a folder')
    .argument('[new]', 'the same; where it is not given, the release in force of OLD is held against its spec')
    .option('--json', 'as JSON')
    .option('--html <file>', 'the change notice as a page of its own')
    .option('--pdf <file>', 'the change notice on paper')
    .action(async (old: string | undefined, now: string | undefined, options: Options) =>
      done(await diff(old, now, options, io)),
    );
}

async function diff(first: string | undefined, second: string | undefined, options: Options, io: Io): Promise<number> {
  const sides = openSides(first, second, options, io);
  if (typeof sides === 'number') return sides;
  const both = [...sides.old.errors, ...sides.new.errors];
  // What both sides have of the plant is wrong once.
  const errors = both.filter(
    (one, i) => both.findIndex(({ where, what }) => where === one.where && what === one.what) === i,
  );
  for (const error of errors) io.err(`${findingText(error)}\n\n`);
  if (errors.length > 0) io.err(`${counted(errors.length, 'error')}: what has one is not compared.\n`);
  const [before, after] = [sides.old.side, sides.new.side];
  if (errors.length > 0 && (before.models.length === 0 || after.models.length === 0)) return EXIT.errors;
  const notice = noticeOf(before, after);
  const told = toldOf(notice, before, after);
  if (options.json) io.out(`${JSON.stringify(noticeJson(sides.host, sides.checked, notice), undefined, 2)}\n`);
  else io.out(noticeText(sides.host, sides.checked, told));
  const failed = await written(sides, told, options, io);
  if (failed !== undefined) {
    io.err(`${failed}\n`);
    return EXIT.errors;
  }
  return errors.length > 0 ? EXIT.errors : EXIT.good;
}

/** Into the files that were asked for, each whole or not at all; what fails is returned. */
async function written(
  { host, checked, on }: Sides,
  told: Parameters<typeof printNotice>[2],
  { html, pdf }: Options,
  io: Io,
): Promise<string | undefined> {
  if (html === undefined && pdf === undefined) return undefined;
  const printed = printNotice(host, checked, told, on);
  for (const finding of printed.findings) io.err(`${findingText(finding)}\n\n`);
  if (printed.findings.some(({ severity }) => severity === 'error'))
    return 'No notice was written: mend the templates or words first.';
  const tree = new Map(printed.files);
  if (pdf !== undefined) {
    const failed = await addPaper(host, printed, tree, io);
    if (failed !== undefined) return failed;
  }
  for (const [file, made] of [[html, 'change-notice.html'] as const, [pdf, 'change-notice.pdf'] as const]) {
    const content = tree.get(made);
    if (file === undefined || content === undefined) continue;
    const { folder, name } = folderAndName(file);
    const put = io.host(folder).replace(name, content);
    if ('failed' in put) return put.failed;
    io.err(`Written: ${file}\n`);
  }
  return undefined;
}
