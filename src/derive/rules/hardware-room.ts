/** Room of parts: to the walls of their cavity, to each other, and how far a ring or flange covers the edge it lies over. */
import { cutId } from '../../facts/cuts.ts';
import type { Cut } from '../../facts/cuts.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { fittedId, fittedOf } from '../../facts/fitted.ts';
import type { Beside, Fitted, FittedId } from '../../facts/fitted.ts';
import type { Subject } from '../../facts/subject.ts';
import { clearBetween, roomInside } from '../../geometry/inside.ts';
import type { Room } from '../../geometry/inside.ts';
import { bounds } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/polygon.ts';
import { rotate } from '../../geometry/transform.ts';
import { withCauses } from '../../units/arithmetic.ts';
import type { Cause, Length } from '../../units/quantity.ts';
import { cavityOf, cutOf, hardwareRow } from '../cavity-of.ts';
import { lengthOfMm } from '../lengths.ts';
import { apartCauses, sideOf } from '../location.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** Least, all round; less than nothing where it stands in the wall. Nothing of what has no body or lies in no cavity. */
    [id: `fitted.${FittedId}.room`]: Length | undefined;
    /** Most, on its widest side; only where the row says how much it may be. */
    [id: `fitted.${FittedId}.most-room`]: Length | undefined;
    /** How far its flange reaches over the edge, at least. */
    [id: `fitted.${FittedId}.lip`]: Length | undefined;
    [id: `fitted.${FittedId}.beside-${'body' | 'on-face'}`]: Beside | undefined;
  }
}

const rule: Rule = (subject) => fittedOf(subject.spec).flatMap((fitted) => ofPart(subject, fitted));
export default rule;

function ofPart(subject: Subject, fitted: Fitted) {
  const id = fittedId(fitted);
  const name = `part at ${fitted.kind} ${fitted.id}`;
  return [
    derivation({
      id: `fitted.${id}.room`,
      label: `${name}: room to the wall of its cavity`,
      formula:
        'least distance of its outline from the cavity’s, corner radii included; a hole’s place against the cavity’s by machine and location',
      source: practice('tolerance graph, no source'),
      value: (use) => room(subject, use, fitted),
    }),
    derivation({
      id: `fitted.${id}.most-room`,
      label: `${name}: room on its widest side`,
      formula: 'between the boxes round part and cavity, turned with the part',
      source: byDefinition,
      value: (use) => widest(subject, use, fitted),
    }),
    derivation({
      id: `fitted.${id}.lip`,
      label: `${name}: how far its flange covers the edge`,
      formula: 'least distance of the hole’s or cavity’s edge from the flange’s',
      source: byDefinition,
      value: (use) => {
        const over = use.fact(`fitted.${id}.on-face`);
        const own = regionOf(use, cutOf(subject, use, fitted));
        if (!over || !own || !hardwareRow(subject, use, fitted).flange) return undefined;
        return lengthOfMm(roomInside(own, over).mm, 2);
      },
    }),
    ...(['body', 'on-face'] as const).map((what) =>
      derivation({
        id: `fitted.${id}.beside-${what}`,
        label: `${name}: the part nearest to it ${what === 'body' ? 'in the same cavity' : 'on the same face'}`,
        formula: 'least distance of their outlines; holes of a part that takes them are not beside it',
        source: practice('tolerance graph, no source'),
        value: (use) => beside(subject, use, fitted, what),
      }),
    ),
  ];
}

function regionOf(use: Use, cut: Cut | undefined): Region | undefined {
  const own = cut && use.fact(`${cutId(cut)}.void`);
  return own?.kind === 'pocket' ? own.region : undefined;
}

function room(subject: Subject, use: Use, fitted: Fitted): Length | undefined {
  const cavity = cavityOf(subject, use, fitted);
  const body = use.fact(`fitted.${fittedId(fitted)}.body`);
  const region = regionOf(use, cavity);
  if (!cavity || !body || !region) return undefined;
  const found = roomInside(body, region);
  return withCauses(lengthOfMm(found.mm, 2), sidewaysCauses(subject, use, fitted, cavity, found));
}

/** What is put in by hand finds its middle; what hangs in a hole lies where the hole is drilled. */
function sidewaysCauses(subject: Subject, use: Use, fitted: Fitted, cavity: Cut, { at }: Room): readonly Cause[] {
  const drilled = fitted.kind === 'hole' ? cutOf(subject, use, fitted) : undefined;
  if (!drilled) return [];
  return apartCauses(subject, use, sideOf(use, drilled), sideOf(use, cavity), { xMm: at.x, yMm: at.y });
}

function widest(subject: Subject, use: Use, fitted: Fitted): Length | undefined {
  const body = use.fact(`fitted.${fittedId(fitted)}.body`);
  const region = regionOf(use, cavityOf(subject, use, fitted));
  if (!body || !region || !hardwareRow(subject, use, fitted)['most-room']) return undefined;
  const turn = turnOf(subject, use, fitted);
  const [own, cavity] = [body, region].map(([ring]) => bounds(rotate(ring!, -turn))!);
  const sides = [
    own!.minX - cavity!.minX,
    cavity!.maxX - own!.maxX,
    own!.minY - cavity!.minY,
    cavity!.maxY - own!.maxY,
  ];
  return lengthOfMm(Math.max(...sides), 2);
}

/** Degrees counter-clockwise, as it lies for this hand. */
function turnOf({ spec, hand }: Subject, use: Use, { kind, id }: Fitted): number {
  const angle =
    kind === 'cavity' ? spec.cavities![id]!.angle : kind === 'fitting' ? spec.fittings![id]!.angle : undefined;
  return angle ? use(angle).value * (hand === 'left' ? -1 : 1) : 0;
}

function beside(subject: Subject, use: Use, fitted: Fitted, what: 'body' | 'on-face'): Beside | undefined {
  const id = fittedId(fitted);
  const own = use.fact(`fitted.${id}.${what}`);
  const where = placeOf(use, id, what);
  if (!own || where === undefined) return undefined;
  const taken = (part: FittedId) => use.fact(`fitted.${part}.mounts`).map(({ hole }) => `hole.${hole}`);
  const others = fittedOf(subject.spec)
    .filter((other) => other.id !== fitted.id || other.kind !== fitted.kind)
    .flatMap((other) => {
      const otherId = fittedId(other);
      const region = use.fact(`fitted.${otherId}.${what}`);
      if (!region || placeOf(use, otherId, what) !== where) return [];
      if (what === 'on-face' && (taken(id).includes(otherId) || taken(otherId).includes(id))) return [];
      return [{ other, ...clearBetween(own, region) }];
    });
  const [nearest] = others.toSorted((a, b) => a.mm - b.mm);
  if (!nearest) return undefined;
  const [a, b] = [cutOf(subject, use, fitted), cutOf(subject, use, nearest.other)];
  const at = { xMm: nearest.at.x, yMm: nearest.at.y };
  const drilled = fitted.kind === 'hole' && nearest.other.kind === 'hole' && a && b;
  const causes = drilled ? apartCauses(subject, use, sideOf(use, a), sideOf(use, b), at) : [];
  return { other: fittedId(nearest.other), apart: withCauses(lengthOfMm(nearest.mm, 2), causes) };
}

const placeOf = (use: Use, id: FittedId, what: 'body' | 'on-face'): string | undefined =>
  what === 'body' ? use.fact(`fitted.${id}.cavity`) : use.fact(`fitted.${id}.face`);
