import { describe, expect, test } from 'vitest';
import { all } from '../../src/check/checks/all.generated.ts';
import { holdEdge } from './edges/edge.ts';
import { edges } from './edges/index.ts';

describe('just on this side or on that', () => {
  test.each(edges.map((edge) => [`${edge.check}: ${edge.name}`, edge] as const))('%s', (_, edge) => holdEdge(edge));

  test('each of a check that is, and no two alike', () => {
    const ids: readonly string[] = all.map(({ id }) => id);
    expect(edges.filter(({ check }) => !ids.includes(check))).toEqual([]);
    expect(new Set(edges.map(({ check, name }) => `${check}: ${name}`)).size).toBe(edges.length);
  });
});
