/** All cards as data, for other programs: the same cards give the same text, whatever order their fields were made in. */
import type { PrintInput } from './input.ts';
import { hasErrors } from './input.ts';
import { cardName, inRouteOrder } from './names.ts';

export function cardsJson(input: PrintInput): string {
  const models = input.models.map((model) => ({
    id: model.id,
    title: model.title,
    revision: model.revision,
    valid: !hasErrors(model),
    cards: hasErrors(model)
      ? []
      : inRouteOrder(model.cards, input.route).map(({ card, posting }) => ({
          file: `models/${model.id}/${cardName(card.key, model.cards)}.html`,
          code: posting.code,
          posting,
          card,
        })),
  }));
  return `${JSON.stringify(ordered({ plant: input.plantName, date: input.date, models }), null, 2)}\n`;
}

/** Keys in the order of their code units at every depth; lists keep theirs. */
function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, field]) => [key, ordered(field)]));
}
