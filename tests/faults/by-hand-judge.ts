/** A fault by hand, planted and judged: whether it is found, at its line, with one finding at the top. */
import type { ParsedNode } from 'yaml';
import { isCollection, isMap, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import type { RenderedFinding } from '../../src/findings/render.ts';
import { byHand } from './by-hand.ts';
import type { ByHand, unnoticed } from './by-hand.ts';
import { outcomeOf } from './judge.ts';
import type { Files } from './merged.ts';
import { soundDemos } from './sound.ts';
import { traded } from './trade/index.ts';

export const allFaults: readonly ByHand[] = [...byHand, ...traded];

export interface Result {
  readonly fault: ByHand;
  readonly tops: readonly RenderedFinding[];
  readonly thrown?: string;
  readonly found: boolean;
  readonly atLine: boolean;
  readonly oneTop: boolean;
}

/** Each model alone, with what it is based on and the plant. */
export const soundAlone: ReadonlyMap<string, Files> = new Map(
  soundDemos().map(({ name, files, layers }) => {
    const needed = Object.entries(files).filter(
      ([path]) => layers.includes(path) || /^models\/(?:plant|pictures)\//.test(path),
    );
    return [name, Object.fromEntries(needed)] as const;
  }),
);

const pathOf = (file: string): string => `models/${file}.yaml`;

/** Without the left hand, line for line: it takes as long as the right one and says the same. */
const rightOnly = (text: string): string =>
  text.replace(/^handed:\n(?: .*\n)+/m, (block) => '\n'.repeat(block.split('\n').length - 1));

export function planted({ model, file, find, replace, name, expected }: ByHand): Files {
  const files = soundAlone.get(model) ?? {};
  const whole = files[pathOf(model)] ?? '';
  const ofLeft =
    (file === model && !rightOnly(whole).includes(find)) || expected.some((one) => one.includes(`${model}: handed.`));
  const before: Files = ofLeft ? files : { ...files, [pathOf(model)]: rightOnly(whole) };
  const parts = before[pathOf(file)]?.split(find) ?? [];
  if (parts.length !== 2) throw new Error(`${name}: found ${parts.length - 1} times: ${find}`);
  return { ...before, [pathOf(file)]: parts.join(replace) };
}

/** `file:line` of what a list of keys leads to: the line of the last key, and that of a value in braces below it. */
export function linesOf(expected: string, file: string, files: Files): string[] {
  const [keys, named] = expected.split(': ').toReversed();
  const path = pathOf(named ?? file);
  const lines = new LineCounter();
  const { contents } = parseDocument(files[path] ?? '', { lineCounter: lines });
  let node: ParsedNode | null = contents;
  let starts: number[] = [];
  for (const key of keys!.split('.')) {
    const pair = isMap<ParsedNode, ParsedNode | null>(node)
      ? node.items.find((one) => isScalar(one.key) && String(one.key.value) === key)
      : undefined;
    const item = isSeq<ParsedNode>(node) ? node.items[Number(key)] : undefined;
    if (item) {
      starts = [item.range[0]];
      node = item;
      continue;
    }
    if (!pair) throw new Error(`${path} has no ${keys}`);
    const value: ParsedNode | null = pair.value;
    const inline = value !== null && !(isCollection(value) && value.flow !== true);
    starts = [pair.key.range[0], ...(inline ? [value.range[0]] : [])];
    node = value;
  }
  return starts.map((offset) => `${path}:${lines.linePos(offset).line}`);
}

export function judged(fault: ByHand): Result {
  const after = planted(fault);
  const right = new Set(fault.expected.flatMap((one) => linesOf(one, fault.file, after)));
  try {
    const { errors, cautions } = outcomeOf(after);
    const tops = [...errors, ...cautions];
    const told = fault.caution === undefined ? errors : cautions;
    const places = told.flatMap(({ where, notes }) => [where, ...notes.map((note) => note.where)]);
    return {
      fault,
      tops,
      found: told.length > 0,
      atLine: places.some((place) => right.has(place.replace(/:\d+$/, ''))),
      oneTop: tops.length === 1 || (fault.several !== undefined && tops.length > 1),
    };
  } catch (error) {
    const thrown = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { fault, tops: [], thrown, found: false, atLine: false, oneTop: false };
  }
}

/** What is not as it should be; undefined where all is well. */
export function shortcoming({ found, atLine, oneTop }: Result): keyof typeof unnoticed | undefined {
  if (!found) return 'not found';
  if (!oneTop) return 'more at the top';
  return atLine ? undefined : 'wrong line';
}
