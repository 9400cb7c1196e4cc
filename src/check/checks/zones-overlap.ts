/** Two zones of a fixture have a gasket each, side by side: neither their areas nor their gaskets lie on each other. */
import { regionArea } from '../../geometry/measure.ts';
import { intersection } from '../../geometry/offset.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { line, outline, plan, rect, ring, zone } from '../sketch.ts';
import type { HeldByVacuum } from '../zones.ts';
import { heldByVacuum } from '../zones.ts';

const check: Check = {
  id: 'zones-overlap',
  stage: 'derived',
  severity: 'error',
  why: 'Where two zones lie on each other their area counts twice, and one opened opens the other.',
  mend: 'Move them apart by the width of both gaskets, or make one zone of them.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'length: 90, width: 76 }, at: { x: -77, y: 100 }',
    fails: 'length: 98, width: 90 }, at: { x: -70, y: 119 }',
  },
  sketch: plan(
    outline(),
    zone(-5, -4, 17, 8),
    zone(-17, -7, 3, 5),
    line(`${rect(-5, -4, 17, 8, 2.4)} ${rect(-3.6, -2.6, 15.6, 6.6, 1.4)}`, 'thin'),
    ring(-1, 0.6, 3.6),
  ),
  run: (bench) => heldByVacuum(bench).flatMap((held) => faults(bench, held)),
};
export default check;

/** What only touches shares an area of rounding, mm². */
const TOUCHING_MM2 = 1e-2;

function faults({ facts }: Bench, { setup, zones }: HeldByVacuum): Fault[] {
  return zones.flatMap((a, i) =>
    zones.slice(i + 1).flatMap((b): Fault[] => {
      const places = look(facts, (use) => [
        use.fact(`zone.${setup}.${a.id}.place`)!.whole,
        use.fact(`zone.${setup}.${b.id}.place`)!.whole,
      ]);
      if (!places || Math.abs(regionArea(intersection(places[0]!, places[1]!))) < TOUCHING_MM2) return [];
      return [
        {
          at: b.at,
          what: `Zones ${a.id} and ${b.id} overlap, their gaskets counted.`,
          mend: 'Move one of them until the gaskets lie side by side, or make one zone of both.',
          against: [{ at: a.at, text: 'the other zone' }],
          hangsOn: [`zone.${setup}.${a.id}.place`, `zone.${setup}.${b.id}.place`],
        },
      ];
    }),
  );
}
