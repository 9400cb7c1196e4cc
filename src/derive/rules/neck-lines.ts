/** Where frets, neck joint and saddles lie. */
import { practice, publishedIn } from '../../facts/facts.ts';
import { add, nominal, subtract } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `fret.${number}.from-nut`]: Length;
    'neck.joint-line': Length;
    'bridge.from-nut': Length;
  }
}

/** More frets than any fingerboard has: a slip of the keyboard must not become a million facts. */
const MOST_FRETS = 36;

/** Distance of fret n from the nut: L(1 − 2^(−n/12)), equal temperament. Lengths in nm, rounded to the nanometre. */
export const fretFromNut = (scaleNm: number, fret: number): number => Math.round(scaleNm * (1 - 2 ** (-fret / 12)));

const temperament = publishedIn(
  'd = L·(1 − 2^(−n/12)), twelve-tone equal temperament; the constant 1/(1 − 2^(−1/12)) = 17.817',
);

const rule: Rule = ({ spec }) => [
  ...Array.from({ length: MOST_FRETS }, (_, i) => i + 1).map((n) =>
    derivation({
      id: `fret.${n}.from-nut`,
      label: `fret ${n}, from the nut`,
      formula: 'L(1 − 2^(−n/12)), measured from the nut and never from fret to fret',
      source: temperament,
      value: (use) => {
        const scale = use(spec.neck.scale);
        return { ...nominal(scale), value: fretFromNut(scale.value, n), decimals: Math.max(scale.decimals, 2) };
      },
    }),
  ),
  derivation({
    id: 'neck.joint-line',
    label: 'bridge line to the joint fret, where the neck leaves the body',
    formula: 'scale length − distance of the joint fret from the nut',
    source: temperament,
    value: (use) => {
      const fret = use(spec.neck['joint-fret']).value;
      return nominal(subtract(use(spec.neck.scale), use.fact(`fret.${fret}.from-nut`)));
    },
  }),
  derivation({
    id: 'bridge.from-nut',
    label: 'nut to the saddles, compensated',
    formula: 'scale length + compensation',
    source: practice('strings sharpen when fretted; common practice, no source'),
    value: (use) => add(nominal(use(spec.neck.scale)), nominal(use(spec.bridge.compensation))),
  }),
];
export default rule;
