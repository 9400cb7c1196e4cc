/** The repository's own rules, so that a review can be about ideas. Each failure names the file. */
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..');

interface Import {
  /** Path below src/, or a package's name. */
  readonly what: string;
  readonly typeOnly: boolean;
}

interface SourceFile {
  readonly path: string;
  readonly room: string;
  readonly text: string;
  readonly imports: readonly Import[];
}

const IMPORT = /^(?:import|export)\s+(type\s+)?[^'";]*?\bfrom\s*'([^']+)'|^import\s*'([^']+)'|\bimport\('([^']+)'\)/gm;

function importsOf(path: string, text: string): Import[] {
  return [...text.matchAll(IMPORT)].map(([, type, from, bare, dynamic]) => {
    const what = (from ?? bare ?? dynamic)!;
    return { what: what.startsWith('.') ? normalize(join(dirname(path), what)) : what, typeOnly: type !== undefined };
  });
}

const files: readonly SourceFile[] = readdirSync(join(root, 'src'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.(ts|mjs)$/.test(entry.name))
  .map((entry) =>
    join(entry.parentPath, entry.name)
      .slice(join(root, 'src').length + 1)
      .replaceAll('\\', '/'),
  )
  .map((path) => {
    const text = readFileSync(join(root, 'src', path), 'utf8');
    return { path, room: path.split('/')[0]!, text, imports: importsOf(path, text) };
  });

const testFiles: readonly string[] = readdirSync(join(root, 'tests'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.test.ts'))
  .map((entry) => join(entry.parentPath, entry.name));

const roomOf = ({ what }: Import): string => what.split('/')[0]!;
const isOwn = ({ what }: Import): boolean => /\.(ts|mjs)$/.test(what);
const generated = ({ path }: SourceFile): boolean => path.endsWith('.generated.ts');

/** Lines of what breaks a rule: `file: what`. */
const broken = (rule: (file: SourceFile) => readonly string[]): string[] =>
  files.flatMap((file) => rule(file).map((what) => `${file.path}: ${what}`));

describe('what may import what', () => {
  /** Rooms a room may import at run time, besides itself. The two files at the top join them all. */
  const MAY: Readonly<Record<string, readonly string[]>> = {
    units: [],
    geometry: ['units'],
    findings: [],
    facts: ['units', 'findings'],
    read: ['units', 'findings', 'facts'],
    derive: ['units', 'geometry', 'facts', 'reference'],
    reference: [],
    check: ['units', 'geometry', 'findings', 'facts', 'reference'],
    cards: ['units', 'geometry', 'findings', 'facts'],
    print: ['units', 'geometry', 'findings'],
    host: [],
    cli: [
      'assets.ts',
      'compile.ts',
      'printing.ts',
      'forms.ts',
      'releases.ts',
      'run-sheets.ts',
      'plant-texts.ts',
      'recompute.ts',
      'comparing.ts',
      'notices.ts',
      'diff',
      'release',
      'start.ts',
      'uses.ts',
      'findings',
      'facts',
      'units',
      'host',
    ],
    build: [],
    'compile.ts': [
      'read',
      'derive',
      'check',
      'cards',
      'print',
      'findings',
      'facts',
      'assets.ts',
      'permits.ts',
      'plant-texts.ts',
    ],
    'assets.ts': ['cards', 'print', 'findings'],
    'plant-texts.ts': ['facts'],
    'printing.ts': ['compile.ts', 'assets.ts', 'plant-texts.ts', 'cards', 'print', 'findings'],
    'forms.ts': ['compile.ts', 'assets.ts', 'plant-texts.ts', 'cards', 'print', 'findings'],
    'releases.ts': ['compile.ts', 'printing.ts', 'comparing.ts', 'diff', 'cards', 'facts', 'read', 'release'],
    'recompute.ts': ['compile.ts', 'comparing.ts', 'diff', 'release', 'units'],
    'comparing.ts': ['compile.ts', 'diff', 'facts', 'findings', 'read'],
    'notices.ts': ['assets.ts', 'forms.ts', 'plant-texts.ts', 'diff', 'cards', 'print'],
    diff: ['cards', 'facts'],
    release: ['print'],
    run: ['units', 'release', 'facts', 'findings', 'read', 'derive'],
    'run-sheets.ts': [
      'cards',
      'plant-texts.ts',
      'comparing.ts',
      'forms.ts',
      'notices.ts',
      'diff',
      'facts',
      'findings',
      'print',
      'release',
      'run',
    ],
    'permits.ts': ['facts'],
    'start.ts': ['compile.ts', 'facts', 'findings', 'starter'],
    starter: ['units', 'facts'],
    'uses.ts': ['cards', 'facts', 'findings'],
  };
  const phases = ['read', 'derive', 'check', 'cards', 'print'];

  test('every room has its rule', () => {
    expect([...new Set(files.map(({ room }) => room))].filter((room) => !Object.hasOwn(MAY, room))).toEqual([]);
  });

  test('at run time, only what its room may', () => {
    const found = broken(({ room, imports }) =>
      imports
        .filter((one) => isOwn(one) && !one.typeOnly && roomOf(one) !== room && !MAY[room]!.includes(roomOf(one)))
        .map(({ what }) => what),
    );
    expect(found).toEqual([]);
  });

  test('as types between phases, only the card by print', () => {
    const found = broken(({ room, imports }) =>
      imports
        .filter((one) => phases.includes(room) && phases.includes(roomOf(one)) && roomOf(one) !== room)
        .filter((one) => !(one.typeOnly && room === 'print' && one.what === 'cards/card.ts'))
        .map(({ what }) => what),
    );
    expect(found).toEqual([]);
  });

  test('as types, below the phases nothing from above', () => {
    const below = {
      units: [],
      geometry: ['units'],
      findings: [],
      facts: ['units', 'geometry', 'findings', 'reference'],
      host: [],
    };
    const found = broken(({ room, imports }) => {
      const may: readonly string[] | undefined = (below as Record<string, readonly string[]>)[room];
      if (!may) return [];
      return imports
        .filter((one) => isOwn(one) && roomOf(one) !== room && !may.includes(roomOf(one)))
        .map(({ what }) => what);
    });
    expect(found).toEqual([]);
  });

  test('the outside, only by the host and the file that is the process', () => {
    // A digest of a text is arithmetic.
    const PURE = new Set(['node:crypto']);
    const outside = /\bprocess\.|\bnew Date\b|\bDate\.(?:now|parse|UTC)\b|\bMath\.random\b|\bperformance\.|\bfetch\(/;
    const found = broken(({ path, room, text, imports }) => {
      // The written validators ask for the runtime of the library they were written by.
      if (room === 'host' || room === 'build' || path === 'cli/main.ts' || path === 'read/validators.generated.ts')
        return [];
      const named = imports.filter(({ what }) => what.startsWith('node:') && !PURE.has(what)).map(({ what }) => what);
      const line = text.split('\n').find((one) => outside.test(one));
      return line === undefined ? named : [...named, line.trim()];
    });
    expect(found).toEqual([]);
  });
});

describe('no file is imported by nothing', () => {
  const imported = new Set(files.flatMap(({ imports }) => imports.map(({ what }) => what)));
  const entries = ['build/build.mjs', 'cli/main.ts'];
  /** Tested, and not yet used: the twin of the outside for tests, and what later cards and checks stand on. */
  const waiting = ['geometry/corner.ts', 'host/memory.ts'];

  test('but where the program starts, and what is named as waiting', () => {
    const alone = files.map(({ path }) => path).filter((path) => !imported.has(path));
    expect(alone.toSorted()).toEqual([...entries, ...waiting].toSorted());
  });

  test('and what waits is tested', () => {
    const tests = testFiles.map((path) => readFileSync(path, 'utf8')).join('\n');
    for (const path of waiting) expect(tests).toContain(`/src/${path}'`);
  });
});

test('no file holds more than can be seen at once', () => {
  expect(broken((file) => (!generated(file) && file.text.split('\n').length > 261 ? ['over 260 lines'] : []))).toEqual(
    [],
  );
});

test('nothing is put off', () => {
  expect(broken(({ text }) => text.match(/\b(?:TODO|FIXME|XXX|HACK)\b/g) ?? [])).toEqual([]);
});

test('a number becomes text in units alone', () => {
  const formats = /\.(?:toFixed|toPrecision|toExponential|toLocaleString)\(|\bIntl\.NumberFormat\b/g;
  expect(broken(({ room, text }) => (room === 'units' ? [] : (text.match(formats) ?? [])))).toEqual([]);
});

test('no any, no util, no mutable state of a module', () => {
  expect(
    broken(({ path }) => (/(?:^|\/)(?:utils?|helpers|misc)\.ts$/.test(path) ? ['name it for what it does'] : [])),
  ).toEqual([]);
  const found = broken((file) =>
    generated(file)
      ? []
      : (file.text.match(/^(?:export )?let \w+|: any\b|<any>|\bas any\b|@ts-ignore|eslint-disable|oxlint-disable/gm) ??
        []),
  );
  expect(found).toEqual([]);
});

test('every file but an index of parts says what it is for, in its first lines', () => {
  const found = broken((file) =>
    generated(file) || /^(?:#!.*\n)?(?:import [^;]*;\n)*\n*(?:\/\*\*|\/\/)/.test(file.text) || /\/\*\* /.test(file.text)
      ? []
      : ['no word about it'],
  );
  expect(found).toEqual([]);
});

test('tests are neither skipped nor singled out', () => {
  const marked = /\b(?:test|it|describe)\.(?:skip|only|todo|fails)\b/;
  expect(testFiles.length).toBeGreaterThan(20);
  expect(testFiles.filter((path) => path !== import.meta.filename && marked.test(readFileSync(path, 'utf8')))).toEqual(
    [],
  );
});
