/** What an order is made by: a release with its facts, for one hand. Read once for all orders of the kind. Pure. */
import { once } from '../facts/once.ts';
import type { Part } from '../facts/parts.ts';
import type { FactNumber, FactState } from '../facts/state.ts';
import type { ReleasedCard } from '../release/record.ts';
import type { Known } from '../release/wall.ts';

/** One hand of a release. Two orders made by the same are made by the same object. */
export interface MadeBy {
  readonly of: Known;
  readonly model: string;
  readonly title: string;
  readonly revision: string;
  readonly hand: 'right' | 'left';
  /** Top first: cap and back, or a slab. */
  readonly parts: readonly Part[];
  readonly finishes: readonly string[];
  /** By finish, by scale: steps that may be used. */
  readonly grades: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>;
  /** Of this hand, in the order of the route. */
  readonly cards: readonly ReleasedCard[];
  /** Text of a fact; undefined of one that the release does not have. */
  readonly text: (id: string) => string | undefined;
  readonly number: (id: string) => FactNumber | undefined;
  /** Steps of a scale of the plant on the day of the release, from the poorest to the best. */
  readonly scale: (id: string) => readonly string[];
}

const PARTS: readonly Part[] = ['cap', 'back', 'slab'];

interface Spec {
  readonly finishes?: readonly string[];
  readonly grades?: MadeBy['grades'];
}

/** All hands of a release; the facts of each are looked into when first asked for. */
export function madeBy(of: Known): (hand: 'right' | 'left') => MadeBy | undefined {
  const { record } = of;
  const hands = Object.keys(record.facts);
  const { finishes = [], grades = {} } = JSON.parse(record.spec) as Spec;
  const made = new Map(
    (['right', 'left'] as const).map((hand) => [
      hand,
      once((): MadeBy | undefined => {
        if (!hands.includes(hand)) return undefined;
        const facts = new Map(record.facts[hand]!.map((fact): [string, FactState] => [fact.id, fact]));
        const text = (id: string) => facts.get(id)?.text;
        return {
          of,
          model: record.model,
          title: record.title,
          revision: record.revision,
          hand,
          parts: PARTS.filter((part) => facts.has(`blank.${part}.pieces`)),
          finishes,
          grades,
          cards: record.cards.filter(({ key }) => key.hand === hand),
          text,
          number: (id) => facts.get(id)?.number,
          scale: (id) => (text(`plant.grades.${id}.steps`) ?? '').split(', ').filter((step) => step !== ''),
        };
      }),
    ]),
  );
  return (hand) => made.get(hand)!();
}
