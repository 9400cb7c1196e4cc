/** The route of a plant: what is twice in it, too early or left out is one finding; other ways that hold together are none. */
import { describe, expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { edited, sample } from '../cases/workspace.ts';

const file = 'models/plant/plant.yaml';
const AS_IS = [.../^route:\n((?: {2}- .*\n)+)/m.exec(sample()[file]!)![1]!.matchAll(/- (.*)/g)].map(([, id]) => id!);
const written = (route: readonly string[]) => `route:\n${route.map((id) => `  - ${id}\n`).join('')}`;

function found(route: readonly string[], elsewhere: readonly string[] = []): string[] {
  const more = elsewhere.length === 0 ? '' : `elsewhere: [${elsewhere.join(', ')}]\n`;
  const host = memoryHost(edited([{ file, find: written(AS_IS), replace: written(route) + more }]));
  const { checked } = compileAll(host, '2026-11-25');
  return [...checked.findings, ...checked.models.flatMap(({ findings }) => findings)]
    .filter(({ severity }) => severity === 'error')
    .map(({ id, what }) => `${id}: ${what}`);
}

const without = (...ids: string[]) => AS_IS.filter((id) => !ids.includes(id));
const moved = (id: string, to: number) => without(id).toSpliced(to, 0, id);

describe('a route', () => {
  test.each([
    ['as it is', AS_IS, []],
    ['wood picked before it is planed', moved('picking', 1), []],
    ['sawn before it is planed', [...AS_IS.slice(0, 3), 'picking', 'rough-sawing', 'planing', ...AS_IS.slice(6)], []],
    ['blanks that come glued up', without('jointing', 'edge-gluing'), ['jointing', 'edge-gluing']],
  ] as const)('%s holds together', (_, route, elsewhere) => expect(found(route, elsewhere)).toEqual([]));

  test.each([
    ['press twice', AS_IS.toSpliced(9, 0, 'press'), [], 'Press stands in the route twice.'],
    [
      'one for another',
      AS_IS.with(0, 'press'),
      [],
      'Press stands in the route twice; the route leaves out conditioning.',
    ],
    ['turned round', moved('press', 7), [], 'Press stands before lamination, and works on what comes from there.'],
    ['none', without('sizing'), [], 'The route leaves out sizing.'],
    ['one short', without('jointing', 'edge-gluing'), ['jointing'], 'The route leaves out edge-gluing.'],
    ['outside and inside', AS_IS, ['sizing'], 'Sizing stands in the route, and is said to be done elsewhere.'],
    ['outside, misspelt', AS_IS, ['seizing'], 'Seizing, said to be done elsewhere, is not a station.'],
  ] as const)('%s is told once', (_, route, elsewhere, what) =>
    expect(found(route, elsewhere)).toEqual([`route-out-of-order: ${what}`]),
  );
});
