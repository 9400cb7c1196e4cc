/**
 * The browser that comes inside an npm package (Linux x64): its compressed program is unpacked once, into a folder of
 * this user's alone, named by the package's version. The package's own code and argument list aren't used: they unpack
 * into a shared temporary folder and switch web security off.
 */
import { randomBytes } from 'node:crypto';
import { createReadStream, createWriteStream, lstatSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { brotliDecompressSync, createBrotliDecompress } from 'node:zlib';
import type { Candidate, Environment } from './browser-candidates.ts';
import { errorLine } from './paths.ts';
import { packageFile } from './shipped.ts';
import { unpackTar } from './untar.ts';

const packageName = '@sparticuz/chromium';

/**
 * First as it is, then with the libraries of its pack (nss, nspr, expat) for a system that lacks them: never the other
 * way round, so that a system's newer libraries win. Empty where the package isn't installed or doesn't fit.
 */
export function packagedBrowsers(environment: Environment): Candidate[] {
  const entry = packageFile(packageName);
  if (entry === undefined || process.platform !== 'linux' || process.arch !== 'x64') return [];
  const home = join(dirname(entry), '..', '..');
  const label = 'the packaged browser';
  const locate = (): Promise<string> => unpackedProgram(home, environment);
  const libraries = (): Promise<string> => unpackedLibraries(home, environment);
  return [
    { label, locate, headless: 'shell' },
    { label: `${label} with its own libraries`, locate, headless: 'shell', libraries },
  ];
}

async function unpackedProgram(home: string, environment: Environment): Promise<string> {
  const path = join(privateFolder(home, environment), 'chromium');
  if (lstatSync(path, { throwIfNoEntry: false })?.isFile()) return path;
  await whole(path, (next) =>
    pipeline(
      createReadStream(join(home, 'bin', 'chromium.br')),
      createBrotliDecompress({ chunkSize: 2 ** 21 }),
      createWriteStream(next, { mode: 0o700 }),
    ),
  );
  return path;
}

async function unpackedLibraries(home: string, environment: Environment): Promise<string> {
  const folder = join(privateFolder(home, environment), 'libraries');
  if (lstatSync(folder, { throwIfNoEntry: false }) === undefined) {
    const tar = brotliDecompressSync(readFileSync(join(home, 'bin', 'al2023.tar.br')));
    await whole(folder, (next) => Promise.resolve(unpackTar(tar, next)));
  }
  return join(folder, 'lib');
}

/** Makes a file or folder under another name and renames it when it is whole, so that nobody starts half a browser. */
async function whole(path: string, make: (next: string) => Promise<void>): Promise<void> {
  const next = `${path}.${process.pid}-${randomBytes(4).toString('hex')}`;
  try {
    await make(next);
    renameSync(next, path);
  } catch (error) {
    // Another process may have been first with a folder; its result is as good.
    if (lstatSync(path, { throwIfNoEntry: false }) === undefined) throw error;
  } finally {
    rmSync(next, { recursive: true, force: true });
  }
}

/** The first of cache folder and temporary folder that is, or can be made, this user's alone. */
function privateFolder(home: string, environment: Environment): string {
  const name = `chromium-${packageVersion(home)}`;
  const user = process.getuid?.() ?? 0;
  const cache = environment['XDG_CACHE_HOME'] ?? join(environment['HOME'] ?? homedir(), '.cache');
  const places = [join(cache, 'platen', name), join(tmpdir(), `platen-${user}`, name)];
  const failures: string[] = [];
  for (const place of places) {
    const failure = makePrivate(place, user);
    if (failure === undefined) return place;
    failures.push(failure);
  }
  throw new Error(failures.join('; '));
}

/** Undefined when the folder and the one above it are ours alone, else why not: a program of somebody else's must not be started. */
function makePrivate(place: string, user: number): string | undefined {
  try {
    mkdirSync(place, { recursive: true, mode: 0o700 });
    for (const folder of [dirname(place), place]) {
      const stats = lstatSync(folder);
      const ours = stats.isDirectory() && stats.uid === user && (stats.mode & 0o022) === 0;
      if (!ours) return `${folder} can be written to by others`;
    }
    return undefined;
  } catch (error) {
    return errorLine(error);
  }
}

function packageVersion(home: string): string {
  const data: unknown = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'));
  return typeof data === 'object' && data !== null && 'version' in data ? String(data.version) : 'unknown';
}
