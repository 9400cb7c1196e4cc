/** The blank as it leaves the press, or the slab as sized: least and most it can be, and what is likely. */
import { practice, publishedIn } from '../../facts/facts.ts';
import { partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import { add, nominal, rootSumSquare } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'thickness.blank': Length;
    'thickness.blank.rss': Length;
  }
}

const rule: Rule = ({ spec, plant }) => {
  const slab = partsOf(spec).includes('slab');
  return [
    derivation({
      id: 'thickness.blank',
      label: slab ? 'blank: the slab as sized' : 'blank: cap, glue line and back',
      formula: slab
        ? 'slab sized; limits with the drift of its moisture'
        : 'cap sized + glue line + back sized; limits are the worst case, with the drift of their moisture',
      source: practice('tolerance chain, worst case: textbook stack'),
      value: (use) => {
        if (slab) return add(use.fact('thickness.part.slab.sized'), use.fact('movement.slab.drift'));
        const name = use(spec.line);
        const line = row(plant.lines, name, 'plant.lines');
        return add(
          use.fact('thickness.part.cap.sized'),
          use(wanted(line['glue-line'], `plant.lines.${name}.glue-line`)),
          use.fact('thickness.part.back.sized'),
          use.fact('movement.cap.drift'),
          use.fact('movement.back.drift'),
        );
      },
    }),
    derivation({
      id: 'thickness.blank.rss',
      label: 'blank: half width of the likely spread',
      formula: '√Σt², t the half widths of cap, glue line and back',
      source: publishedIn('root-sum-square stack for independent, centred, equally capable parts (textbook)'),
      value: (use) => {
        const blank = use.fact('thickness.blank');
        return { ...nominal(blank), value: rootSumSquare(blank.causes ?? []) };
      },
    }),
  ];
};
export default rule;
