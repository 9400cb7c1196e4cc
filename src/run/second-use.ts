/** What a part of one model that was set aside may still serve on this list: another model's, thinner and no larger. Pure. */
import type { Part } from '../facts/parts.ts';
import { serves as isServed } from '../facts/serves.ts';
import type { Piece } from '../facts/serves.ts';
import type { Admitted } from './admit.ts';
import type { MadeBy } from './made-by.ts';

export interface SecondUse {
  readonly of: MadeBy;
  readonly part: Part;
  /** Orders of this list that may be made of it, in their sequence, with the part it becomes there. */
  readonly serves: readonly { readonly by: MadeBy; readonly part: Part; readonly orders: readonly string[] }[];
}

/** A cap serves as a cap; a back and a slab as either. */
const AS: readonly (readonly Part[])[] = [['cap'], ['back', 'slab']];

/** By what is made on this list; a model that can serve no other is left out. */
export function secondUses(admitted: readonly Admitted[]): readonly SecondUse[] {
  const kinds = [...new Set(admitted.map(({ by }) => by))];
  const orders = (by: MadeBy) => admitted.filter((one) => one.by === by).map(({ order }) => order.number);
  return kinds.flatMap((of) =>
    AS.flatMap((parts) => {
      const part = partOf(of, parts);
      const serves = kinds.flatMap((by): SecondUse['serves'] => {
        const other = partOf(by, parts);
        return part && other && isServed(pieceOf(of, part), pieceOf(by, other))
          ? [{ by, part: other, orders: orders(by) }]
          : [];
      });
      return part && serves.length > 0 ? [{ of, part, serves }] : [];
    }),
  );
}

const partOf = (by: MadeBy, parts: readonly Part[]): Part | undefined => parts.find((part) => by.parts.includes(part));

function pieceOf(by: MadeBy, part: Part): Piece {
  const size = (id: string) => by.number(id)?.value ?? NaN;
  return {
    model: by.model,
    wood: `${by.text(`timber.${part}.species`)} ${by.text(`timber.${part}.sawn`) ?? ''}`,
    pieces: size(`blank.${part}.pieces`),
    lengthNm: size('blank.length'),
    widthNm: size('blank.width'),
    thickNm: size(`thickness.part.${part}.sized`),
  };
}
