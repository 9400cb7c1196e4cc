/** The plane of the fingerboard, carried on over the body: how high over the top it lies, and why it may lie elsewhere. */
import type { Cut } from '../facts/cuts.ts';
import { cutsOf } from '../facts/cuts.ts';
import type { Use } from '../facts/facts.ts';
import { hole } from '../facts/leaf.ts';
import { highestPoint } from '../facts/parts.ts';
import { wanted } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import { depthOn } from '../geometry/solid/face.ts';
import { floorAt } from '../geometry/solid/solid.ts';
import { add, scaledCauses, withCauses } from '../units/arithmetic.ts';
import type { Cause, Length } from '../units/quantity.ts';
import { lengthOfMm, toMm } from './lengths.ts';
import { causesUpright } from './wood.ts';

/** Over the top on the centreline, at a place along it, with limits. */
export function planeOverTop(subject: Subject, use: Use, yMm: number): Length {
  const heel = use(wanted(subject.spec.neck.heel, 'neck.heel'));
  const own = lengthOfMm(seatMm(subject, use, yMm) - topMm(subject, use, yMm), 2);
  return add(withCauses(own, seatCauses(subject, use, yMm)), heel);
}

/** The same as drawn, mm. Where the pocket is open, over the top as it was carved there. */
export const planeMm = (subject: Subject, use: Use, yMm: number): number =>
  seatMm(subject, use, yMm) + toMm(use(wanted(subject.spec.neck.heel, 'neck.heel'))) - topMm(subject, use, yMm);

const topMm = (subject: Subject, use: Use, yMm: number): number =>
  toMm(use.fact(`thickness.body.machined.${highestPoint(subject.spec)}`)) - depthOn(use.fact('face.top'), 0, yMm);

/** Where the heel stands, over the back; a neck that runs through has no pocket and is one with the back. */
function seatMm(subject: Subject, use: Use, yMm: number): number {
  if (!subject.spec.neck.pocket) return 0;
  const pocket = use.fact(`cavity.${use(subject.spec.neck.pocket)}.void`);
  return pocket.kind === 'pocket' ? floorAt(pocket.floor, yMm) : use<never>(hole('neck.pocket'));
}

/** The pocket's depth counts as it is; what it leans, by how far the place lies beyond the two points it is measured at. */
function seatCauses(subject: Subject, use: Use, yMm: number): readonly Cause[] {
  const at = { mm: 0, xMm: 0, yMm, through: 'floor', sharedMm2: 0, up: 1 } as const;
  const { pocket } = subject.spec.neck;
  const below = pocket ? { cut: level(subject, use(pocket), use) } : 'back';
  const upright = scaledCauses(causesUpright(subject, use, below, 'top', at), -1);
  if (!pocket) return upright;
  const beyond = (use.fact('neck.point.tail').y - yMm) / toMm(use.fact('neck.points-apart'));
  return [...upright, ...scaledCauses(use.fact('neck.fall').causes ?? [], beyond)];
}

/** The pocket without its fall, which counts by itself. */
function level({ spec }: Subject, name: string, use: Use): Cut {
  const cut = cutsOf(spec).find(({ kind, id }) => kind === 'cavity' && id === name);
  if (!cut) return use<never>(hole('neck.pocket'));
  const { falls: _falls, ...rest } = cut.spec;
  return { ...cut, spec: rest };
}
