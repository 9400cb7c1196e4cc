/** How high the strings run over the top at the bridge, from the pocket, the neck's heel and its angle. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { cutsOf } from '../../facts/cuts.ts';
import { hole } from '../../facts/leaf.ts';
import { highestPoint } from '../../facts/parts.ts';
import { wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
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
            'floor of the pocket, carried on at its slope to the bridge line, or the back of a neck that runs through, + heel + strings over the fingerboard plane − top there',
          source: byDefinition,
          value: (use) => height(subject, use),
        }),
      ];
export default rule;

function height(subject: Subject, use: Use): Length {
  const { spec } = subject;
  const topMm = toMm(use.fact(`thickness.body.machined.${highestPoint(spec)}`)) - depthOn(use.fact('face.top'), 0, 0);
  const rest = add(use(wanted(spec.neck.heel, 'neck.heel')), use(wanted(spec.neck.strings, 'neck.strings')));
  const { zMm, causes } = spec.neck.pocket ? pocketFloor(subject, use, use(spec.neck.pocket)) : backFace(subject, use);
  return add(withCauses(lengthOfMm(zMm - topMm, 2), causes), rest);
}

/** Where the heel stands, carried on to the bridge line, and why it may stand elsewhere against the top there. */
interface Seat {
  readonly zMm: number;
  readonly causes: readonly Cause[];
}

/** The top of the body at the bridge line, where the strings' height counts from. */
const AT_BRIDGE = { mm: 0, xMm: 0, yMm: 0, through: 'floor', sharedMm2: 0, up: 1 } as const;

/** Its depth counts as it is; what it leans counts by how far the bridge line lies beyond the two points it is measured at. */
function pocketFloor(subject: Subject, use: Use, name: string): Seat {
  const pocket = use.fact(`cavity.${name}.void`);
  const cut = cutsOf(subject.spec).find(({ kind, id }) => kind === 'cavity' && id === name);
  if (pocket.kind !== 'pocket' || !cut) return use(hole('neck.pocket'));
  const { falls: _falls, ...level } = cut.spec;
  const upright = causesUpright(subject, use, { cut: { ...cut, spec: level } }, 'top', AT_BRIDGE);
  const beyond = use.fact('neck.point.tail').y / toMm(use.fact('neck.points-apart'));
  const lean = use.fact('neck.fall').causes ?? [];
  return {
    zMm: floorAt(pocket.floor, 0),
    causes: [...scaledCauses(upright, -1), ...scaledCauses(lean, beyond)],
  };
}

/** A neck that runs through the body has no pocket: it is one with the back. */
const backFace = (subject: Subject, use: Use): Seat => ({
  zMm: 0,
  causes: scaledCauses(causesUpright(subject, use, 'back', 'top', AT_BRIDGE), -1),
});
