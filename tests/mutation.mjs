// Breaks the checks on purpose, one place at a time: the suite must notice, N of N.
//
// First each check is switched off. The examples find a check by its file, not by the registry, so a check that is not run
// fails its own example, and the cases and faults that count on it. Then each comparison is flipped: tests/mutation.
//
//   node tests/mutation.mjs off      only the first
//   node tests/mutation.mjs flips    only the second
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
const ids = readdirSync(join(root, 'src/check/checks'))
  .filter((name) => name.endsWith('.ts') && !name.endsWith('.generated.ts'))
  .map((name) => name.slice(0, -3));

let [noticed, missed] = [0, 0];
const [, , only] = process.argv;
if (only !== 'flips') switchOff();
if (only !== 'off') flip();
console.log(`${noticed} passed, ${missed} failed`);
process.exitCode = missed > 0 ? 1 : 0;

function switchOff() {
  for (const id of ids) {
    const run = vitest(['--config', 'tests/mutation.config.ts', '--reporter', 'json'], { CHECK_OFF: id });
    const report = JSON.parse(run.stdout.slice(run.stdout.indexOf('{')));
    const failed = report.testResults
      .flatMap((file) => file.assertionResults)
      .filter((test) => test.status === 'failed')
      // That a file is missing from the registry is no proof that anybody misses what it checks.
      .filter((test) => !test.title.startsWith('ids are the names of their files'));
    if (failed.length > 0) noticed += 1;
    else missed += 1;
    console.log(`${id.padEnd(28)} ${failed.length > 0 ? `noticed by ${failed.length} tests` : 'NOT NOTICED'}`);
  }
}

function flip() {
  const { stdout } = vitest(['--config', 'tests/mutation/vitest.config.ts'], {});
  process.stdout.write(stdout);
  // A run that comes to no count has failed.
  const [, passed = 0, failed = 1] = /^(\d+) passed, (\d+) failed$/m.exec(stdout) ?? [];
  noticed += Number(passed);
  missed += Number(failed);
}

function vitest(args, env) {
  return spawnSync(process.execPath, [join(root, 'node_modules/vitest/vitest.mjs'), 'run', ...args], {
    cwd: root,
    env: { ...process.env, ...env },
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}
