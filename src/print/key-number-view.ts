import type { Arg, KeyNumber } from '../cards/card.ts';
import { withUnit } from './say.ts';
import type { Speech } from './speech.ts';

/** One stretch that is never broken: a number or a range, the last of a series with its unit. */
interface Part {
  readonly text: string;
  readonly unit: string | null;
}

/** A key number, or a series of them, set large; the second unit apart, its parts ready to print. */
export function keyNumberView({ label, value }: KeyNumber, talk: Speech) {
  const items = value.kind === 'series' ? value.items : [value];
  const numbers = items.map((item) => firstUnit(item, talk));
  const seconds = items.flatMap((item) => secondUnit(item, talk) ?? []);
  return {
    label: talk.html(label),
    // Its limits stand with its check: here there is room for what counts.
    accepted: items.some((item) => item.kind === 'limits' && item.acceptance !== undefined),
    inWords: items.some((item) => item.kind === 'line'),
    numbers: numbers.map(({ text, unit }, i): Part => {
      // A unit that all share is said once, at the end.
      const said = unit !== '' && (last(i, numbers) || numbers[i + 1]?.unit !== unit);
      const comma = last(i, numbers) ? '' : talk.separator(items);
      return said ? { text, unit: unit + comma } : { text: text + comma, unit: null };
    }),
    seconds: seconds.map(({ text, unit }, i) =>
      last(i, seconds)
        ? withUnit(text, unit)
        : `${seconds[i + 1]?.unit === unit ? text : withUnit(text, unit)}${talk.separator(items)}`,
    ),
  };
}

function last(i: number, all: readonly unknown[]): boolean {
  return i === all.length - 1;
}

function firstUnit(item: Arg, talk: Speech): { text: string; unit: string } {
  return item.kind === 'figure' || item.kind === 'limits' ? talk.number(item) : { text: talk.plain(item), unit: '' };
}

function secondUnit(item: Arg, talk: Speech): { text: string; unit: string } | undefined {
  if (item.kind === 'figure') return item.second && talk.number({ ...item, ...item.second });
  if (item.kind !== 'limits') return undefined;
  // What stands large is repeated: the acceptance limits, where there are any.
  const { second } = item.acceptance ?? item;
  return second && talk.number({ kind: 'limits', fact: item.fact, target: '', ...second });
}
