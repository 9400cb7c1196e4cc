import { readFileSync } from 'node:fs';

/** One published or recomputed value, with where it comes from and how sure that is. */
export interface Row {
  readonly id: string;
  readonly item: number;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: unknown;
  readonly tolerance: unknown;
  readonly source: string;
  readonly certainty: string;
  readonly note?: string;
}

const ROWS = JSON.parse(readFileSync(new URL('./check-values.json', import.meta.url), 'utf8')) as readonly Row[];

/** The row of an id; throws where the list has none, so that a test cannot pass on a lost row. */
export function row(id: string): Row {
  const found = ROWS.find((r) => r.id === id);
  if (found === undefined) throw new Error(`check-values.json has no row '${id}'`);
  return found;
}

/** All rows of an item, so that a test can show that it covers them all. */
export function rowsOfItem(item: number): readonly Row[] {
  return ROWS.filter((r) => r.item === item);
}
