/** platen charts: what is written, and that a form says of the readings what they come to. */
import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { EXIT } from '../../src/cli/io.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { sample } from '../cases/workspace.ts';

async function charts(files: Record<string, string>, ...args: string[]) {
  const host = memoryHost(files);
  const said: string[] = [];
  const say = (text: string) => void said.push(text);
  const code = await run(['charts', ...args, '--no-pdf'], { out: say, err: say, host: () => host, watched: false });
  return { code, said: said.join(''), tree: host.published.get('out/charts') };
}
const textOf = (bytes: string | Uint8Array | undefined): string =>
  typeof bytes === 'string' ? bytes : new TextDecoder().decode(bytes);

test('a form for each check with limits, with what was read and its lines', async () => {
  const { code, said, tree } = await charts(sample(), 'tarn', '--station', 'sizing');
  expect(code, said).toBe(EXIT.good);
  expect([...tree!.keys()].filter((path) => path.endsWith('.html'))).toEqual([
    'tarn/sizing.html',
    'tarn/sizing-left.html',
  ]);
  const right = textOf(tree!.get('tarn/sizing.html'));
  expect(right.match(/<article/g)).toHaveLength(2);
  // The cap was read 25 times, in samples of five; the back never.
  expect(right).toMatch(/25<\/span> readings so far/);
  expect(right.match(/Nothing is on file yet/g)).toHaveLength(1);
  expect(right).toContain('thickness.part.cap.sized');
  expect(right.match(/stroke-dasharray/g)).toHaveLength(4);
  expect(textOf(tree!.get('tarn/sizing-left.html'))).not.toMatch(/stroke-dasharray/);
});

test('a plant that says nothing of samples has no forms, and says why', async () => {
  const files = sample();
  const plant = 'models/plant/plant.yaml';
  files[plant] = files[plant]!.replace(/, capability: \{[^}]*\}/, '');
  const { code, said, tree } = await charts(files, 'tarn', '--station', 'sizing');
  expect(code).toBe(EXIT.usage);
  expect(said).toContain('"capability"');
  expect(tree).toBeUndefined();
});
