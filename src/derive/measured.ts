/** What readings say about why a distance may be off: which causes were in what the gauge read, and how they came out. */
import type { Use } from '../facts/facts.ts';
import { leavesOf } from '../facts/leaves.ts';
import { partsOf, partStages, pointsOf } from '../facts/parts.ts';
import type { Leaf } from '../facts/leaf.ts';
import type { Subject } from '../facts/subject.ts';
import { cutsOf } from '../facts/cuts.ts';
import type { Cause, Length } from '../units/quantity.ts';
import type { Spread } from './capability.ts';
import { spreadOf } from './capability.ts';
import { requirementOf } from './cuts.ts';
import { causesBetween } from './surfaces.ts';

/** Lengths in nanometres. */
export interface Measured extends Spread {
  readonly fact: string;
  /** What it should have come out as. */
  readonly nominal: number;
  /** What was in it; empty where readings of it say nothing about any one cause. */
  readonly causes: readonly Cause[];
}

/** What a reading of a fact should be, and why it may be off. */
interface Asked {
  readonly q: Length;
  readonly causes: () => readonly Cause[];
}

/** Whether a chart is kept of that fact: a length that a gauge reads of this body, or an error of the plant's own. */
export const canBeMeasured = ({ spec, plant }: Subject, fact: string): boolean =>
  stagesOf(spec).some((id) => id === fact) ||
  cutsOf(spec).some(({ kind, id }) => fact === `${kind}.${id}.measured`) ||
  leavesOf(plant).some(({ id }) => id === fact);

/** Of `least` readings or more; undefined of fewer. */
export function measuredOf(subject: Subject, use: Use, fact: string, least: number): Measured | undefined {
  const leaf = subject.readings.get(fact);
  const asked = leaf && askedOf(subject, use, fact);
  if (!asked) return undefined;
  const { reads, values } = use(leaf);
  const spread = reads === 'length' && values.length >= least ? spreadOf(values) : undefined;
  return spread && { ...spread, fact, nominal: asked.q.value, causes: asked.causes() };
}

export function askedOf(subject: Subject, use: Use, fact: string): Asked | undefined {
  const { spec } = subject;
  const stage = stagesOf(spec).find((id) => id === fact);
  if (stage) {
    const q = use.fact(stage);
    return { q, causes: () => q.causes ?? [] };
  }
  const cut = cutsOf(spec).find(({ kind, id }) => fact === `${kind}.${id}.measured`);
  if (cut) {
    const { from, limits } = use.fact(`${cut.kind}.${cut.id}.measuring`);
    const { setup, floor } = requirementOf(subject, use, cut);
    return { q: limits, causes: () => causesBetween(subject, use, { setup, surface: floor }, from) };
  }
  if (!fact.startsWith('plant.')) return undefined;
  const own = leavesOf(subject.plant).find(({ id }) => id === fact) as Leaf<Length> | undefined;
  const q = own && use(own);
  return q?.kind === 'length' ? { q, causes: () => q.causes ?? [] } : undefined;
}

/** Thicknesses that a gauge reads: of parts after a stage, of the faced blank, of the machined body at its points. */
const stagesOf = (spec: Subject['spec']) => [
  ...partsOf(spec).flatMap((part) => partStages.map((stage) => `thickness.part.${part}.${stage}` as const)),
  ...(spec.setups.back.faces ? (['thickness.body.back-faced'] as const) : []),
  ...pointsOf(spec, 'machined').map((point) => `thickness.body.machined.${point}` as const),
];
