/** The cards an order is made by on a day, where its model was released, with what is said of each of them that day. Pure. */
import type { MadeCard } from '../cards/card.ts';
import { answerTo } from './answer.ts';
import type { Start } from './entries.ts';
import { fillingOf } from './replay.ts';
import type { ReleasedCard } from './record.ts';
import { hangs } from './state.ts';
import type { State } from './state.ts';
import type { Known } from './wall.ts';

export interface ForOrder {
  readonly revision: string;
  readonly cards: readonly MadeCard[];
  /** By code, where a card is not simply current: its status in words, and markup of what is held or deviates. */
  readonly said: ReadonlyMap<string, { readonly status?: string; readonly over: string }>;
}

/** The release that is in force for an order on a day; one without a number that counts is made by the latest. */
export function releaseFor(model: string, order: string, on: string, known: readonly Known[]): Known | undefined {
  const number = /^\d+$/.test(order) ? Number(order) : undefined;
  const has = (from: Start) => ('date' in from ? from.date <= on : number === undefined || from.order <= number);
  return known.findLast(({ released }) => released.model === model && hangs(released) && has(released.from));
}

/** Undefined where no release is in force for that order. */
export function cardsForOrder(
  model: string,
  order: string,
  on: string,
  { known, state }: { readonly known: readonly Known[]; readonly state: State },
): ForOrder | undefined {
  const of = releaseFor(model, order, on, known);
  if (!of) return undefined;
  const said = of.record.cards.flatMap((card) => {
    const { status, over } = fillingOf(card, of, on, { known, state });
    const answer = answerTo(card.code, known, state, []);
    const { from, to } = answer.is === 'current' ? answer.hanging.range : {};
    const plain = answer.is === 'current' && !from && !to;
    return plain && over === '' ? [] : [[card.code, { ...(plain ? {} : { status }), over }] as const];
  });
  return { revision: of.released.revision, cards: of.record.cards.map(madeOf), said: new Map(said) };
}

const madeOf = ({ card, code, reads }: ReleasedCard): MadeCard => ({ card, code, reads });
