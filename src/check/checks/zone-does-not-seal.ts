/** The gasket of every zone lies on flat wood all round: not over the edge, nor over anything cut before. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayPoint } from '../say.ts';
import { outline, plan, ring, zone } from '../sketch.ts';
import type { HeldByVacuum } from '../zones.ts';
import { heldByVacuum, nameOfStep } from '../zones.ts';

const check: Check = {
  id: 'zone-does-not-seal',
  stage: 'derived',
  severity: 'error',
  why: 'A gasket that hangs over an edge or a hollow lets air in: the zone never holds, and the pump pulls the others down with it.',
  mend: 'Move the zone or make it smaller, so that all of its gasket lies on flat wood, or lay it round the whole hollow.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'at: { x: -79, y: -108 }',
    fails: 'at: { x: -99, y: -108 }',
    also: ['hold-down-poor'],
  },
  sketch: plan(outline(), zone(-15, 3, 2, 14), ring(-9, 12, 3.6)),
  run: (bench) => heldByVacuum(bench).flatMap((held) => faults(bench, held)),
};
export default check;

function faults({ facts }: Bench, { setup, zones }: HeldByVacuum): Fault[] {
  return zones.flatMap(({ id, at }): Fault[] => {
    const fact = `zone.${setup}.${id}.leaks` as const;
    const leaks = look(facts, (use) => use.fact(fact));
    const [first] = leaks ?? [];
    if (!leaks || !first) return [];
    // Zones are drawn as they are on the fixture, of either hand.
    const where = sayPoint({ x: first.xMm, y: first.yMm }, 'right');
    const over = [...new Set(leaks.flatMap((leak) => (leak.id === undefined ? [] : [nameOfStep(leak.id)])))];
    const what =
      first.kind === 'edge'
        ? `hangs over the edge of the body near ${where}`
        : first.kind === 'mouth'
          ? `lies over ${over.join(', ')} near ${where}`
          : `lies where the back is not flat near ${where}`;
    return [
      {
        at,
        what: `The gasket of zone ${id} ${what}, in set-up ${setup}.`,
        mend:
          first.kind === 'mouth'
            ? `Move the zone clear of ${over.join(', ')}, or lay the gasket round the whole of it.`
            : 'Move the zone inward or make it smaller.',
        against: [],
        hangsOn: [fact],
      },
    ];
  });
}
