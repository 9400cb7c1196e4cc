/** Rows of a plant that hold for wood up to a thickness: the thinnest that still covers the piece is the one. */
import type { Use } from '../facts/facts.ts';
import { hole } from '../facts/leaf.ts';
import type { Leaf } from '../facts/leaf.ts';
import type { Length } from '../units/quantity.ts';

export function forThickness<Row extends { readonly 'up-to': Leaf<Length> }>(
  use: Use,
  table: { readonly [id: string]: Row },
  thickestNm: number,
  tableName: string,
): Row {
  const covering = Object.values(table)
    .map((row) => ({ row, upTo: use(row['up-to']).value }))
    .filter(({ upTo }) => upTo >= thickestNm)
    .toSorted((a, b) => a.upTo - b.upTo);
  return covering[0]?.row ?? hole(`a row of ${tableName} for wood this thick`);
}
