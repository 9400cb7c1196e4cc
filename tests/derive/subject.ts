/** The sample as the derivations see it, and values put in its place. */
import { checkAll } from '../../src/compile.ts';
import { derive } from '../../src/derive/derive.ts';
import type { DerivedFacts, Facts } from '../../src/facts/facts.ts';
import { Leaf } from '../../src/facts/leaf.ts';
import type { Hand, Subject } from '../../src/facts/subject.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { withCauses } from '../../src/units/arithmetic.ts';
import { parseQuantity } from '../../src/units/parse.ts';
import type { Length } from '../../src/units/quantity.ts';
import { sample } from '../cases/workspace.ts';

export const MM = 1e6;

export function sampleSubject(hand: Hand = 'right'): Subject {
  const [model] = checkAll(memoryHost(sample())).models;
  return model!.hands.find(({ subject }) => subject.hand === hand)!.subject;
}

const writing = { kind: 'given', place: { file: 'test', start: 0, end: 0 } } as const;

/** A length as the reader would give it, its own limits as its one cause. */
export function lengthLeaf(id: string, text: string): Leaf<Length> {
  const parsed = parseQuantity(text, { kind: 'length', defaultUnit: 'mm' });
  if (!parsed.ok) throw new Error(parsed.problem.text);
  const { value, low = value, high = value } = parsed.quantity;
  const causes = low === high ? [] : [{ cause: id, sensitivity: 1, minus: low - value, plus: high - value }];
  return new Leaf(id, text, writing, withCauses(parsed.quantity, causes));
}

export const textLeaf = (id: string, text: string): Leaf<string> => new Leaf(id, text, writing, text);

export const factsOf = (subject: Subject): Facts => derive(subject);

export function valueOf<I extends keyof DerivedFacts>(facts: Facts, id: I): DerivedFacts[I] {
  const reading = facts.read((use) => use.fact(id));
  if (!reading.ok) throw new Error(`${id} is not to be had: ${reading.missing.join(', ')}`);
  return reading.value;
}

/** Nominal, low and high in mm. */
export const mmOf = ({ value, low, high }: Length) => [value, low, high].map((nm) => nm && nm / MM);

/** Hundredths of a millimetre as a spec writes them. */
export const hundredths = (n: number): string => `${Math.trunc(n / 100)}.${String(n % 100).padStart(2, '0')}`;
