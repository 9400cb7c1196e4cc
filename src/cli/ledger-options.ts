/** What commands that write to the ledger ask for: who, why, and a name the plant knows. */
import type { Checked } from '../compile.ts';
import { offer } from '../findings/nearest.ts';
import { peopleIn } from '../plant-texts.ts';
import type { Io } from './io.ts';

export interface Signed {
  readonly reason?: string;
  readonly name?: string;
}

/** Both given, and the name one of the plant's; else undefined, with a word to the user. */
export function signed(
  { reason, name }: Signed,
  people: readonly string[] | undefined,
  io: Io,
): { readonly reason: string; readonly name: string } | undefined {
  if (reason === undefined || reason.trim() === '') {
    io.err('Give the reason: --reason "…". It stands in the ledger and on the cards.\n');
    return undefined;
  }
  if (name === undefined || name.trim() === '') {
    io.err('Give the name as the plant writes it: --name "…".\n');
    return undefined;
  }
  if (people && !people.includes(name)) {
    io.err(`"${name}" is not among the people of the plant (plant.people). ${offer(name, people)}\n`);
    return undefined;
  }
  return { reason: reason.trim(), name: name.trim() };
}

export const peopleOf = ({ workspace }: Checked): readonly string[] | undefined => peopleIn(workspace.plant);
