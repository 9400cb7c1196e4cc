/** How high the strings run over the top at the bridge, from the pocket, the neck's heel and its angle. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { cutsOf } from '../../facts/cuts.ts';
import { hole } from '../../facts/leaf.ts';
import { highestPoint } from '../../facts/parts.ts';
import { wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { bounds } from '../../geometry/measure.ts';
import { depthOn } from '../../geometry/solid/face.ts';
import { floorAt } from '../../geometry/solid/solid.ts';
import { add, scaledCauses, withCauses } from '../../units/arithmetic.ts';
import type { Cause, Length } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { causesUpright } from '../wood.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    'bridge.string-height': Length;
  }
}

const rule: Rule = (subject) =>
  subject.spec.neck?.heel === undefined
    ? []
    : [
        derivation({
          id: 'bridge.string-height',
          label: 'strings over the top at the bridge line',
          formula:
            'floor of the pocket, carried on at its slope to the bridge line, + heel + strings over the fingerboard plane − top there',
          source: byDefinition,
          value: (use) => height(subject, use),
        }),
      ];
export default rule;

function height(subject: Subject, use: Use): Length {
  const { spec } = subject;
  const name = use(spec.neck.pocket);
  const pocket = use.fact(`cavity.${name}.void`);
  if (pocket.kind !== 'pocket') return use(hole('neck.pocket'));
  const topMm = toMm(use.fact(`thickness.body.machined.${highestPoint(spec)}`)) - depthOn(use.fact('face.top'), 0, 0);
  const floor = lengthOfMm(floorAt(pocket.floor, 0) - topMm, 2);
  const rest = add(use(wanted(spec.neck.heel, 'neck.heel')), use(wanted(spec.neck.strings, 'neck.strings')));
  return add(withCauses(floor, pocketCauses(subject, use, name)), rest);
}

/** The floor against the top at the bridge line; its fall counts by how far beyond the pocket that line lies. */
function pocketCauses(subject: Subject, use: Use, name: string): readonly Cause[] {
  const cut = cutsOf(subject.spec).find(({ kind, id }) => kind === 'cavity' && id === name);
  const drawn = use.fact(`cavity.${name}.drawn`);
  if (!cut || !drawn.ok) return [];
  const { falls, ...spec } = cut.spec;
  const left = { mm: 0, xMm: 0, yMm: 0, through: 'floor', sharedMm2: 0, up: 1 } as const;
  const upright = causesUpright(subject, use, { cut: { ...cut, spec } }, 'top', left);
  const { minY, maxY } = bounds(drawn.polygon)!;
  const beyond = minY / (maxY - minY);
  const own = falls ? (use(falls).causes ?? []) : [];
  return [...scaledCauses(upright, -1), ...scaledCauses(own, beyond)];
}
