/** The vacuum zones of a fixture under the body that lies on it: gaskets, and what the face on the fixture has open. */
import { regionCentroid } from '../../geometry/measure.ts';
import { mirror } from '../../geometry/transform.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import { cutId, cutsOf } from '../../facts/cuts.ts';
import type { Drawing, Mark } from '../card.ts';
import type { SetupId } from '../cutting-order.ts';
import { lettersOfZones } from '../hold-down.ts';
import { setupOf } from '../machining.ts';
import type { Desk } from '../station.ts';
import { say } from '../station.ts';
import { hundredth } from './coordinates.ts';
import { outlineMarks } from './plan.ts';

/** As the body lies on the fixture: what looks down is seen through it, hidden. */
export function zonePlan(desk: Desk, setup: SetupId): readonly Drawing[] {
  const letters = lettersOfZones(desk, setup);
  if (letters.size === 0) return [];
  const back = desk.use(setupOf(desk, setup).up) === 'back';
  const seen = (polygon: Polygon): number[] => [...(back ? mirror(polygon) : polygon)].map(hundredth);
  const zones = [...letters].flatMap(([zone, text]): Mark[] => {
    const place = desk.use.fact(`zone.${setup}.${zone}.place`);
    if (!place) return [];
    const middle = regionCentroid([place.inside])!;
    return [
      { kind: 'region', hatch: 'gasket', rings: [...place.whole, place.inside].map(seen) },
      { kind: 'label', x: hundredth(back ? -middle.x : middle.x), y: hundredth(middle.y), text, anchor: 'middle' },
    ];
  });
  const rest = back ? 'top' : 'back';
  const mouths = cutsOf(desk.subject.spec).flatMap((cut): Mark[] => {
    const own = desk.use.fact(`${cutId(cut)}.void`);
    if (own.kind !== 'pocket' || own.opens !== rest || desk.use(cut.spec.setup) === setup) return [];
    return own.region.map((ring) => ({ kind: 'line', line: 'hidden', points: seen(ring), closed: true }));
  });
  const outline = back
    ? [{ kind: 'line', line: 'outline', points: seen(desk.use.fact('outline.polygon')), closed: true } as const]
    : outlineMarks(desk);
  return [{ id: 'zones', caption: say(`caption.zones-${rest}`), scale: 2.5, marks: [...outline, ...mouths, ...zones] }];
}
