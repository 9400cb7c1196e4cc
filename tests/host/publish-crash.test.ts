import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { publish } from '../../src/host/publish.ts';
import { folderFingerprint, treeFingerprint } from '../../src/host/tree.ts';
import { compilePublish } from './compiled.ts';
import { emptyFolder, readFiles, tree } from './folders.ts';

/** Publishes two trees of 60 files in turn; says 'ready' after the first, then each failure. */
const loop = (address: string): string => `
  import { publish } from ${JSON.stringify(address)};
  const [, , out, word, rounds] = process.argv;
  const tree = (text) => new Map(Array.from({ length: 60 }, (_, i) => ['m' + (i % 7) + '/card-' + i + '.html', text.repeat(300 + i)]));
  for (let i = 0; i < Number(rounds); i++) {
    const result = publish(out, tree(word + (i % 2)));
    if ('failed' in result) { console.log(result.failed); process.exit(1); }
    if (i === 0) console.log('ready');
  }`;

/** Gives up root's rights first, as root may write anywhere. */
const asUser = (address: string): string => `
  import { publish } from ${JSON.stringify(address)};
  if (process.getuid() === 0) { process.setgid(65534); process.setuid(65534); }
  console.log(JSON.stringify(publish(process.argv[2], new Map([['a', 'new']]))));`;

const bigTree = (text: string): ReadonlyMap<string, string> =>
  new Map(Array.from({ length: 60 }, (_, i) => [`m${i % 7}/card-${i}.html`, text.repeat(300 + i)] as const));

let code = '';
beforeAll(() => {
  code = mkdtempSync(join(tmpdir(), 'platen-test-code-'));
  const address = compilePublish(code);
  writeFileSync(join(code, 'loop.mjs'), loop(address));
  writeFileSync(join(code, 'as-user.mjs'), asUser(address));
});
afterAll(() => rmSync(code, { recursive: true, force: true }));

function publisher(out: string, word: string, rounds: number): ChildProcess {
  return spawn(process.execPath, [join(code, 'loop.mjs'), out, word, String(rounds)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}

describe('publishing in spite of', () => {
  it('kill -9 at any instant: what can be read is wholly one tree or the other', { timeout: 60_000 }, async () => {
    const out = emptyFolder();
    const whole = new Set(['old0', 'old1'].map((text) => treeFingerprint(bigTree(text))));
    let broken = 0;
    for (let round = 0; round < 30; round += 1) {
      const child = publisher(out, 'old', 100_000);
      await once(child.stdout ?? child, 'data');
      await wait(Math.random() * 40);
      child.kill('SIGKILL');
      await once(child, 'exit');
      expect(whole).toContain(folderFingerprint(join(out, 'cards')));
      if (readdirSync(join(out, '.builds')).length > 1) broken += 1;
    }
    // Most kills hit in the middle of the work, else this test shows nothing.
    expect(broken).toBeGreaterThan(10);
    publish(out, tree({ a: 'after' }));
    expect(readFiles(join(out, 'cards'))).toEqual({ a: 'after' });
    expect(readdirSync(join(out, '.builds'))).toHaveLength(1);
  });

  it('a second publisher at the same time: neither fails, and one tree is in force', { timeout: 60_000 }, async () => {
    const out = emptyFolder();
    const children = ['left', 'right', 'left'].map((word) => publisher(out, word, 40));
    const said = children.map(async (child) => {
      let text = '';
      child.stdout?.on('data', (part: Buffer) => (text += part.toString()));
      await once(child, 'close');
      return text;
    });
    expect(await Promise.all(said)).toEqual(['ready\n', 'ready\n', 'ready\n']);
    const whole = ['left0', 'left1', 'right0', 'right1'].map((text) => treeFingerprint(bigTree(text)));
    expect(whole).toContain(folderFingerprint(join(out, 'cards')));
    publish(out, tree({ a: 'after' }));
    expect(readdirSync(join(out, '.builds'))).toHaveLength(1);
  });

  it('a folder that may not be written to: a sentence, and the old cards', () => {
    const out = emptyFolder();
    mkdirSync(join(out, 'out'));
    publish(join(out, 'out'), tree({ a: 'old' }));
    for (const folder of ['out/.builds', 'out']) chmodSync(join(out, folder), 0o555);
    chmodSync(out, 0o755);
    const child = spawnSync(process.execPath, [join(code, 'as-user.mjs'), join(out, 'out')], { encoding: 'utf8' });
    for (const folder of ['out', 'out/.builds']) chmodSync(join(out, folder), 0o755);
    const path = join(out, 'out', 'cards');
    expect(JSON.parse(child.stdout)).toEqual({
      failed: `${path} was left as it was: the folder may not be written to.`,
    });
    expect(readFiles(path)).toEqual({ a: 'old' });
  });
});
