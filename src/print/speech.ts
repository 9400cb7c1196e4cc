/** The words of a language bound to where its mistakes are told: what the views need to put a card's data into markup. */
import type { Arg, Figure, Limits } from '../cards/card.ts';
import type { DrawingWords } from './drawing/drawing.ts';
import { segmentsMarkup, type Markup } from './markup.ts';
import {
  called,
  plainText,
  rangeText,
  resolve,
  sentence,
  separator,
  withUnit,
  type Segment,
  type Tell,
} from './say.ts';
import { inLanguage } from '../units/in-language.ts';
import type { Words } from './words.ts';

export interface Speech {
  readonly html: (arg: Arg) => Markup;
  readonly plain: (arg: Arg) => string;
  /** A sentence of the words file's own, with names put in. */
  readonly phrase: (id: string, names?: Readonly<Record<string, string>>) => string;
  readonly number: (value: Figure | Limits) => NumberView;
  /** A name in this language. */
  readonly name: (name: string) => string;
  /** A number with this language's decimal mark. */
  readonly decimal: (text: string) => string;
  /** Between the items of a series. */
  readonly separator: (items: readonly Arg[]) => string;
  readonly language: string;
  /** Its texts of safety were translated, and nobody went over them. */
  readonly unreviewed: boolean;
}

/** A number set large: the gauge's unit first, the second one apart. */
export interface NumberView {
  readonly text: string;
  readonly unit: string;
  readonly second: string | null;
  /** Where a reading is accepted by less than the limits: that stands large, and the limits here. */
  readonly limits: string | null;
}

export function speech(words: Words, tell: Tell): Speech {
  const plain = (arg: Arg) => plainText(resolve(arg, words, tell));
  return {
    html: (arg) => segmentsMarkup(begun(arg, resolve(arg, words, tell))),
    plain,
    phrase: (id, names = {}) => {
      const args = Object.fromEntries(Object.entries(names).map(([name, text]) => [name, named(text)]));
      return plainText(sentence(id, args, words, tell));
    },
    number: (value) => numberView(value, words, tell),
    name: (name) => called(name, words),
    decimal: (text) => inLanguage(text, words.decimal),
    separator: (items) => separator(words, items),
    language: words.language,
    unreviewed: !words.reviewed,
  };
}

/** A sentence begins with a capital, whatever stands first in it; a name or a unit stays as it is written. */
function begun(arg: Arg, segments: readonly Segment[]): readonly Segment[] {
  const [first, ...rest] = segments;
  if (arg.kind !== 'line' || !first || first.figure) return segments;
  return [{ ...first, text: first.text.charAt(0).toUpperCase() + first.text.slice(1) }, ...rest];
}

function named(text: string): Arg {
  return { kind: 'name', text, fact: '' };
}

function numberView(value: Figure | Limits, words: Words, tell: Tell): NumberView {
  if (value.kind === 'figure') {
    const { unit, second } = value;
    const [text, repeated] = [value.text, second?.text ?? ''].map((one) => inLanguage(one, words.decimal)) as [
      string,
      string,
    ];
    return { text, unit, second: second ? withUnit(repeated, second.unit) : null, limits: null };
  }
  const { unit, acceptance } = value;
  const { low, high, second } = acceptance ?? value;
  return {
    text: rangeText(low, high, words, tell),
    unit,
    second: second ? withUnit(rangeText(second.low, second.high, words, tell), second.unit) : null,
    limits: acceptance ? withUnit(rangeText(value.low, value.high, words, tell), unit) : null,
  };
}

/** How a drawing speaks: `scale` is the 5 of 1:5. */
export function drawingWords(talk: Speech, title: string, scale: number): DrawingWords {
  return {
    title,
    scale: talk.phrase('drawing.scale', { scale: `1:${talk.decimal(String(scale))}` }),
    text: talk.plain,
    both: (value) => {
      // A drawing shows the body, not how it is measured: the limits themselves.
      const { text, unit, second } = talk.number(value.kind === 'limits' ? withoutAcceptance(value) : value);
      return [withUnit(text, unit), ...(second === null ? [] : [second])];
    },
    lineWord: (kind) => talk.phrase(`drawing.${kind}`),
  };
}

function withoutAcceptance({ acceptance: _less, ...limits }: Limits): Limits {
  return limits;
}
