/** How far cap and back move with their moisture: across the joint, and in thickness. */
import type { Use } from '../../facts/facts.ts';
import { practice, publishedIn } from '../../facts/facts.ts';
import { hole, Leaf } from '../../facts/leaf.ts';
import type { Part } from '../../facts/parts.ts';
import { boardOf, partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import { machineNumber } from '../../facts/station-machine.ts';
import type { Subject } from '../../facts/subject.ts';
import { bounds } from '../../geometry/measure.ts';
import type { Movement, Way } from '../../reference/movement.ts';
import {
  agrees,
  changeOfSize,
  COEFFICIENT_SOURCE,
  coefficientUsed,
  movements,
  SHRINKAGE_SOURCE,
  shrinkageOf,
  shrinkageUsed,
} from '../../reference/movement.ts';
import { withCauses } from '../../units/arithmetic.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

type Direction = 'across' | 'thickness';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`movement.${Part}.${Direction}.rate`, Quantity<'fraction'>>,
      Record<`movement.${Part}.${Direction}.per-percent` | `movement.${Part}.${Direction}.over-band`, Length>,
      Record<`movement.${Part}.drift`, Length>,
      Record<`movement.${Part}.sources-agree`, boolean> {
    'joint.width': Length;
    'joint.movement': Length;
    'joint.content-difference': Quantity<'fraction'>;
  }
}

const MOVEMENT_SOURCE = 'USDA Wood Handbook, FPL-GTR-190 (2010), equations 13-2 and 13-3';
const published = publishedIn(MOVEMENT_SOURCE);

/** Rays lie in the face of a quarter-sawn board, rings in that of a flat-sawn one; of mixed boards the larger counts. */
const waysOf: Readonly<Record<'flat' | 'quarter' | 'mixed', Readonly<Record<Direction, readonly Way[]>>>> = {
  flat: { across: ['tangential'], thickness: ['radial'] },
  quarter: { across: ['radial'], thickness: ['tangential'] },
  mixed: { across: ['radial', 'tangential'], thickness: ['radial', 'tangential'] },
};

const rule: Rule = (subject) => [
  derivation({
    id: 'joint.width',
    label: 'width of the wood across the grain, at its widest',
    formula: 'extent of the rough line across the centreline',
    source: practice('the widest place moves most; common practice, no source'),
    value: (use) => {
      const box = bounds(use.fact('saw.rough.line'))!;
      return lengthOfMm(box.maxX - box.minX);
    },
  }),
  ...partsOf(subject.spec).flatMap((part) => [
    ...(['across', 'thickness'] as const).flatMap((direction) => moves(subject, part, direction)),
    sourcesAgree(subject, part),
    drift(subject, part),
  ]),
  ...(partsOf(subject.spec).includes('cap') ? joint(subject) : []),
];
export default rule;

function moves(subject: Subject, part: Part, direction: Direction) {
  const size = (use: Use): Length =>
    direction === 'across' ? use.fact('joint.width') : use.fact(`thickness.part.${part}.sized`);
  const words = direction === 'across' ? 'across the grain' : 'in thickness';
  return [
    derivation({
      id: `movement.${part}.${direction}.rate`,
      label: `${part}: change of size ${words} for each 1 % of moisture, as a share`,
      formula:
        'by how it is sawn: flat moves along the rings across and along the rays in thickness, quarter the other way',
      source: published,
      value: (use) => ({
        kind: 'fraction',
        value: used(subject, use, part, direction).coefficient,
        unit: '%',
        decimals: 3,
      }),
    }),
    derivation({
      id: `movement.${part}.${direction}.per-percent`,
      label: `${part}: change of size ${words} for each 1 % of moisture`,
      formula: 'size × change for each 1 % (equation 13-2)',
      source: published,
      value: (use) => ({
        ...lengthOfMm(0, 2),
        value: Math.ceil(size(use).value * use.fact(`movement.${part}.${direction}.rate`).value),
      }),
    }),
    derivation({
      id: `movement.${part}.${direction}.over-band`,
      label: `${part}: change of size ${words} from the driest to the dampest wood that is released`,
      formula: 'size × change for each 1 % × difference from 6 to 14 % (equation 13-2), beyond it equation 13-3',
      source: published,
      value: (use) => {
        const { value, low = value, high = value } = use(machineNumber(subject.plant, use, 'conditioning', 'moisture'));
        const wood = used(subject, use, part, direction);
        return {
          ...lengthOfMm(0, 2),
          value: Math.ceil(changeOfSize({ ...wood, size: size(use).value, from: low, to: high })),
        };
      },
    }),
  ];
}

function sourcesAgree(subject: Subject, part: Part) {
  return derivation({
    id: `movement.${part}.sources-agree`,
    label: `${part}: whether the published tables of its movement say the same`,
    formula: 'coefficient = shrinkage / (3000 − 20 × shrinkage), within the rounding of the tables',
    source: publishedIn(`${COEFFICIENT_SOURCE}; ${SHRINKAGE_SOURCE}`),
    value: (use) =>
      (['radial', 'tangential'] as const).every((way) => {
        const { own, tables } = rowsOf(subject, use, part, way);
        return own !== undefined || agrees(openTables(use, tables));
      }),
  });
}

