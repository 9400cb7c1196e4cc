// The build, run at install: types from the published schemas, one index per folder of parts, then the compiler.
// Files in those folders need no other registration: adding a station, a check, a rule or a command touches one file.
import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { schemaTypes } from './schema-types.mjs';
import { validators } from './validators.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const folders = ['derive/rules', 'check/checks', 'cards/stations', 'cli/commands'];

/** Writes only what changed, so that a watcher does not run for nothing. */
function put(file, text) {
  if (!existsSync(file) || readFileSync(file, 'utf8') !== text) writeFileSync(file, text);
}

// A file may be called as a word of the language is: `new.ts`.
const camel = (name) => `the-${name}`.replace(/-(\w)/g, (_, letter) => letter.toUpperCase());

for (const folder of folders) {
  const dir = join(root, 'src', folder);
  const names = readdirSync(dir)
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.generated.ts'))
    .map((name) => name.slice(0, -3))
    .toSorted();
  const lines = names.map((name) => `import ${camel(name)} from './${name}.ts';`);
  put(
    join(dir, 'all.generated.ts'),
    `// Written by src/build/build.mjs from the files of this folder.\n${lines.join('\n')}\n\nexport const all = [\n${names.map((name) => `  ${camel(name)},`).join('\n')}\n];\n`,
  );
}

put(join(root, 'src/facts/spec.generated.ts'), await schemaTypes(join(root, 'models/schemas')));

put(join(root, 'src/read/validators.generated.ts'), validators(join(root, 'models/schemas')));

if (!process.argv.includes('--no-compile')) {
  rmSync(join(root, '.dist'), { recursive: true, force: true });
  execFileSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-p', root], { stdio: 'inherit' });
  chmodSync(join(root, '.dist/cli/main.js'), 0o755);
}
