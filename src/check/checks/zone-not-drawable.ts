/** The outline of every zone is one closed line that does not cross itself. */
import { row } from '../../facts/row.ts';
import { selfCrossing } from '../../geometry/crossing.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayPoint, sentence } from '../say.ts';
import { crossed, outline, plan, ring, shape } from '../sketch.ts';
import type { HeldByVacuum } from '../zones.ts';
import { heldByVacuum } from '../zones.ts';

const check: Check = {
  id: 'zone-not-drawable',
  stage: 'derived',
  severity: 'error',
  why: 'A zone that cannot be drawn has no area: what holds the body is not known.',
  mend: 'Draw its shape in one sweep that does not cross itself.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'shape: { kind: rectangle, length: 144, width: 86 }, at: { x: -79, y: -108 }',
    fails: 'shape: { kind: path, path: M -30 -30 L 30 30 L 30 -30 L -30 30 Z }, at: { x: -79, y: -108 }',
  },
  sketch: plan(outline(), shape(crossed(-6, 0, 10, 6), 'soft', 'edge'), ring(-6, 0, 3.2)),
  run: (bench) => heldByVacuum(bench).flatMap((held) => faults(bench, held)),
};
export default check;

function faults({ subject: { plant }, facts }: Bench, { setup, fixture, zones }: HeldByVacuum): Fault[] {
  return zones.flatMap(({ id }): Fault[] => {
    const drawn = look(facts, (use) => use.fact(`zone.${setup}.${id}.drawn`));
    if (!drawn) return [];
    const { shape } = row(plant.fixtures, fixture.id, 'plant.fixtures').zones![id]!;
    const at = shape.path?.id ?? shape.kind.id;
    if (!drawn.ok) {
      const within = shape.path ? { within: [drawn.at, drawn.at + 1] as const } : {};
      return [
        { at, ...within, what: `Zone ${id} cannot be drawn: ${drawn.what}.`, mend: sentence(drawn.mend), against: [] },
      ];
    }
    const crossing = selfCrossing(drawn.polygon);
    if (!crossing) return [];
    const what = `The shape of zone ${id} crosses itself near ${sayPoint(crossing, 'right')}.`;
    return [{ at, what, mend: 'Draw it in one sweep round the zone.', against: [] }];
  });
}
