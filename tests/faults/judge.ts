/** Plants a fault, compiles, and says what came of it. */
import { compileAll } from '../../src/compile.ts';
import type { RenderedFinding } from '../../src/findings/render.ts';
import { findingText, inOrder, renderFinding } from '../../src/findings/render.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { Fault } from './fault.ts';
import { lineOf, planted } from './fault.ts';
import type { Files } from './merged.ts';
import type { Sound } from './sound.ts';

export const DAY = '2026-11-25';

export interface Outcome {
  readonly errors: readonly RenderedFinding[];
  readonly cautions: readonly RenderedFinding[];
  /** `station code` of every card. */
  readonly codes: readonly string[];
}

export interface Verdict extends Outcome {
  readonly fault: Fault;
  readonly must: boolean;
  readonly thrown?: string;
  readonly found: boolean;
  readonly atLine: boolean;
  readonly oneTop: boolean;
  /** The fault's line in the text after the change. */
  readonly line: string;
}

/** Top findings of the plant and of the models, each once. */
export function outcomeOf(files: Files): Outcome {
  const { checked, models } = compileAll(memoryHost(files), DAY);
  const { texts } = checked.workspace;
  const all = inOrder([...checked.findings, ...models.flatMap((model) => model.findings)]);
  const shown = all.map((finding) => renderFinding(finding, texts));
  const once = [...new Map(shown.map((one) => [`${one.id} ${one.where} ${one.what}`, one])).values()];
  return {
    errors: once.filter(({ severity }) => severity === 'error'),
    cautions: once.filter(({ severity }) => severity === 'caution'),
    codes: models.flatMap(({ cards }) => cards.map(({ card, code }) => `${card.station.text} ${code}`)),
  };
}

export function judged(sound: Sound, fault: Fault): Verdict {
  const after = planted(sound.files, fault.splices);
  const must = fault.must();
  const lines = fault.marks.map((mark) => lineOf(mark, fault.splices, after));
  const outcome = attempt(after);
  const tops = outcome.errors.length > 0 ? outcome.errors : outcome.cautions;
  const places = tops.flatMap(({ where, notes }) => [where, ...notes.map((note) => note.where)]);
  const atLine = places.some((place) => lines.includes(place.replace(/:\d+$/, '')));
  return {
    ...outcome,
    fault,
    must,
    found: tops.length > 0,
    atLine,
    oneTop: tops.length === 1 || (fault.several && tops.length > 1),
    line: lines[0]!,
  };
}

function attempt(files: Files): Outcome & { readonly thrown?: string } {
  try {
    return outcomeOf(files);
  } catch (error) {
    const thrown = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { errors: [], cautions: [], codes: [], thrown };
  }
}

/** What is not as it should be; nothing where all is well. */
export function shortcoming({ must, thrown, found, atLine, oneTop }: Verdict): string | undefined {
  if (thrown !== undefined) return 'throws';
  if (!must) return undefined;
  if (!found) return 'not found';
  if (!atLine) return 'not at the line';
  return oneTop ? undefined : 'not one top finding';
}

/** A verdict in full, as one looks into it. */
export const verdictText = (verdict: Verdict): string =>
  [
    `${verdict.fault.id} at ${verdict.line}: ${shortcoming(verdict) ?? 'well'}`,
    ...[...verdict.errors, ...verdict.cautions].map((one) => `    ${findingText(one).replaceAll('\n', '\n    ')}`),
    ...(verdict.thrown === undefined ? [] : [verdict.thrown]),
  ].join('\n');
