/** platen full-size: what is written, and when nothing is. */
import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { EXIT } from '../../src/cli/io.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { edited, sample } from '../cases/workspace.ts';

async function fullSize(files: Record<string, string>, ...args: string[]) {
  const host = memoryHost(files);
  const said: string[] = [];
  const say = (text: string) => void said.push(text);
  const code = await run(['full-size', ...args, '--no-pdf'], { out: say, err: say, host: () => host, watched: false });
  return { code, said: said.join(''), tree: host.published.get('out/full-size') };
}

test('a picture and a page for each face of each hand', async () => {
  const { code, said, tree } = await fullSize(sample(), 'tarn');
  expect(code, said).toBe(EXIT.good);
  const names = [...tree!.keys()].filter((path) => path.startsWith('tarn/'));
  expect(names.toSorted()).toEqual(
    ['back', 'back-left', 'top', 'top-left'].flatMap((face) => [`tarn/${face}.html`, `tarn/${face}.svg`]).toSorted(),
  );
  expect(said).toContain('4 faces at full size');
});

test('only the hand asked for', async () => {
  const { code, tree } = await fullSize(sample(), 'tarn', '--hand', 'left');
  expect(code).toBe(EXIT.good);
  expect([...tree!.keys()].filter((path) => path.endsWith('.svg'))).toEqual([
    'tarn/top-left.svg',
    'tarn/back-left.svg',
  ]);
});

test('an error stops it, with the finding', async () => {
  const files = edited([{ file: 'models/tarn.yaml', find: 'title: Tarn\n', replace: 'title: Tarn\ntitel: Tarn\n' }]);
  const { code, said, tree } = await fullSize(files, 'tarn');
  expect(code).toBe(EXIT.errors);
  expect(said).toContain('titel');
  expect(said).toContain('models/tarn.yaml:');
  expect(said).toContain('Has errors, no template: tarn.');
  expect(tree).toBeUndefined();
});

test('words that are missing stop it: a template with a gap looks finished', async () => {
  const { code, said, tree } = await fullSize(
    { ...sample(), 'templates/full-size.hbs': '{{say "full-size.nowhere"}}' },
    'tarn',
  );
  expect(code).toBe(EXIT.errors);
  expect(said).toContain('Nothing was written');
  expect(tree).toBeUndefined();
});

test.each([[['--hand', 'both']], [['--paper', 'A3']], [['tarm']]])('%s is a slip on the command line', async (args) => {
  const { code, tree } = await fullSize(sample(), ...args);
  expect(code).toBe(EXIT.usage);
  expect(tree).toBeUndefined();
});
