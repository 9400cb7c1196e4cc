import { chmodSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { browserAt, installedBrowsers } from '../../src/host/browser-candidates.ts';
import { openBrowser } from '../../src/host/browser.ts';
import { emptyFolder, writeFiles } from './folders.ts';

describe('installedBrowsers', () => {
  it('finds programs on the search path, the small one first, each once', () => {
    const folder = emptyFolder();
    const names = ['google-chrome', 'chromium', 'chromium-headless-shell'];
    writeFiles(
      folder,
      Object.fromEntries(names.flatMap((name) => [`a/${name}`, `b/${name}`]).map((path) => [path, ''])),
    );
    for (const name of names) for (const part of ['a', 'b']) chmodSync(join(folder, part, name), 0o755);
    mkdirSync(join(folder, 'a', 'chromium-browser')); // a folder isn't a program
    const found = installedBrowsers({ PATH: `${folder}/a:${folder}/b:` }, 'linux');
    expect(found.map((each) => [each.label, each.headless])).toEqual([
      [join(folder, 'a', 'chromium-headless-shell'), 'shell'],
      [join(folder, 'a', 'chromium'), true],
      [join(folder, 'a', 'google-chrome'), true],
    ]);
  });

  it('passes over what may not be run, and finds none without a path', () => {
    const folder = emptyFolder();
    writeFiles(folder, { chromium: '' });
    chmodSync(join(folder, 'chromium'), 0o644);
    expect([installedBrowsers({ PATH: folder }, 'linux'), installedBrowsers({}, 'linux')]).toEqual([[], []]);
  });

  it('looks into the usual places of Windows', () => {
    const folder = emptyFolder();
    const path = join(folder, 'Google/Chrome/Application/chrome.exe');
    writeFiles(folder, { 'Google/Chrome/Application/chrome.exe': '' });
    chmodSync(path, 0o755);
    expect(installedBrowsers({ LOCALAPPDATA: folder }, 'win32').map((each) => each.label)).toEqual([path]);
  });

  it('knows the small browser by its name', () => {
    expect([browserAt('/x/chrome-headless-shell').headless, browserAt('/x/headless_shell').headless]).toEqual([
      'shell',
      'shell',
    ]);
  });
});

describe('openBrowser', () => {
  it('has no browser when told so', async () => {
    expect(await openBrowser({ PLATEN_BROWSER: 'none', PATH: process.env['PATH'] })).toEqual({
      missing: 'No browser for PDF: PLATEN_BROWSER is set to none. HTML cards need none.',
      tried: [],
    });
  });

  it('says that the named one does not start, and why, and tries no other', async () => {
    const folder = emptyFolder();
    // It stays a moment after its last word: what a process says as it ends may be lost on a busy machine.
    writeFiles(folder, { 'not-a-browser': '#!/bin/sh\necho library missing >&2\nsleep 1\nexit 3\n' });
    const path = join(folder, 'not-a-browser');
    chmodSync(path, 0o755);
    const answer = await openBrowser({ ...process.env, PLATEN_BROWSER: path });
    expect(answer).toEqual({
      missing: `No browser for PDF: PLATEN_BROWSER is set to ${path}, which does not start. HTML cards need none.`,
      tried: [expect.stringContaining('library missing')],
    });
  });

  it('says that the named one is not there', async () => {
    const answer = await openBrowser({ ...process.env, PLATEN_BROWSER: '/no/such/browser' });
    expect(answer).toMatchObject({ tried: [expect.stringContaining('/no/such/browser')] });
  });
});
