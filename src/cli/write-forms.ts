/** What commands for forms have in common: mistakes of templates told, paper made, the tree published, one line said. */
import type { Printed } from '../compile.ts';
import { findingText } from '../findings/render.ts';
import type { Host } from '../host/host.ts';
import { counted } from './count.ts';
import type { Io } from './io.ts';
import { EXIT } from './io.ts';
import { addPaper } from './paper.ts';

export interface FormOptions {
  readonly pdf: boolean;
  readonly out: string;
}

/** `what`: of which forms, as in `chart forms`. Nothing is written over a mistake of the templates: a form with a gap looks whole. */
export async function writeForms(
  host: Host,
  printed: Printed,
  what: string,
  { pdf, out }: FormOptions,
  io: Io,
): Promise<number> {
  for (const finding of printed.findings) io.err(`${findingText(finding)}\n\n`);
  if (printed.findings.some(({ severity }) => severity === 'error')) {
    io.err('Nothing was written: mend the templates or words first.\n');
    return EXIT.errors;
  }
  const tree = new Map(printed.files);
  const failed = pdf ? await addPaper(host, printed, tree, io) : undefined;
  const published = failed === undefined ? host.publish(out, tree) : { failed };
  if ('failed' in published) {
    io.err(`${published.failed}\n`);
    return EXIT.errors;
  }
  const { changed, path } = published;
  io.out(`${counted(printed.sheets.length, 'file')} of ${what}${changed ? '' : ', unchanged'}: ${path}\n`);
  return EXIT.good;
}
