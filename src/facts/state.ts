/** Facts as plain data, to be frozen with a release or held against those of another day: value, origin, what they came from. */
import type { Kind, Quantity } from '../units/quantity.ts';
import type { Fact, Facts } from './facts.ts';
import { fingerprint } from './fingerprint.ts';
import { Leaf, holeId } from './leaf.ts';
import { leavesOf } from './leaves.ts';
import { showValue } from './show.ts';
import type { Subject } from './subject.ts';

/** A number as it is compared: in the base unit of its kind, with the unit it was written in. */
export interface FactNumber {
  readonly kind: Kind;
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
  readonly unit: string;
  readonly decimals: number;
}

export interface FactState {
  readonly id: string;
  readonly text: string;
  readonly from: 'given' | 'plant' | 'measured' | 'published' | 'derived';
  readonly number?: FactNumber;
  /** Of what is no single number: the same for the same value. */
  readonly print?: string;
  /** Of a derived fact: what it is, in words, and ids of what it was computed from. */
  readonly label?: string;
  readonly inputs?: readonly string[];
  /** Of what was given: nothing but the record has a use for it. */
  readonly unread?: true;
}

/** All that has a text or a number, in the order of the derivations; what was measured is no part of a model. */
export function statesOf(
  facts: Facts,
  { spec, plant }: Pick<Subject, 'spec'> & Partial<Subject>,
): readonly FactState[] {
  for (const leaf of leavesOf(spec)) facts.note(leaf);
  const all = facts.all();
  const read = facts.consulted();
  const ofPlant = listsIn(plant, read).filter(({ unread }) => !unread);
  return [...all.flatMap((fact) => stateOf(fact, read)), ...listsIn(spec, read), ...ofPlant];
}

/** The order of each list, where it says something: that of a set is its own, whatever a file gives. */
function listsIn(tree: unknown, read: ReadonlySet<string>): readonly FactState[] {
  if (typeof tree !== 'object' || tree === null || tree instanceof Leaf || holeId(tree) !== undefined) return [];
  if (!Array.isArray(tree)) return Object.values(tree).flatMap((part) => listsIn(part, read));
  const leaves = (tree as unknown[]).filter((item) => item instanceof Leaf) as Leaf<unknown>[];
  const [first] = leaves;
  if (!first || leaves.length < 2) return [];
  const id = first.id.replace(/\[[^\]]*\]$/, '');
  const from = first.writing.kind === 'plant' ? 'plant' : 'given';
  const unread = !leaves.some((leaf) => read.has(leaf.id));
  return [{ id, text: leaves.map(({ text }) => text).join(', '), from, ...(unread ? { unread: true } : {}) }];
}

/** Not what a file says of itself: in which unit its bare numbers are, and where it begins. */
const OF_THE_FILE: ReadonlySet<string> = new Set(['units', 'plant.units', 'based-on', 'revision']);

function stateOf({ id, label, origin, inputs, state }: Fact, read: ReadonlySet<string>): readonly FactState[] {
  if (!state.ok || origin.kind === 'measured' || /^(?:measured|likely)\./.test(id) || OF_THE_FILE.has(id)) return [];
  const { value } = state;
  const base = { id, text: showValue(value), from: origin.kind };
  return [
    {
      ...base,
      ...(isQuantity(value) ? { number: numberOf(value) } : compared(id, value)),
      ...(origin.kind === 'derived' ? { label, inputs } : read.has(id) ? {} : { unread: true }),
    },
  ];
}

function compared(id: string, value: unknown): Pick<FactState, 'print'> {
  if (typeof value !== 'string') return { print: fingerprint(value) };
  // Blanks and commas between the numbers of a path say nothing.
  return /(?:^|\.)path$/.test(id) ? { print: fingerprint(value.match(/[a-z]|-?\d*\.?\d+/gi)) } : {};
}

const isQuantity = (value: unknown): value is Quantity =>
  typeof value === 'object' && value !== null && 'kind' in value && 'decimals' in value && 'value' in value;

const numberOf = ({ kind, value, low, high, unit, decimals }: Quantity): FactNumber => ({
  kind,
  value,
  ...(low === undefined ? {} : { low }),
  ...(high === undefined ? {} : { high }),
  unit,
  decimals,
});
