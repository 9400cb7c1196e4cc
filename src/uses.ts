/** Where a name of the plant is used: in the plant, in models, on cards. */
import { factsOf } from './cards/facts-of.ts';
import type { Compiled } from './compile.ts';
import type { Leaf } from './facts/leaf.ts';
import { placeOf } from './facts/placed.ts';
import { namesOf } from './facts/row.ts';
import { cameFrom, namings } from './facts/uses.ts';
import { where } from './findings/render.ts';

export interface UseOfName {
  /** Section of the plant it is a row of. */
  readonly table: string;
  readonly name: string;
  readonly at: string;
  /** Lines of the plant that name it. */
  readonly plant: readonly NamedAt[];
  readonly models: readonly {
    readonly model: string;
    /** Lines of the model, or of what it is based on, that name it. */
    readonly lines: readonly NamedAt[];
    /** Stations whose card shows it or a number that came from it, by hand. */
    readonly cards: readonly { readonly station: string; readonly hand: string; readonly code: string }[];
  }[];
}

export interface NamedAt {
  readonly at: string;
  readonly id: string;
}

/** All rows of that name; none where the plant has none. */
export function usesOf(compiled: Compiled, name: string): readonly UseOfName[] {
  const { plant, texts } = compiled.checked.workspace;
  const tables = Object.entries(plant).filter(
    ([, rows]) => namesOf(rows as object).includes(name) && !Array.isArray(rows),
  );
  return tables.map(([table, rows]) => {
    const place = placeOf((rows as Record<string, object>)[name]);
    return {
      table,
      name,
      at: place ? where(place, texts) : '',
      plant: namings(plant, `plant.${table}`, name).map((leaf) => namedAt(leaf, texts)),
      models: compiled.models.flatMap((model) => used(model, table, name, texts)),
    };
  });
}

/** Every name of the plant, for a suggestion. */
export const plantNames = ({ checked }: Compiled): readonly string[] =>
  Object.values(checked.workspace.plant).flatMap((rows) => (Array.isArray(rows) ? [] : namesOf(rows as object)));

type Texts = ReadonlyMap<string, string>;

function used(model: Compiled['models'][number], table: string, name: string, texts: Texts): UseOfName['models'] {
  const row = `plant.${table}`;
  const leaves = model.hands.flatMap(({ subject }) =>
    namings(subject.spec, row, name).map((leaf) => namedAt(leaf, texts)),
  );
  const lines = leaves.filter((one, i) => leaves.findIndex((other) => other.at === one.at) === i);
  const cards = model.cards.flatMap(({ card, code }) => {
    const facts = model.hands.find(({ subject }) => subject.hand === card.key.hand)!.facts;
    const { station, hand } = card.key;
    return cameFrom(facts, factsOf(card), row, name) ? [{ station, hand, code }] : [];
  });
  return lines.length + cards.length === 0 ? [] : [{ model: model.id, lines, cards }];
}

function namedAt(leaf: Leaf<unknown>, texts: Texts): NamedAt {
  return { at: 'place' in leaf.writing ? where(leaf.writing.place, texts) : '', id: leaf.id };
}
