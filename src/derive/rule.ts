/** What a file of src/derive/rules/ exports: the facts it derives for a model. Its id and type are declared beside it. */
import type { Derivation, DerivedFacts } from '../facts/facts.ts';
import type { Subject } from '../facts/subject.ts';

export type Rule = (subject: Subject) => readonly Derivation[];

/** A derivation, with the type its id promises. */
export const derivation = <I extends keyof DerivedFacts>(d: Derivation<I>): Derivation => d;
