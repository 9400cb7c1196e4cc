/** A text that is no quantity as wanted: what is wrong and what mends it, for a woodworker. */
export interface UnitProblem {
  readonly code: UnitProblemCode;
  /** Offsets into the text of the part at fault; equal where something is missing. */
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly mend: string;
}

export type UnitProblemCode =
  | 'number-unreadable'
  | 'number-not-finite'
  | 'number-too-large'
  | 'number-too-fine'
  | 'unit-missing'
  | 'unit-unknown'
  | 'unit-wrong-kind'
  | 'units-mixed'
  | 'limits-crossed';

export interface Span {
  readonly from: number;
  readonly to: number;
}

export function problem(code: UnitProblemCode, { from, to }: Span, text: string, mend: string): UnitProblem {
  return { code, from, to, text, mend };
}

export function isProblem(x: object): x is UnitProblem {
  return 'code' in x;
}
