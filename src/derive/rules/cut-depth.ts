/**
 * Depth of every cavity and hole: what the program cuts to, what the gauge must read, and how far the requirement may be
 * off when everything on the way is at its worst.
 */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import type { Subject } from '../../facts/subject.ts';
import { add, nominal, scale, subtract, withCauses, worstCase } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import type { Cut, CutKind } from '../../facts/cuts.ts';
import { cutsOf } from '../../facts/cuts.ts';
import type { Requirement } from '../cuts.ts';
import { requirementOf } from '../cuts.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { SurfaceId } from '../surfaces.ts';
import { causesApart, causesBetween, setupOf, surfaceHeight, surfaceOf, zeroOf } from '../surfaces.ts';

/** How a depth is measured: down from a surface that looks up, or as a height above the fixture. */
export interface Measured {
  readonly way: 'depth' | 'height';
  readonly from: SurfaceId;
  readonly limits: Length;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `${CutKind}.${string}.required`]: Length;
    [id: `${CutKind}.${string}.achieved`]: Length;
    [id: `${CutKind}.${string}.height`]: Length;
    [id: `${CutKind}.${string}.measured`]: Length;
    /** How deep the tool goes below the face that looks up, with limits. */
    [id: `${CutKind}.${string}.deep`]: Length;
    /** How much there is to go through from that face to the one on the fixture. */
    [id: `${CutKind}.${string}.through`]: Length;
    [id: `${CutKind}.${string}.measuring`]: Measured;
  }
}

const graph = practice(
  'a distance between two surfaces, through the set-ups that make them; tolerance graph, no source',
);

const rule: Rule = (subject) => cutsOf(subject.spec).flatMap((cut) => depth(subject, cut));
export default rule;

function depth(subject: Subject, cut: Cut) {
  const name = `${cut.kind} ${cut.id}`;
  const id = `${cut.kind}.${cut.id}` as const;
  return [
    derivation({
      id: `${id}.required`,
      label: `${name}: what it has to hold`,
      formula: 'as given',
      source: { kind: 'definition' },
      value: (use) => requirementOf(subject, use, cut).distance,
    }),
    derivation({
      id: `${id}.achieved`,
      label: `${name}: what the set-ups hold at worst`,
      formula: 'nominal as required; limits are the worst case of the narrowest way from its floor to the surface',
      source: graph,
      value: (use) => {
        const requirement = requirementOf(subject, use, cut);
        surfaceHeight(subject, use, requirement.end);
        const causes = causesBetween(subject, use, cutOf(requirement), requirement.end);
        return withCauses(requirement.distance, causes);
      },
    }),
    derivation({
      id: `${id}.height`,
      label: `${name}: height of its floor over the zero of its set-up`,
      formula: 'height of the surface ± the distance required, seen from the zero',
      source: graph,
      value: (use) => {
        const requirement = requirementOf(subject, use, cut);
        const zero = surfaceHeight(subject, use, zeroOf(subject, use, requirement.setup));
        const above = subtract(floorHeight(subject, use, requirement), zero);
        return nominal(scale(above, requirement.setup === 'back' ? -1 : 1));
      },
    }),
    derivation({
      id: `${id}.deep`,
      label: `${name}: how deep the tool goes`,
      formula: 'from the face that looks up, at its highest, down to the floor; limits are those of the requirement',
      source: graph,
      value: (use) => deep(subject, use, requirementOf(subject, use, cut)),
    }),
    derivation({
      id: `${id}.through`,
      label: `${name}: wood from the face that looks up to the one it rests on`,
      formula: 'height of the face that looks up, at its highest, over the surface that rests on the fixture',
      source: graph,
      value: (use) => {
        const requirement = requirementOf(subject, use, cut);
        const face = openFace(subject, use, requirement) ?? surfaceOf(subject.spec, 'machined-top');
        const rests = surfaceOf(subject.spec, use(setupOf(subject.spec, requirement.setup)['rests-on']));
        const apart = subtract(surfaceHeight(subject, use, face), surfaceHeight(subject, use, rests));
        return nominal(scale(apart, apart.value < 0 ? -1 : 1));
      },
    }),
    derivation({
      id: `${id}.measuring`,
      label: `${name}: where it is measured from`,
      formula: 'the surface there at that moment that leaves the widest limits',
      source: graph,
      value: (use) => measuring(subject, use, requirementOf(subject, use, cut)),
    }),
    derivation({
      id: `${id}.measured`,
      label: `${name}: what the gauge must read`,
      formula: 'limits of the requirement, less the worst case of the rest of the way',
      source: graph,
      value: (use) => use.fact(`${id}.measuring`).limits,
    }),
  ];
}

