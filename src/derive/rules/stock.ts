/** Boards: how thick they must be, the standard size that is, and the leaves a thick one is sawn into. */
import type { Use } from '../../facts/facts.ts';
import { practice, publishedIn } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import type { Part } from '../../facts/parts.ts';
import { boardOf, partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { LUMBER_SOURCE, thinnestAtLeast } from '../../reference/lumber.ts';
import { add, nominal, scale } from '../../units/arithmetic.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`stock.${Part}.${'needed' | 'lost' | 'board' | 'delivered' | 'rough' | 'surfaced'}`, Length>,
      Record<`stock.${Part}.boards`, Quantity<'count'>> {}
}

const INCH_NM = 25_400_000;
/** Standard sizes are whole sixteenths. */
const SIXTEENTHS = 16;

const rule: Rule = (subject) => partsOf(subject.spec).flatMap((part) => stock(subject, part));
export default rule;

function stock(subject: Subject, part: Part) {
  const { spec, plant } = subject;
  const board = (use: Use) => row(plant.stock, use(boardOf(spec, part).stock), 'plant.stock');
  const into = (use: Use): number => {
    const { resawn } = board(use);
    return resawn ? use(resawn.into).value : 1;
  };
  return [
    derivation({
      id: `stock.${part}.needed`,
      label: `${part}: rough thickness a piece must have`,
      formula:
        'planed at its thickest + what planing must take off to clean up, and no less than the rough stage at its thinnest',
      source: practice('tolerance chain, worst case: textbook stack'),
      value: (use) => {
        const planed = use.fact(`thickness.part.${part}.planed`);
        const removal = nominal(use.fact(`least-removal.part.${part}.planed`));
        const cleaned = add({ ...nominal(planed), value: planed.high ?? planed.value }, removal);
        const rough = use.fact(`thickness.part.${part}.rough`);
        return { ...cleaned, value: Math.max(cleaned.value, rough.low ?? rough.value) };
      },
    }),
    derivation({
      id: `stock.${part}.lost`,
      label: `${part}: thickness lost where a board is sawn into leaves`,
      formula: '(leaves − 1) × (kerf + wander of the saw to both sides); nothing of a board that is not sawn up',
      source: practice('common practice, no source'),
      value: (use) => {
        const { resawn } = board(use);
        if (!resawn) return lengthOfMm(0, 2);
        const name = use(resawn.saw);
        const saw = row(plant.machines, name, 'plant.machines');
        const kerf = nominal(use(wanted(saw.kerf, `plant.machines.${name}.kerf`)));
        const wander = nominal(use(wanted(saw.wander, `plant.machines.${name}.wander`)));
        return scale(add(kerf, scale(wander, 2)), use(resawn.into).value - 1);
      },
    }),
    derivation({
      id: `stock.${part}.board`,
      label: `${part}: rough thickness a board must have`,
      formula: 'leaves × thickness of a piece + what sawing it up loses',
      source: practice('common practice, no source'),
      value: (use) => add(scale(use.fact(`stock.${part}.needed`), into(use)), use.fact(`stock.${part}.lost`)),
    }),
    derivation({
      id: `stock.${part}.delivered`,
      label: `${part}: a piece at its thinnest, as delivered or as resawn`,
      formula: '(thinnest board delivered − what sawing it up loses) ÷ leaves',
      source: practice('common practice, no source'),
      value: (use) => {
        const least = nominal(use(board(use)['least-thickness']));
        const left = add(least, scale(use.fact(`stock.${part}.lost`), -1));
        return { ...left, value: Math.floor(left.value / into(use)) };
      },
    }),
    derivation({
      id: `stock.${part}.boards`,
      label: `${part}: boards it takes`,
      formula: 'pieces ÷ leaves a board, rounded up',
      source: practice('common practice, no source'),
      value: (use) => {
        const pieces = use.fact(`blank.${part}.pieces`);
        return { ...pieces, value: Math.ceil(pieces.value / into(use)) };
      },
    }),
    standard(part, 'rough', 'roughIn'),
    standard(part, 'surfaced', 'surfacedIn'),
  ];
}

function standard(part: Part, as: 'rough' | 'surfaced', column: 'roughIn' | 'surfacedIn') {
  return derivation({
    id: `stock.${part}.${as}`,
    label: `${part}: thinnest standard lumber that carries it, ${as === 'rough' ? 'rough' : 'bought surfaced on two sides'} (nominal size)`,
    formula: `thinnest size whose ${as === 'rough' ? 'rough' : 'surfaced'} thickness is at least what a board must have`,
    source: publishedIn(LUMBER_SOURCE),
    value: (use) => {
      const found = thinnestAtLeast(use.fact(`stock.${part}.board`).value, column);
      const { roughIn: inches } = found ?? hole('lumber thick enough');
      return { kind: 'length', value: inches * INCH_NM, unit: 'in', decimals: 3, denominator: SIXTEENTHS };
    },
  });
}
