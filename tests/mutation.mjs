// Switches each check off in turn: the suite must notice, N of N. The examples find a check by its file, not by the
// registry, so a check that is not run fails its own example, and the cases and faults that count on it.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
const ids = readdirSync(join(root, 'src/check/checks'))
  .filter((name) => name.endsWith('.ts') && !name.endsWith('.generated.ts'))
  .map((name) => name.slice(0, -3));

let [noticed, missed] = [0, 0];
for (const id of ids) {
  const run = spawnSync(
    process.execPath,
    [join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--config', 'tests/mutation.config.ts', '--reporter', 'json'],
    { cwd: root, env: { ...process.env, CHECK_OFF: id }, encoding: 'utf8', maxBuffer: 1 << 28 },
  );
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
console.log(`${noticed} passed, ${missed} failed`);
process.exitCode = missed > 0 ? 1 : 0;
