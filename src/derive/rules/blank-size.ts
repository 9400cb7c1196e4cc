/** Sizes a blank and its pieces are cut to, and the timber that takes. */
import type { Use } from '../../facts/facts.ts';
import { practice, publishedIn } from '../../facts/facts.ts';
import type { Part } from '../../facts/parts.ts';
import { boardOf, capOf, partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { bounds } from '../../geometry/measure.ts';
import { add, nominal, scale } from '../../units/arithmetic.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`blank.${Part}.pieces`, Quantity<'count'>>,
      Record<`blank.${Part}.${'piece-width' | 'piece-jointed'}`, Length>,
      Record<`blank.${Part}.${'timber' | 'bought'}`, Quantity<'timber-volume'>> {
    'blank.length': Length;
    'blank.width': Length;
  }
}

/** 1 in: stock thinner than this is tallied as 1 in. */
const LEAST_TALLY_NM = 25_400_000;
const NM3_PER_M3 = 1e27;

const extents = practice('blank drawn round the rough line, seam on the centreline; common practice, no source');

const rule: Rule = (subject) => [
  derivation({
    id: 'blank.length',
    label: 'length of the blank',
    formula: 'extent of the rough line along the centreline + what the line wants beyond it at both ends',
    source: extents,
    value: (use) => {
      const box = bounds(use.fact('saw.rough.line'))!;
      return beyond(subject, use, box.maxY - box.minY);
    },
  }),
  derivation({
    id: 'blank.width',
    label: 'width of the blank',
    formula: 'twice the widest half of the rough line + what the line wants beyond it at both edges',
    source: extents,
    value: (use) => {
      const box = bounds(use.fact('saw.rough.line'))!;
      return beyond(subject, use, 2 * Math.max(-box.minX, box.maxX));
    },
  }),
  ...partsOf(subject.spec).flatMap((part) => timber(subject, part)),
];
export default rule;

/** Timber by board measure: pieces × nominal rough thickness × width × length, stock under 1 in counted as 1 in; lengths in nm. */
export function boardMeasure({ pieces, roughNm, widthNm, lengthNm }: Boards): Quantity<'timber-volume'> {
  const value = (pieces * Math.max(roughNm, LEAST_TALLY_NM) * widthNm * lengthNm) / NM3_PER_M3;
  return { kind: 'timber-volume', value, unit: 'bf', decimals: 2 };
}

interface Boards {
  readonly pieces: number;
  readonly roughNm: number;
  readonly widthNm: number;
  readonly lengthNm: number;
}

function beyond({ spec, plant }: Subject, use: Use, extentMm: number): Length {
  const over = use(row(plant.lines, use(spec.line), 'plant.lines')['blank-over']);
  return add(lengthOfMm(extentMm), scale(nominal(over), 2));
}

function timber({ spec, plant }: Subject, part: Part) {
  const line = (use: Use) => row(plant.lines, use(spec.line), 'plant.lines');
  return [
    derivation({
      id: `blank.${part}.pieces`,
      label: `${part}: pieces`,
      formula: 'as given',
      source: { kind: 'definition' },
      value: (use) => use(part === 'cap' ? capOf(spec).halves : wanted(spec.timber[part], `timber.${part}`).pieces),
    }),
    derivation({
      id: `blank.${part}.piece-width`,
      label: `${part}: width of a piece before jointing`,
      formula:
        'width of the blank ÷ pieces + jointing for each jointed edge (none of one piece, one of two, two of more)',
      source: practice('all pieces are cut alike; common practice, no source'),
      value: (use) => {
        const count = use.fact(`blank.${part}.pieces`).value;
        const share = scale(use.fact('blank.width'), 1 / count);
        if (count === 1) return share;
        const jointing = use(wanted(line(use).jointing, `plant.lines.${use(spec.line)}.jointing`));
        return add(share, scale(nominal(jointing), Math.min(count - 1, 2)));
      },
    }),
    derivation({
      id: `blank.${part}.piece-jointed`,
      label: `${part}: width of a piece after jointing, at least`,
      formula: 'width of the blank ÷ pieces',
      source: practice('all pieces are cut alike; common practice, no source'),
      value: (use) => scale(use.fact('blank.width'), 1 / use.fact(`blank.${part}.pieces`).value),
    }),
    derivation({
      id: `blank.${part}.timber`,
      label: `${part}: timber in its pieces, by board measure`,
      formula: 'boards × nominal rough thickness × width × length; stock under 1 in counts as 1 in',
      source: publishedIn('board foot = 144 in³ of nominal rough size, NHLA practice as quoted by trade pages'),
      value: (use) => {
        const stock = row(plant.stock, use(boardOf(spec, part).stock), 'plant.stock');
        const roughNm = use(stock.rough).value;
        const { value: pieces } = use.fact(`stock.${part}.boards`);
        const widthNm = use.fact(`blank.${part}.piece-width`).value;
        return boardMeasure({ pieces, roughNm, widthNm, lengthNm: use.fact('blank.length').value });
      },
    }),
    derivation({
      id: `blank.${part}.bought`,
      label: `${part}: timber to draw from the store`,
      formula: 'timber in its pieces ÷ yield of the line',
      source: practice('share of bought timber that ends in blanks; a figure of the plant'),
      value: (use) => scale(use.fact(`blank.${part}.timber`), 1 / use(line(use).yield).value),
    }),
  ];
}
