/** What is picked from the store for a run: a line a kind of piece, with its count and its timber. Pure. */
import type { Part } from '../facts/parts.ts';
import { formatNumber, formatPlain } from '../units/format.ts';
import { ceilCount } from '../units/round.ts';
import type { Admitted } from './admit.ts';
import type { MadeBy } from './made-by.ts';

export interface Pick {
  readonly part: Part;
  /** Ids of the plant. */
  readonly species: string;
  readonly stock: string;
  readonly speciesTitle: string;
  readonly stockTitle: string;
  /** By the title of each scale, the steps that will do, from the poorest: those of the order where it names one, else the band of the finish. */
  readonly grade: readonly { readonly scale: string; readonly steps: readonly string[] }[];
  /** As the stock is bought. */
  readonly thickness: string;
  /** Least of each piece, in whole millimetres upward. */
  readonly width: string;
  readonly length: string;
  /** Pieces of a part: the halves of a bookmatched cap. */
  readonly each: number;
  readonly bodies: number;
  readonly pieces: number;
  readonly boards: number;
  /** m³ by board measure, waste of picking counted in; as text to a tenth of a board foot upward. */
  readonly timber: number;
  readonly boardFeet: string;
  readonly orders: readonly string[];
}

const PARTS: readonly Part[] = ['cap', 'back', 'slab'];
const BOARD_FOOT = 0.002359737216;

/** By species, part, grade, thickness, then size. */
export function picksFor(admitted: readonly Admitted[]): readonly Pick[] {
  const picks = new Map<string, Omit<Pick, 'boardFeet'>>();
  for (const { order, by } of admitted)
    for (const part of by.parts) {
      const one = pickOf(part, by, order.finish, order.grade);
      const key = JSON.stringify([one.part, one.stock, one.grade, one.width, one.length, one.each]);
      const met = picks.get(key) ?? { ...one, bodies: 0, pieces: 0, boards: 0, timber: 0, orders: [] };
      const { quantity } = order;
      picks.set(key, {
        ...met,
        bodies: met.bodies + quantity,
        pieces: met.pieces + quantity * one.each,
        boards: met.boards + quantity * one.boards,
        timber: met.timber + quantity * one.timber,
        orders: [...met.orders, order.number],
      });
    }
  const text = ({ speciesTitle, part, grade, thickness, width, length }: Omit<Pick, 'boardFeet'>) =>
    JSON.stringify([speciesTitle, PARTS.indexOf(part), grade, thickness, width, length]);
  return [...picks.values()]
    .map((pick) => ({ ...pick, boardFeet: boardFeetText(boardFootTenths(pick.timber)) }))
    .toSorted((a, b) => (text(a) < text(b) ? -1 : 1));
}

/** Whole tenths of a board foot, upward: timber that is short by a hair is short. */
export const boardFootTenths = (timberM3: number): number => ceilCount(timberM3, BOARD_FOOT / 10);

export const boardFeetText = (tenths: number): string => formatNumber((tenths * BOARD_FOOT) / 10, 'bf', 1);

function pickOf(part: Part, by: MadeBy, finish: string, grade: readonly string[]) {
  const species = by.text(`timber.${part}.species`) ?? '';
  const stock = by.text(`timber.${part}.stock`) ?? '';
  const most = (id: string) => {
    const number = by.number(id)!;
    return formatPlain({ ...number, value: ceilCount(number.value, 1e6) * 1e6, unit: 'mm', decimals: 0 }, 'mm', 0);
  };
  return {
    part,
    species,
    stock,
    speciesTitle: by.text(`plant.species.${species}.title`) ?? species,
    stockTitle: by.text(`plant.stock.${stock}.title`) ?? stock,
    grade: bandOf(by, finish, grade),
    thickness: by.text(`plant.stock.${stock}.rough`) ?? '',
    width: most(`blank.${part}.piece-width`),
    length: most('blank.length'),
    each: by.number(`blank.${part}.pieces`)!.value,
    boards: by.number(`stock.${part}.boards`)?.value ?? 0,
    timber: by.number(`blank.${part}.bought`)?.value ?? 0,
  };
}

function bandOf(by: MadeBy, finish: string, ordered: readonly string[]): Pick['grade'] {
  return Object.entries(by.grades[finish] ?? {}).map(([scale, allowed]) => {
    const steps = by.scale(scale);
    const named = ordered.find((step) => steps.includes(step));
    const title = by.text(`plant.grades.${scale}.title`) ?? scale;
    return { scale: title, steps: named === undefined ? steps.filter((step) => allowed.includes(step)) : [named] };
  });
}
