/** The fingerboard over the body: how high its plane lies, where it ends, and whether it clears the top. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { cutsOf } from '../../facts/cuts.ts';
import { hole } from '../../facts/leaf.ts';
import { highestPoint } from '../../facts/parts.ts';
import { wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { depthOn } from '../../geometry/solid/face.ts';
import { floorAt } from '../../geometry/solid/solid.ts';
import { add, scaledCauses, subtract, withCauses } from '../../units/arithmetic.ts';
import type { Cause, Length } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { causesUpright } from '../wood.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** From the bridge line. */
    'neck.board-end': Length;
    /** Plane of the fingerboard over the top, where the neck leaves the body and where the board ends. */
    'neck.plane.joint': Length;
    'neck.plane.end': Length;
    /** Least room between the underside of the board and the top, over the body. */
    'neck.board-clearance': Length;
  }
}

const rule: Rule = (subject) => {
  const neck = subject.spec.neck as typeof subject.spec.neck | undefined;
  return [
    ...(neck?.end === undefined
      ? []
      : [
          derivation({
            id: 'neck.board-end',
            label: 'bridge line to the end of the fingerboard',
            formula: 'scale length − distance of the last fret from the nut − what the board runs on beyond it',
            source: byDefinition,
            value: (use) => {
              const last = use.fact(`fret.${use(subject.spec.neck.frets).value}.from-nut`);
              return subtract(use(subject.spec.neck.scale), last, use(wanted(subject.spec.neck.end, 'neck.end')));
            },
          }),
        ]),
    ...(neck?.heel === undefined || neck.pocket === undefined ? [] : planes(subject)),
  ];
};
export default rule;

const planes = (subject: Subject) => [
  derivation({
    id: 'neck.plane.joint',
    label: 'plane of the fingerboard over the top, at the joint fret',
    formula: 'floor of the pocket + heel − top there',
    source: byDefinition,
    value: (use) => planeOver(subject, use, toMm(use.fact('neck.joint-line'))),
  }),
  ...(subject.spec.neck.end === undefined
    ? []
    : [
        derivation({
          id: 'neck.plane.end',
          label: 'plane of the fingerboard over the top, where the board ends',
          formula: 'floor of the pocket, carried on at its slope, + heel − top there',
          source: byDefinition,
          value: (use) => planeOver(subject, use, toMm(use.fact('neck.board-end'))),
        }),
      ]),
  ...(subject.spec.neck.board === undefined || subject.spec.neck.end === undefined
    ? []
    : [
        derivation({
          id: 'neck.board-clearance',
          label: 'room between the fingerboard and the top',
          formula:
            'plane − thickness of the board, where that is least between the joint fret and the end of the board',
          source: byDefinition,
          value: (use) => clearance(subject, use),
        }),
      ]),
];

/** How close the places are at which the top is looked at under the board, mm. */
const STEP_MM = 2;

function clearance(subject: Subject, use: Use): Length {
  const [from, to] = [toMm(use.fact('neck.board-end')), toMm(use.fact('neck.joint-line'))];
  const count = Math.max(1, Math.ceil((to - from) / STEP_MM));
  const nominalAt = Array.from({ length: count + 1 }, (_, i) => {
    const y = from + ((to - from) * i) / count;
    return { y, mm: planeMm(subject, use, y) };
  });
  const { y } = nominalAt.reduce((best, one) => (one.mm < best.mm ? one : best));
  return subtract(planeOver(subject, use, y), use(wanted(subject.spec.neck.board, 'neck.board')));
}

function pocketAt(subject: Subject, use: Use) {
  const name = use(wanted(subject.spec.neck.pocket, 'neck.pocket'));
  const pocket = use.fact(`cavity.${name}.void`);
  const cut = cutsOf(subject.spec).find(({ kind, id }) => kind === 'cavity' && id === name);
  return pocket.kind === 'pocket' && cut ? { pocket, cut } : use<never>(hole('neck.pocket'));
}

/** Top of the centreline at a place; where the pocket is open, the top as it was carved there. */
function planeMm(subject: Subject, use: Use, yMm: number): number {
  const { pocket } = pocketAt(subject, use);
  const high = toMm(use.fact(`thickness.body.machined.${highestPoint(subject.spec)}`));
  const heel = toMm(use(wanted(subject.spec.neck.heel, 'neck.heel')));
  return floorAt(pocket.floor, yMm) + heel - (high - depthOn(use.fact('face.top'), 0, yMm));
}

function planeOver(subject: Subject, use: Use, yMm: number): Length {
  const { cut } = pocketAt(subject, use);
  const { falls: _falls, ...level } = cut.spec;
  const at = { mm: 0, xMm: 0, yMm, through: 'floor', sharedMm2: 0, up: 1 } as const;
  const upright = causesUpright(subject, use, { cut: { ...cut, spec: level } }, 'top', at);
  const from = (use.fact('neck.point.tail').y - yMm) / toMm(use.fact('neck.points-apart'));
  const lean: readonly Cause[] = use.fact('neck.fall').causes ?? [];
  const heel = use(wanted(subject.spec.neck.heel, 'neck.heel'));
  const own = withCauses(lengthOfMm(planeMm(subject, use, yMm) - toMm(heel), 2), [
    ...scaledCauses(upright, -1),
    ...scaledCauses(lean, from),
  ]);
  return add(own, heel);
}
