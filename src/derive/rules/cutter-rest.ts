/** What the cutter of each cavity leaves of it: in its corners, and where it is narrower than the cutter. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { cutterRest, REST_CHORD_MM } from '../../geometry/cutter-rest.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { drawnAt } from './cut-outline.ts';

export interface Rest {
  readonly areaMm2: number;
  /** Infinity where the cutter fits nowhere. */
  readonly gapMm: number;
  /** The largest end mill of the plant that leaves no gap; nothing where the named one leaves none, or none does. */
  readonly clears: string | undefined;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `cavity.${string}.rest`]: Rest;
  }
}

const rule: Rule = (subject) =>
  namesOf(subject.spec.cavities).map((id) =>
    derivation({
      id: `cavity.${id}.rest`,
      label: `cavity ${id}: what its cutter leaves`,
      formula: 'the cavity less what a disc of the cutter’s radius reaches; gap from the furthest point of that',
      source: byDefinition,
      value: (use) => restOf(subject, use, id),
    }),
  );
export default rule;

/** A smaller gap is none, mm. */
const NO_GAP_MM = 0.02;

const NOTHING: Rest = { areaMm2: 0, gapMm: 0, clears: undefined };

function restOf(subject: Subject, use: Use, id: string): Rest {
  const { plant } = subject;
  const cavity = subject.spec.cavities![id]!;
  const radiusMm = toMm(use(row(plant.cutters, use(cavity.cutter), 'plant.cutters').diameter)) / 2;
  // Corners as wide as the cutter leave nothing in shapes that have no neck.
  const kind = use(cavity.shape.kind);
  if (kind !== 'path' && kind !== 'polygon' && radiusMm <= toMm(use(cavity.corner)) && isWide(use, cavity, radiusMm))
    return NOTHING;
  const drawn = drawnAt(subject, use, cavity, `cavities.${id}`, REST_CHORD_MM);
  if (!drawn.ok) return use(hole(`cavities.${id}.shape`));
  const { areaMm2, gapMm } = cutterRest([drawn.polygon], radiusMm);
  if (gapMm <= NO_GAP_MM) return NOTHING;
  const mills = namesOf(plant.cutters)
    .map((name) => ({ name, kind: plant.cutters![name]!.kind, diameter: plant.cutters![name]!.diameter }))
    .filter((mill) => use(mill.kind) === 'end-mill')
    .map(({ name, diameter }) => ({ name, radiusMm: toMm(use(diameter)) / 2 }))
    .filter((mill) => mill.radiusMm < radiusMm)
    .toSorted((a, b) => b.radiusMm - a.radiusMm);
  const clears = mills.find((mill) => cutterRest([drawn.polygon], mill.radiusMm).gapMm <= NO_GAP_MM);
  return { areaMm2, gapMm, clears: clears?.name };
}

type Cavity = NonNullable<Subject['spec']['cavities']>[string];

/** A rectangle, slot or circle no narrower than the cutter. */
function isWide(use: Use, { shape }: Cavity, radiusMm: number): boolean {
  const sizes = use(shape.kind) === 'circle' ? [shape.diameter] : [shape.length, shape.width];
  return sizes.every((size) => size === undefined || toMm(use(size)) >= 2 * radiusMm);
}