const cutOf = ({ setup, floor }: Requirement) => ({ setup, surface: floor });

/** Nominal z of the floor: z of the end less sign · distance. */
export function floorHeight(subject: Subject, use: Use, { end, distance, sign }: Requirement): Length {
  return subtract(nominal(surfaceHeight(subject, use, end)), nominal(scale(distance, sign)));
}

/** From the highest surface the tool meets in that set-up down to the floor, as far off as the requirement allows. */
function deep(subject: Subject, use: Use, requirement: Requirement): Length {
  const { spec } = subject;
  const { setup, distance } = requirement;
  const face = openFace(subject, use, requirement) ?? surfaceOf(spec, 'machined-top');
  const way = subtract(nominal(surfaceHeight(subject, use, face)), floorHeight(subject, use, requirement));
  const value = setup === 'back' ? -way.value : way.value;
  const room = Math.max((distance.high ?? 0) - distance.value, distance.value - (distance.low ?? 0), 0);
  return { ...way, value, low: value - room, high: value + room };
}

function measuring(subject: Subject, use: Use, requirement: Requirement): Measured {
  const { spec } = subject;
  const rest = surfaceOf(spec, use(setupOf(spec, requirement.setup)['rests-on']));
  const ways: Measured[] = [
    { way: 'height', from: rest, limits: limitsFrom(subject, use, requirement, rest, 'height') },
  ];
  const open = openFace(subject, use, requirement);
  if (open) ways.unshift({ way: 'depth', from: open, limits: limitsFrom(subject, use, requirement, open, 'depth') });
  return ways.reduce((best, way) => (width(way) > width(best) ? way : best));
}

const width = ({ limits }: Measured): number => (limits.high ?? 0) - (limits.low ?? 0);

/** The face that looks up and still exists at its own height where the cut is: none under an arch or a bevel. */
function openFace({ spec }: Subject, use: Use, { setup }: Requirement): SurfaceId | undefined {
  if (setup === 'glue-face') return 'glue-face';
  if (setup === 'back') return spec.setups.back.faces === undefined ? 'blank-back' : 'back-face';
  return use(spec.carve.kind) === 'flat' ? surfaceOf(spec, 'machined-top') : undefined;
}

/**
 * With D = s(zE − zF) required, M = m(zS − zF) measured from S and R = zE − zS the rest of the way: D = k·M + s·R, k = s·m.
 * M must stay where D holds for every R.
 */
function limitsFrom(
  subject: Subject,
  use: Use,
  requirement: Requirement,
  from: SurfaceId,
  way: Measured['way'],
): Length {
  const { setup, end, distance, sign } = requirement;
  const towards = (setup === 'back') === (way === 'height') ? 1 : -1;
  const k = sign * towards;
  const rest = subtract(nominal(surfaceHeight(subject, use, end)), nominal(surfaceHeight(subject, use, from)));
  const causes = causesApart(subject, use, from, end).map((cause) => ({
    ...cause,
    sensitivity: cause.sensitivity * sign,
  }));
  const spread = worstCase(causes);
  const shift = sign * rest.value;
  const low = (distance.low ?? distance.value) - shift - spread.minus;
  const high = (distance.high ?? distance.value) - shift - spread.plus;
  const value = distance.value - shift;
  const { decimals } = add(distance, rest);
  const ends = k === 1 ? { value, low, high } : { value: -value, low: -high, high: -low };
  return { kind: 'length', unit: distance.unit, decimals, ...ends };
}
