/** Findings as text for people and as data for machines. Line and column appear only here. */
import type { Finding, Place } from './finding.ts';

export interface Position {
  /** From 1. */
  readonly line: number;
  /** From 1, in characters. */
  readonly column: number;
}

export function positionOf(text: string, offset: number): Position {
  const before = text.slice(0, offset);
  const line = before.split('\n').length;
  return { line, column: Array.from(before.slice(before.lastIndexOf('\n') + 1)).length + 1 };
}

export interface RenderedNote {
  readonly where: string;
  readonly text: string;
}

/** A finding with its places as `file:line:col` and the line at fault with a caret under it. */
export interface RenderedFinding {
  readonly id: string;
  readonly severity: Finding['severity'];
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly where: string;
  readonly excerpt: string;
  readonly what: string;
  readonly why: string;
  readonly mend: string;
  readonly notes: readonly RenderedNote[];
  /** Errors that follow from this one. */
  readonly follows: readonly RenderedFinding[];
}

export function renderFinding(finding: Finding, texts: ReadonlyMap<string, string>): RenderedFinding {
  const { id, severity, place, what, why, mend, notes } = finding;
  const { line, column } = at(place, texts);
  return {
    id,
    severity,
    file: place.file,
    line,
    column,
    where: where(place, texts),
    excerpt: excerpt(place, texts.get(place.file) ?? ''),
    what,
    why,
    mend,
    notes: notes.map((note) => ({ where: where(note.place, texts), text: note.text })),
    follows: (finding.follows ?? []).map((one) => renderFinding(one, texts)),
  };
}

const at = (place: Place, texts: ReadonlyMap<string, string>): Position =>
  positionOf(texts.get(place.file) ?? '', place.start);

export function where(place: Place, texts: ReadonlyMap<string, string>): string {
  const { line, column } = at(place, texts);
  return `${place.file}:${line}:${column}`;
}

/** The line at fault, long ones cut round the fault, with carets under what is meant. */
function excerpt({ start, end }: Place, text: string): string {
  const from = text.lastIndexOf('\n', start - 1) + 1;
  const stop = text.indexOf('\n', start);
  const line = text
    .slice(from, stop < 0 ? text.length : stop)
    .replace(/\t/g, ' ')
    .replace(/\r$/, '');
  const column = start - from;
  const width = Math.max(1, Math.min(end, from + line.length) - start);
  const cut = column > 100 ? column - 40 : 0;
  const shown = line.slice(cut, cut + 160);
  return `${shown}\n${' '.repeat(Math.max(0, column - cut))}${'^'.repeat(Math.max(1, Math.min(width, shown.length - (column - cut))))}`;
}

/** For a terminal or a log: one paragraph a finding. */
export function findingText(finding: RenderedFinding): string {
  const lines = [
    `${finding.where} ${finding.id} (${finding.severity})`,
    ...finding.excerpt.split('\n').map((line) => `    ${line}`),
    `  ${finding.what}`,
    `  Why: ${finding.why}`,
    `  Mend: ${finding.mend}`,
    ...finding.notes.map((note) => `  See ${note.where}: ${note.text}`),
    ...finding.follows.map((one) => `  Follows from it: ${one.where} ${one.id}: ${one.what}`),
  ];
  return lines.join('\n');
}

/** By file, then line; errors before cautions on one line. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return findings.toSorted(
    (a, b) =>
      compare(a.place.file, b.place.file) ||
      a.place.start - b.place.start ||
      compare(b.severity, a.severity) ||
      compare(a.id, b.id),
  );
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
