import { test } from 'vitest';
import { writeFileSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { printAll } from '../../src/print/print.ts';
import { openPrinter } from '../../src/host/printer.ts';
import { openBrowser } from '../../src/host/browser.ts';
import { assets, input, ownWords, richCard, finding, line, plan, stack } from './fixture.ts';
test('look', async () => {
  const w = ownWords();
  console.log(w.findings);
  const small = richCard({
    key: { ...richCard().key, station: 'planing' },
    drawings: [{ ...plan, scale: 10, marks: plan.marks.filter((m) => m.kind !== 'dimension') }, stack],
    keyNumbers: richCard().keyNumbers.slice(0, 3),
    checks: richCard().checks.slice(0, 2),
    steps: richCard().steps.slice(0, 5),
    cautions: [
      { signal: 'danger', line: line('fixture.warn-hands') },
      { signal: 'notice', line: line('fixture.caution-dust') },
    ],
  });
  const left = richCard({ key: { ...richCard().key, hand: 'left' }, handLine: line('labels.left-hand') });
  const printer = await openPrinter(() => openBrowser(process.env));
  if ('missing' in printer) throw new Error(printer.missing);
  for (const paper of ['A4', 'Letter'] as const) {
    const i = input([richCard(), left, small]);
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
