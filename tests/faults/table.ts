/** What came of the faults, as two tables: by kind of fault and by id of finding. */
import type { Verdict } from './judge.ts';

type Column = readonly [string, (verdict: Verdict) => boolean];

const byKind: readonly Column[] = [
  ['planted', () => true],
  ['must', ({ must }) => must],
  ['found', ({ found }) => found],
  ['at line', ({ found, atLine }) => found && atLine],
  ['one top', ({ found, oneTop }) => found && oneTop],
  ['must, unseen', ({ must, found }) => must && !found],
  ['passed unseen', ({ must, found }) => !must && !found],
];

const byFinding: readonly Column[] = [
  ['found it', () => true],
  ['at line', ({ atLine }) => atLine],
  ['one top', ({ oneTop }) => oneTop],
];

export const tables = (verdicts: readonly Verdict[]): string =>
  [
    table('kind of fault', verdicts, byKind, ({ fault }) => [fault.kind]),
    table('finding', verdicts, byFinding, ({ errors, cautions }) => [
      ...new Set((errors.length > 0 ? errors : cautions).map(({ id }) => id)),
    ]),
  ].join('\n\n');

function table(
  head: string,
  verdicts: readonly Verdict[],
  columns: readonly Column[],
  namesOf: (verdict: Verdict) => readonly string[],
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

const row = (name: string, verdicts: readonly Verdict[], columns: readonly Column[]): string[] => [
  name,
  ...columns.map(([, counts]) => String(verdicts.filter(counts).length)),
];
