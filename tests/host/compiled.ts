/** Some of the code as plain JavaScript, for child processes that a test may kill. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const root = resolve(import.meta.dirname, '..', '..');

/** Compiles publish.ts into `folder` and gives the address to import it from. */
export const compilePublish = (folder: string): string => compileFiles(folder, ['host/publish.ts'])[0]!;

/** Compiles files below src/, which need no package, into `folder`; gives the addresses to import them from. */
export function compileFiles(folder: string, paths: readonly string[]): readonly string[] {
  const target = join(folder, 'compiled');
  mkdirSync(target);
  writeFileSync(join(target, 'package.json'), '{"type":"module"}');
  const config = {
    extends: join(root, 'tsconfig.json'),
    compilerOptions: { rootDir: join(root, 'src'), outDir: target, typeRoots: [join(root, 'node_modules', '@types')] },
    include: [],
    files: paths.map((path) => join(root, 'src', path)),
  };
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(config));
  execFileSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-p', join(folder, 'tsconfig.json')]);
  return paths.map((path) => pathToFileURL(join(target, path.replace(/\.ts$/, '.js'))).href);
}
