/** Through every step the vacuum holds the body against the side force of its cutter, with the factor of the plant. */
import { row, wanted } from '../../facts/row.ts';
import { formatNumber } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';
import { bed, cutter, gasket, ideal, push, rect, section, slab } from '../sketch.ts';
import type { HeldByVacuum } from '../zones.ts';
import { heldByVacuum, nameOfStep } from '../zones.ts';

const check: Check = {
  id: 'hold-down-poor',
  stage: 'derived',
  severity: 'error',
  why: 'The cutter pushes the body off its gaskets: it is spoilt, and may be thrown at whoever stands there.',
  mend: 'Give the fixture another zone, cut what opens a zone last, or take lighter cuts.',
  example: { file: 'models/plant/plant.yaml', passes: 'interlock: 70 kPa', fails: 'interlock: 40 kPa' },
  sketch: section(
    bed(),
    slab({ left: 18, right: 56, bottom: 15 }),
    ideal(rect(11, 0, 49, 15)),
    gasket(19, 15),
    gasket(46, 15),
    cutter({ x: 13.8, tip: 8, width: 8, flutes: 10 }),
    push([28, 7], [44, 7]),
  ),
  run: (bench) => heldByVacuum(bench).flatMap((held) => faults(bench, held)),
};
export default check;

const newton: Quantity<'force'> = { kind: 'force', value: 0, unit: 'N', decimals: 0 };

function faults({ subject: { spec, plant }, facts }: Bench, { setup, fixture, zones }: HeldByVacuum): Fault[] {
  const seen = look(facts, (use) => {
    const machine = use(spec.setups[setup]!.machine);
    const { interlock, friction } = wanted(row(plant.machines, machine, 'plant.machines').vacuum, 'vacuum');
    const factorLeaf = wanted(plant.plant?.['hold-factor'], 'plant.plant.hold-factor');
    return {
      steps: use.fact(`hold.${setup}.steps`),
      opened: use.fact(`zones.${setup}.opened`),
      difference: use.fact(`hold.${setup}.difference`),
      friction: use(friction),
      factor: use(factorLeaf),
      factorAt: factorLeaf.id,
      at: interlock.id,
    };
  });
  if (!seen?.difference || zones.length === 0) return [];
  const { steps, opened, difference, friction, factor } = seen;
  // The step that is held with the least to spare: mended, the others are too, or are said next.
  const poor = steps
    .filter(({ holds, side }) => holds < side)
    .toSorted((a, b) => a.holds / a.side - b.holds / b.side)[0];
  if (!poor) return [];
  const plain = (q: Quantity<'count'>) => formatNumber(q.low ?? q.value, '', q.decimals);
  const opening = opened.filter(({ zone, step }) => poor.gone.includes(zone) && step !== 'start');
  const needs = (factor.value * poor.side) / (friction.low ?? friction.value) + poor.lift;
  const lacks = (needs - poor.force) / difference.value;
  const of =
    poor.lift > 0 ? `(${sayAs(newton, poor.force)} − ${sayAs(newton, poor.lift)} lift)` : sayAs(newton, poor.force);
  const later = opening.find(({ step }) => step !== poor.step);
  const without =
    opening.length === 0
      ? ''
      : ` ${opening.map(({ zone, step }) => `${nameOfStep(step)} has opened zone ${zone}`).join('; ')}.`;
  return [
    {
      at: fixture.title,
      what: `In set-up ${setup} the cutter at ${nameOfStep(poor.step)} pushes sideways with up to ${sayAs(newton, poor.side)}. The vacuum holds against ${sayAs(newton, poor.holds)}: ${plain(friction)} (friction) × ${of} ÷ ${plain(factor)} (factor of the plant).${without}`,
      mend: `Give the fixture ${fixture.id} ${sayAs({ kind: 'area', value: 0, unit: 'cm²', decimals: 0 }, Math.ceil(lacks * 1e4) / 1e4)} more of zones that still hold in that cut${later ? `, or cut ${nameOfStep(later.step)} after it` : ''}, or take a lighter cut.`,
      against: [
        { at: seen.at, text: 'the least vacuum the interlock lets through' },
        ...poor.from.map((at) => ({ at, text: 'how hard the cutter pushes and pulls at most' })),
        { at: seen.factorAt, text: 'the factor of the plant' },
      ],
      hangsOn: [`hold.${setup}.steps`],
    },
  ];
}
