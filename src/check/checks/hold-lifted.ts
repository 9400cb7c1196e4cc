/** A cutter that pulls the body up pulls no harder than the vacuum holds it down, with the factor of the plant. */
import { wanted } from '../../facts/row.ts';
import { formatNumber } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';
import { bed, cut, cuts, cutter, gasket, push, section, slab } from '../sketch.ts';
import { heldByVacuum, nameOfStep } from '../zones.ts';

const check: Check = {
  id: 'hold-lifted',
  stage: 'derived',
  severity: 'error',
  why: 'A spiral that cuts upward lifts the body off its gaskets: all vacuum is lost at once.',
  mend: 'Use a cutter that does not pull, take lighter cuts, or give the fixture another zone.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'side-force: 120 N',
    fails: 'side-force: 12 N\n    lift: 500 N',
  },
  sketch: section(
    bed(),
    slab({ left: 6, right: 54, top: -2, bottom: 14 }),
    gasket(14, 15, 2),
    gasket(46, 15, 2),
    cuts(cut({ from: 20, to: 34, depth: 6, at: -2 })),
    cutter({ x: 31, tip: 4, width: 6 }),
    push([44, 10], [44, 1]),
  ),
  run: (bench) =>
    heldByVacuum(bench).flatMap(({ setup, fixture }): Fault[] => {
      const seen = look(bench.facts, (use) => ({
        steps: use.fact(`hold.${setup}.steps`),
        factor: use(wanted(bench.subject.plant.plant?.['hold-factor'], 'plant.plant.hold-factor')),
      }));
      if (!seen) return [];
      const { steps, factor } = seen;
      const [worst] = steps
        .filter(({ lift, force }) => factor.value * lift > force)
        .toSorted((a, b) => a.force / a.lift - b.force / b.lift);
      if (!worst) return [];
      return [
        {
          at: fixture.title,
          what: `In set-up ${setup} the cutter at ${nameOfStep(worst.step)} pulls the body up with up to ${sayAs(newton, worst.lift)}. Times the factor of ${formatNumber(factor.value, '', factor.decimals)} that is ${sayAs(newton, factor.value * worst.lift)}, and the vacuum holds with ${sayAs(newton, worst.force)}.`,
          mend: `Let it pull no more than ${sayAs(newton, Math.floor(worst.force / factor.value))}, or give the fixture ${fixture.id} another zone.`,
          against: worst.from.slice(-1).map((at) => ({ at, text: 'how hard the cutter pulls' })),
          hangsOn: [`hold.${setup}.steps`],
        },
      ];
    }),
};
export default check;

const newton: Quantity<'force'> = { kind: 'force', value: 0, unit: 'N', decimals: 0 };
