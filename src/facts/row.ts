/** Looking up a row by its name, and the names of a table. */
import { hole, holeId } from './leaf.ts';

type Table<T> = { readonly [id: string]: T } | undefined;

/** The row of that name, or a hole that says which row is missing. */
export function row<T>(table: Table<T>, id: string, tableName: string): T {
  const found = table && holeId(table) === undefined && Object.hasOwn(table, id) ? table[id] : undefined;
  return found ?? hole(`${tableName}.${id}`);
}

/** The thing, or a hole that says what is missing: where the schema lets a thing be absent and a formula needs it. */
export const wanted = <T>(thing: T | undefined, id: string): T => thing ?? hole(id);

/** Names of a table in the order written; none of a missing table. */
export const namesOf = (table: object | undefined): readonly string[] =>
  table === undefined || holeId(table) !== undefined ? [] : Object.keys(table);

/** What is really there: undefined of a hole. */
export const present = <T>(thing: T | undefined): T | undefined =>
  thing !== undefined && holeId(thing) !== undefined ? undefined : thing;

/** The items of a list that are really there: of one that is not known it has been told where it stands. */
export const readable = <T>(items: readonly T[]): readonly T[] => items.filter((item) => holeId(item) === undefined);

/** `cutters.mill-8` of `plant.cutters.mill-8.diameter`; undefined of what is no line of a row. */
export const plantRow = (fact: string): string | undefined => /^plant\.([^.]+\.[^.]+)(?:\.|$)/.exec(fact)?.[1];
