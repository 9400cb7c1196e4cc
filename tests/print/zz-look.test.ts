import { test } from 'vitest';
import { writeFileSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { printAll } from '../../src/print/print.ts';
import { openPrinter } from '../../src/host/printer.ts';
import { openBrowser } from '../../src/host/browser.ts';
import { assets, input, ownWords, richCard, finding, line } from './fixture.ts';
test('look', async () => {
  const w = ownWords();
  console.log(w.findings);
  const left = richCard({ key: { ...richCard().key, hand: 'left' }, handLine: line('labels.left-hand') });
  const printer = await openPrinter(() => openBrowser(process.env));
  if ('missing' in printer) throw new Error(printer.missing);
  for (const paper of ['A4', 'Letter'] as const) {
    const i = input([richCard(), left]);
    const out = printAll(
      {
        ...i,
        paper,
        models: [...i.models, { id: 'fell', title: 'Fell', revision: 'A', cards: [], findings: [finding] }],
      },
      assets(),
    );
    console.log(
      out.findings,
      [...out.files.keys()].join(' '),
      out.sheets.map((s) => s.name),
    );
    for (const [p, c] of out.files) {
      mkdirSync(dirname(`/tmp/look/${paper}/${p}`), { recursive: true });
      writeFileSync(`/tmp/look/${paper}/${p}`, c);
    }
    const pdfs = await printer.print(out.shell, out.sheets);
    if ('failed' in pdfs) throw new Error(pdfs.failed);
    for (const [p, c] of pdfs) {
      mkdirSync(dirname(`/tmp/look/${paper}/${p}`), { recursive: true });
      writeFileSync(`/tmp/look/${paper}/${p}`, c);
    }
  }
  await printer.close();
}, 60000);
