/** What came of the faults, as two tables: by kind of fault and by id of finding. */
import type { Verdict } from './judge.ts';

type Column<T> = readonly [string, (one: T) => boolean];

/** What came of a fault, as far as a table by finding asks. */
interface Told {
  readonly atLine: boolean;
  readonly oneTop: boolean;
}

const byKind: readonly Column<Verdict>[] = [
  ['planted', () => true],
  ['must', ({ must }) => must],
  ['found', ({ found }) => found],
  ['at line', ({ found, atLine }) => found && atLine],
  ['one top', ({ found, oneTop }) => found && oneTop],
  ['must, unseen', ({ must, found }) => must && !found],
  ['passed unseen', ({ must, found }) => !must && !found],
];

const byFinding: readonly Column<Told>[] = [
  ['found it', () => true],
  ['at line', ({ atLine }) => atLine],
  ['one top', ({ oneTop }) => oneTop],
];

export const tables = (verdicts: readonly Verdict[]): string =>
  [
    table('kind of fault', verdicts, byKind, ({ fault }) => [fault.kind]),
    tableByFinding(verdicts, ({ errors, cautions }) => (errors.length > 0 ? errors : cautions).map(({ id }) => id)),
  ].join('\n\n');

/** Of each finding: the faults it was at the top of, how many of those at their line, and how many with nothing beside it. */
export const tableByFinding = <T extends Told>(all: readonly T[], idsOf: (one: T) => readonly string[]): string =>
  table('finding', all, byFinding, (one) => [...new Set(idsOf(one))]);

function table<T>(
  head: string,
  verdicts: readonly T[],
  columns: readonly Column<T>[],
  namesOf: (one: T) => readonly string[],
): string {
  const names = [...new Set(verdicts.flatMap(namesOf))].toSorted();
  const rows = names.map((name) =>
    row(
      name,
      verdicts.filter((one) => namesOf(one).includes(name)),
      columns,
    ),
  );
  const lines = [[head, ...columns.map(([title]) => title)], ...rows, row('all', verdicts, columns)];
  const widths = lines[0]!.map((_, i) => Math.max(...lines.map((line) => line[i]!.length)));
  return lines
    .map((line) => line.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  '))
    .join('\n');
}

const row = <T>(name: string, verdicts: readonly T[], columns: readonly Column<T>[]): string[] => [
  name,
  ...columns.map(([, counts]) => String(verdicts.filter(counts).length)),
];
