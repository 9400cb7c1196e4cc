import { test } from 'vitest';
import { appendFileSync, writeFileSync } from 'node:fs';
import { faultsOf, sampled } from './generator.ts';
import { seedOf } from './seeded.ts';
import { judged, shortcoming, verdictText } from './judge.ts';
import { soundSample, soundDemos } from './sound.ts';
test('x', { timeout: 10000000 }, () => {
  const shard = Number(process.env['SHARD']);
  const dir = '/tmp/fz/s' + shard;
  for (const n of ['bad', 'full', 'unseen', 'all']) writeFileSync(`${dir}-${n}.txt`, '');
  const s = soundSample();
  const jobs = [
    ...sampled(faultsOf(s), 1e9, seedOf('sample')).map((f) => [s, f] as const),
    ...soundDemos().flatMap((d) => sampled(faultsOf(d, 'model'), 60, seedOf(d.name)).map((f) => [d, f] as const)),
  ].filter((_, i) => i % 2 === shard);
  const t = Date.now();
  for (const [d, f] of jobs) {
    const b = judged(d, f);
    const why = shortcoming(b);
    const line =
      `${why ?? (b.must ? 'well' : b.found ? 'seen' : 'unseen')} | ${f.kind} | ${f.id} | ${b.line} | ` +
      [...b.errors, ...b.cautions]
        .map(
          (e) =>
            `${e.severity === 'error' ? '' : '~'}${e.id}@${e.where.replace('models/', '')}[${e.notes.map((q) => q.where.replace('models/', '')).join(',')}]`,
        )
        .join(' ; ') +
      (b.thrown ? b.thrown.slice(0, 300).replaceAll('\n', ' ') : '');
    appendFileSync(`${dir}-all.txt`, line + '\n');
    if (why) appendFileSync(`${dir}-full.txt`, verdictText(b) + '\n');
  }
  appendFileSync(`${dir}-all.txt`, `DONE ${Date.now() - t}\n`);
});
