/** What the drilling jig takes out of the blank: holes from the top of it, right through where no depth is given. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Region } from '../../geometry/polygon.ts';
import { shapePolygon } from '../../geometry/shape.ts';
import type { Pocket } from '../../geometry/solid/solid.ts';
import { level } from '../../geometry/solid/solid.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { surfaceHeight } from '../surfaces.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** As deep as its limits allow; a floor under the back where it goes through. */
    'location.holes': readonly Pocket[];
  }
}

const rule: Rule = (subject) => [
  derivation({
    id: 'location.holes',
    label: 'holes of the drilling jig',
    formula:
      'places and diameters of the jig’s pattern; floor at the height of the blank’s top less the greatest depth',
    source: byDefinition,
    value: (use) => holes(subject, use),
  }),
];
export default rule;

function holes(subject: Subject, use: Use): readonly Pocket[] {
  const { spec, plant } = subject;
  const { pattern } = row(plant.jigs, use(spec.location.jig), 'plant.jigs');
  const { holes: rows } = row(plant.patterns, use(pattern), 'plant.patterns');
  const depth = spec.location.depth && use(spec.location.depth);
  const zMm = depth ? toMm(surfaceHeight(subject, use, 'blank-face')) - (depth.high ?? depth.value) / 1e6 : -Infinity;
  return namesOf(rows).map((id) => {
    const { at, diameter } = rows[id]!;
    const made = shapePolygon(
      { kind: 'circle', diameterMm: toMm(use(diameter)) },
      { xMm: toMm(use(at.x)), yMm: toMm(use(at.y)) },
    );
    const region: Region = made.ok ? [made.polygon] : use(hole(diameter.id));
    return { kind: 'pocket', id, region, opens: 'top', floor: level(zMm), roofMm: undefined };
  });
}
