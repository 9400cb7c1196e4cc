/** What a part of one model that was set aside may still serve on this list: another model's, thinner and no larger. Pure. */
import type { Part } from '../facts/parts.ts';
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
        return part && other && fits({ of: by, part: other }, { of, part })
          ? [{ by, part: other, orders: orders(by) }]
          : [];
      });
      return part && serves.length > 0 ? [{ of, part, serves }] : [];
    }),
  );
}

const partOf = (by: MadeBy, parts: readonly Part[]): Part | undefined =>
  parts.find((part) => by.number(`blank.${part}.pieces`) !== undefined);

interface Piece {
  readonly of: MadeBy;
  readonly part: Part;
}

/** The same wood, sawn alike, with the same seams; thinner than it was to be, or there is nothing to take off. */
function fits(wanted: Piece, own: Piece): boolean {
  if (wanted.of.model === own.of.model) return false;
  const same = (id: (part: Part) => string) => wanted.of.text(id(wanted.part)) === own.of.text(id(own.part));
  const size = ({ of }: Piece, id: string) => of.number(id)?.value ?? NaN;
  const thick = (piece: Piece) => size(piece, `thickness.part.${piece.part}.sized`);
  return (
    same((part) => `timber.${part}.species`) &&
    same((part) => `timber.${part}.sawn`) &&
    same((part) => `blank.${part}.pieces`) &&
    size(wanted, 'blank.length') <= size(own, 'blank.length') &&
    size(wanted, 'blank.width') <= size(own, 'blank.width') &&
    thick(wanted) < thick(own)
  );
}
