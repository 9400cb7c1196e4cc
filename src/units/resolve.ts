import { kindName } from './describe.ts';
import { nearestUnit } from './nearest.ts';
import type { UnitProblem } from './problem.ts';
import { problem } from './problem.ts';
import type { Kind } from './quantity.ts';
import type { ScannedUnit } from './scan.ts';
import { shown } from './scan.ts';
import type { Unit } from './unit.ts';
import { findUnit, unitsOf } from './unit.ts';

/** The unit a written piece names, if it is of the wanted kind (or, for a deviation, of the difference of that kind). */
export function resolveUnit(piece: ScannedUnit, kind: Kind, isDeviation: boolean): Unit | UnitProblem {
  const unit = findUnit(piece.text);
  if (unit === undefined) return unknownUnit(piece, kind);
  if (unit.kind === kind) return unit;
  if (isDeviation && kind === 'temperature' && unit.kind === 'temperature-difference') return unit;
  const what = `'${piece.text}' is ${kindName(unit.kind)}, but ${kindName(kind)} is wanted.`;
  return problem('unit-wrong-kind', piece, what, kind === 'count' ? 'Write the number without a unit.' : choice(kind));
}

function unknownUnit(piece: ScannedUnit, kind: Kind): UnitProblem {
  if (/^\d|\s[\d.]/.test(piece.text) && nearestUnit(piece.text, kind) === undefined) {
    const what = `'${shown(piece.text)}' is a second number or more text after the number.`;
    return problem(
      'number-unreadable',
      piece,
      what,
      'Write one number with its unit, and limits with ± or as a range.',
    );
  }
  const near = nearestUnit(piece.text, kind);
  const mend = near ? `Did you mean ${near.symbol}?` : choice(kind);
  return problem('unit-unknown', piece, `'${shown(piece.text)}' is not a unit known here.`, mend);
}

function choice(kind: Kind): string {
  const symbols = unitsOf(kind).map((u) => u.symbol);
  const last = symbols.pop() ?? '';
  if (last === '') return 'Write the number without a unit.';
  return symbols.length === 0 ? `Use ${last}.` : `Use ${symbols.join(', ')} or ${last}.`;
}
