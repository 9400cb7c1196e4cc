/** Two workspaces that mean the same, held against each other. */
import { expect } from 'vitest';
import { diffOf, made } from './asked.ts';
import type { Files, Made } from './asked.ts';

const known = new Map<string, Made>();

/** What a workspace gives, compiled once for all that ask. */
function madeOnce(files: Files): Made {
  const key = JSON.stringify(files);
  const before = known.get(key) ?? made(files);
  known.set(key, before);
  return before;
}

/** Other texts, the same codes, no finding more, and nothing to say. */
export async function sameAs(files: Files, after: Files): Promise<void> {
  expect(after).not.toEqual(files);
  expect(made(after)).toEqual(madeOnce(files));
  const said = await diffOf(files, after);
  expect(said.models.map(({ id, is }) => [id, is])).toEqual([['tarn', 'same']]);
  expect(said.models[0]!.given).toEqual([]);
  expect(said).toMatchObject({ plant: [], stations: [] });
}
