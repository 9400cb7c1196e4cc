/** The fingerboard over the body: how high its plane lies, where it ends, and whether it clears the top. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { subtract } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { toMm } from '../lengths.ts';
import { planeMm, planeOverTop } from '../neck-plane.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

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
    value: (use) => planeOverTop(subject, use, toMm(use.fact('neck.joint-line'))),
  }),
  ...(subject.spec.neck.end === undefined
    ? []
    : [
        derivation({
          id: 'neck.plane.end',
          label: 'plane of the fingerboard over the top, where the board ends',
          formula: 'floor of the pocket, carried on at its slope, + heel − top there',
          source: byDefinition,
          value: (use) => planeOverTop(subject, use, toMm(use.fact('neck.board-end'))),
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
  return subtract(planeOverTop(subject, use, y), use(wanted(subject.spec.neck.board, 'neck.board')));
}
