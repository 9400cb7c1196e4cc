/**
 * Every comparison of the checks flipped (< is made >=, === is made !==, and so on), one at a time: the suite must notice.
 * Noticed means that an assertion of the suite fails: the workspaces and what is asked of them are those of benches.ts, the
 * same functions that the tests call. Beside that each limit is moved (< is made <=): that is told, and not asked for.
 *
 *   FLIPS=text      only comparisons whose file and text have this in them
 *   FLIPS_ON=text   only workspaces whose name has this in it
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { benches } from './benches.ts';
import { equivalent } from './equivalent.ts';
import type { Noticed } from './flips.ts';
import { mutantsOf, tryAll } from './flips.ts';

const { FLIPS: only = '', FLIPS_ON: on = '' } = process.env;

const mutants = mutantsOf(platenSwitch.sites).filter(({ key }) => key.includes(only));
const keys = mutants.filter(({ way }) => way === 'flipped').map(({ key }) => key);
const results = new Map<string, Noticed>();

beforeAll(async () => {
  const chosen = benches.filter(({ name }) => name.includes(on));
  for (const one of await tryAll(mutants, chosen)) results.set(`${one.way} ${one.key}`, one);
  console.log(table([...results.values()]));
}, 7_200_000);

function table(all: readonly Noticed[]): string {
  const line = ({ key, site, way, met }: Noticed): string => {
    const { file, line: at } = platenSwitch.sites[site]!;
    return `${way}, on ${met} workspaces: ${file}:${at} ${key.slice(file.length + 2)}`;
  };
  const counts = (['flipped', 'moved'] as const).map((way) => {
    const mine = all.filter((one) => one.way === way);
    return `${way}: ${mine.filter(({ by }) => by !== undefined).length} of ${mine.length} noticed`;
  });
  return [...all.filter(({ by }) => by === undefined).map(line), ...counts].join('\n');
}

describe('flipped, it is noticed', () => {
  test.each(keys.filter((key) => !Object.hasOwn(equivalent, key)))('%s', (key) => {
    expect(results.get(`flipped ${key}`)!.by).toBeDefined();
  });
});

describe('flipped, it makes no difference', () => {
  test.each(Object.keys(equivalent).filter((key) => key.includes(only)))('%s', (key) => {
    expect(results.get(`flipped ${key}`)).toMatchObject({ by: undefined });
  });
});
