/** Paper for a command: PDFs of what it printed, beside its other files. */
import type { Printed } from '../compile.ts';
import type { Host } from '../host/host.ts';
import { joinPdf } from '../host/join-pdf.ts';
import type { Io } from './io.ts';
import { progress } from './progress.ts';

/** PDFs into the tree. With no browser the HTML stands alone and one line says how to get one; what fails is returned. */
export async function addPaper(
  host: Host,
  { shell, sheets, piles = [] }: Pick<Printed, 'shell' | 'sheets'> & Partial<Pick<Printed, 'piles'>>,
  tree: Map<string, string | Uint8Array>,
  io: Io,
): Promise<string | undefined> {
  const printer = await host.openPrinter();
  if ('missing' in printer) {
    io.err(`${printer.missing}\n`);
    return undefined;
  }
  const bar = progress(io, 'PDF', sheets.length);
  const result = await printer.print(shell, sheets, bar.step);
  await printer.close();
  bar.end();
  if ('failed' in result) return result.failed;
  for (const [path, bytes] of result) tree.set(path, bytes);
  for (const pile of piles)
    tree.set(
      pile.name,
      await joinPdf(
        pile,
        pile.of.map((name) => result.get(name)!),
      ),
    );
  return undefined;
}