interface Used {
  readonly coefficient: number;
  readonly shrinkage: number;
}

/** What the wood does in that direction: of several ways the one it moves most by. */
function used(subject: Subject, use: Use, part: Part, direction: Direction): Used {
  const sawn = use(boardOf(subject.spec, part).sawn);
  const ways = waysOf[sawn][direction].map((way) => ofWay(subject, use, part, way));
  return ways.reduce((most, one) => (one.coefficient > most.coefficient ? one : most));
}

function ofWay(subject: Subject, use: Use, part: Part, way: Way): Used {
  const { own, tables } = rowsOf(subject, use, part, way);
  if (own) {
    const coefficient = use(own).value;
    return { coefficient, shrinkage: shrinkageOf(coefficient) };
  }
  const one = openTables(use, tables);
  return { coefficient: coefficientUsed(one), shrinkage: shrinkageUsed(one) };
}

interface Tables {
  readonly coefficient: Leaf<Quantity<'fraction'>>;
  readonly shrinkage: Leaf<Quantity<'fraction'>>;
}

/** Both tables are read, so that both stand in the trace; the smaller steps aside. */
function openTables(use: Use, tables: Tables | undefined): Movement {
  const { coefficient, shrinkage } = wanted(tables, 'published movement');
  return { coefficient: use(coefficient).value, shrinkage: use(shrinkage).value * 100, certainty: 'seen' };
}

/** The plant's own row, and the published ones. */
function rowsOf({ spec, plant }: Subject, use: Use, part: Part, way: Way) {
  const species = use(boardOf(spec, part).species);
  const own = row(plant.species, species, 'plant.species').movement?.[way];
  const published = Object.hasOwn(movements, species) ? movements[species]![way] : undefined;
  if (own) return { own };
  return { tables: published ? leavesOf(species, way, published) : hole(`plant.species.${species}.movement`) };
}

function leavesOf(species: string, way: Way, { coefficient, shrinkage, certainty }: Movement): Tables {
  const fraction = (value: number, decimals: number) => ({ kind: 'fraction', value, unit: '%', decimals }) as const;
  return {
    coefficient: new Leaf(
      `published.movement.${species}.${way}`,
      `${coefficient}`,
      { kind: 'published', source: COEFFICIENT_SOURCE, certainty },
      fraction(coefficient, 3),
    ),
    shrinkage: new Leaf(
      `published.shrinkage.${species}.${way}`,
      `${shrinkage} %`,
      { kind: 'published', source: SHRINKAGE_SOURCE, certainty },
      fraction(shrinkage / 100, 1),
    ),
  };
}

/** Between sizing and machining the wood's moisture may have moved: one cause for both parts, for they share it. */
function drift({ spec, plant }: Subject, part: Part) {
  return derivation({
    id: `movement.${part}.drift`,
    label: `${part}: how far its thickness may drift from sizing to machining`,
    formula: 'thickness × change for each 1 % × drift of the line; none where the line gives none',
    source: published,
    value: (use) => {
      const still = lengthOfMm(0, 2);
      const given = row(plant.lines, use(spec.line), 'plant.lines').drift;
      if (!given) return still;
      const { value, low = value, high = value } = use(given);
      const sensitivity = use.fact(`movement.${part}.thickness.per-percent`).value * 100;
      return withCauses(still, [{ cause: given.id, sensitivity, minus: low, plus: high }]);
    },
  });
}

function joint(subject: Subject) {
  const { spec, plant } = subject;
  /** Movement of both for each 1 %, nm: the larger, and by how much they differ. */
  const rates = (use: Use) => {
    const cap = use.fact('movement.cap.across.per-percent').value;
    const back = use.fact('movement.back.across.per-percent').value;
    return { most: Math.max(cap, back), apart: Math.abs(cap - back) };
  };
  const halfBand = (use: Use): number => {
    const { value, low = value, high = value } = use(machineNumber(plant, use, 'conditioning', 'moisture'));
    return ((high - low) / 2) * 100;
  };
  const most = (use: Use): Length => {
    const name = use(spec.line);
    return use(wanted(row(plant.lines, name, 'plant.lines')['joint-movement'], `plant.lines.${name}.joint-movement`));
  };
  const source = practice('textbook kinematics of two plates; the limit is the line’s own: common practice, no source');
  return [
    derivation({
      id: 'joint.movement',
      label: 'how far cap and back may want to move against each other across the joint',
      formula:
        'the larger movement × the most their moistures may differ + difference of the two movements × half the band of release',
      source,
      value: (use) => {
        const { most: larger, apart } = rates(use);
        const pair = use(machineNumber(plant, use, 'conditioning', 'pair-agree')).value * 100;
        return { ...lengthOfMm(0, 2), value: Math.ceil(larger * pair + apart * halfBand(use)) };
      },
    }),
    derivation({
      id: 'joint.content-difference',
      label: 'the most the moistures of cap and back may differ when glued',
      formula:
        '(what the line lets them move − difference of the two movements × half the band of release) ÷ the larger movement',
      source,
      value: (use) => {
        const { most: larger, apart } = rates(use);
        const left = Math.max(0, most(use).value - apart * halfBand(use));
        return { kind: 'fraction', value: left / larger / 100, unit: '%', decimals: 1 };
      },
    }),
  ];
}
