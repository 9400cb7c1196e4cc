/** A run of the sample workspace as it is printed: orders of several bodies, one let through by the lead, two refused. */
import { expect } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { compileAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { openReleases } from '../../src/releases.ts';
import type { Released } from '../../src/releases.ts';
import { makeRun, printRun } from '../../src/run-sheets.ts';
import { sample } from '../cases/workspace.ts';
import { longer } from './measure/long-names.ts';
import type { Names, Paper } from './measure/editions.ts';

const ON = '2026-11-27';
const LIST = `order,model,finish,grade,hand,quantity,due,lead
2001,tarn,amber-shaded,fine,right,6,2026-12-01,
2002,tarn,black-opaque,exhibition,left,1,,T. Vael
2003,tern,amber-shaded,,right,1,,
WX-2004.77,tarn,blue-clear,select,left,2,2026-12-02,
2005,tarn,amber-shaded,plain,right,1,,
`;

export const BODIES = [
  '2001-1',
  '2001-2',
  '2001-3',
  '2001-4',
  '2001-5',
  '2001-6',
  '2002',
  'WX-2004.77-1',
  'WX-2004.77-2',
];

export async function printedRun(paper: Paper, language: string, names: Names = 'as they are') {
  const files = sample();
  const plant = 'models/plant/plant.yaml';
  files[plant] = files[plant]!.replace(
    /^plant: \{ /m,
    `plant: { people: [T. Vael], shift: 7.5 h, languages: [${language}], `,
  ).replace('paper: A4', `paper: ${paper}`);
  if (names !== 'as they are')
    for (const file of [plant, 'models/tarn.yaml'])
      files[file] = files[file]!.replace(
        /\b((?:title|name): )([^,}#\n]*[^,}#\n ])/g,
        (_, key: string, name: string) => key + longer(name),
      );
  const host = memoryHost(files);
  const told: string[] = [];
  const io = { out: () => undefined, err: (text: string) => told.push(text), watched: false, host: () => host };
  const release = ['release', 'tarn', '--reason', 'first', '--name', 'T. Vael', '--on', ON];
  expect([await run(release, io), told]).toEqual([0, []]);
  const [compiled, opened] = [compileAll(host, ON), openReleases(host, ON) as Released];
  const made = makeRun('orders.csv', new TextEncoder().encode(LIST), opened, compiled, ON);
  const output = printRun(host, compiled, opened, made);
  expect(output.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return { made, output };
}
