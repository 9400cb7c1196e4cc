/** The models a command line names. */
import { offer } from '../findings/nearest.ts';
import type { Io } from './io.ts';

/** All of them where none is named; undefined, with a word to the user, where a name is unknown. */
export function pick<M extends { readonly id: string }>(
  names: readonly string[],
  models: readonly M[],
  io: Io,
): readonly M[] | undefined {
  const ids = models.map((model) => model.id);
  const unknown = names.filter((name) => !ids.includes(name));
  for (const name of unknown) io.err(`There is no model "${name}". ${offer(name, ids)}\n`);
  if (unknown.length > 0) return undefined;
  return names.length === 0 ? models : models.filter((model) => names.includes(model.id));
}
