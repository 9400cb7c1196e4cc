/// <reference types="vite/client" />
import { describe, expect, test } from 'vitest';
import type { Check } from '../../src/check/check.ts';
import { all } from '../../src/check/checks/all.generated.ts';
import type { Kind } from '../../src/findings/finding.ts';
import { mistakeKinds } from '../../src/read/mistakes.ts';
import { holdExample } from './example.ts';

/** By their files, not by the registry: a check that is not registered is missed here. */
const checks: readonly Check[] = Object.values(
  import.meta.glob<Check>(['../../src/check/checks/*.ts', '!../../src/check/checks/*.generated.ts'], {
    eager: true,
    import: 'default',
  }),
);
const kinds: readonly Kind[] = [...checks, ...mistakeKinds];

describe('each check says what it is for, and its example proves it', () => {
  test.each(kinds.flatMap((kind) => (kind.example ? [[kind.id, kind, kind.example] as const] : [])))(
    '%s',
    (_, check, example) => holdExample(check, example),
  );

  test('ids are the names of their files, and no two are alike', () => {
    expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length);
    expect(all.map(({ id }) => id).toSorted()).toEqual(checks.map(({ id }) => id).toSorted());
  });
});
