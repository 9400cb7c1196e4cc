/** Notes and captions hold no numbers: a number in words does not follow the spec. */
import type { Check, Fault } from '../check.ts';

const check: Check = {
  id: 'numeral-in-a-note',
  stage: 'card',
  severity: 'caution',
  why: 'When the number changes in the spec, the sentence keeps the old one, and both hang on the same post.',
  mend: 'Say it without the number, or give the number its place in the spec.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'sizing: Sand the glue faces last.',
    fails: 'sizing: Sand to 16.4 last.',
  },
  run: ({ seen }) => {
    const notes = new Map(seen.flatMap(({ notes: own }) => own).map(({ fact, text }) => [fact, text]));
    return [...notes].flatMap(([at, text]): Fault[] => {
      const numeral = /\d[\d.,/]*/.exec(text);
      if (!numeral) return [];
      return [
        {
          at,
          what: `The number "${numeral[0]}" stands in the words of a note or caption: it does not change with the spec.`,
          mend: 'Say it without the number.',
          against: [],
        },
      ];
    });
  },
};
export default check;
