/**
 * Faults planted by hand: each is an error (or a caution, where that is right), at a line that is at fault, with one finding at
 * the top.
 *
 *   FAULTS_ALL=1        all of them, of both lists; without it a ninth
 *   BY_HAND=text        only faults whose name has this in it
 *   BY_HAND_SHOW=1      prints what was found, in full
 */
import type { ParsedNode } from 'yaml';
import { isCollection, isMap, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import { expect, test } from 'vitest';
import { byHand, unnoticed } from './by-hand.ts';
import type { ByHand } from './by-hand.ts';
import { findingText } from '../../src/findings/render.ts';
import type { RenderedFinding } from '../../src/findings/render.ts';
import { outcomeOf } from './judge.ts';
import type { Files } from './merged.ts';
import { soundDemos } from './sound.ts';
import { traded } from './trade/index.ts';
import { unnoticedTraded } from './trade/unnoticed.ts';

const allFaults: readonly ByHand[] = [...byHand, ...traded];

const { FAULTS_ALL: all, BY_HAND: only, BY_HAND_SHOW: show } = process.env;

/** BY_HAND: parts of names, with | between them. */
const chosenByName = (name: string): boolean => (only ?? '').split('|').some((part) => name.includes(part));

interface Result {
  readonly fault: ByHand;
  readonly tops: readonly RenderedFinding[];
  readonly thrown?: string;
  readonly found: boolean;
  readonly atLine: boolean;
  readonly oneTop: boolean;
}

/** Each model alone, with what it is based on and the plant. */
const sound: ReadonlyMap<string, Files> = new Map(
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

function planted({ model, file, find, replace, name, expected }: ByHand): Files {
  const files = sound.get(model) ?? {};
  const whole = files[pathOf(model)] ?? '';
  const ofLeft =
    (file === model && !rightOnly(whole).includes(find)) || expected.some((one) => one.includes(`${model}: handed.`));
  const before: Files = ofLeft ? files : { ...files, [pathOf(model)]: rightOnly(whole) };
  const parts = before[pathOf(file)]?.split(find) ?? [];
  if (parts.length !== 2) throw new Error(`${name}: found ${parts.length - 1} times: ${find}`);
  return { ...before, [pathOf(file)]: parts.join(replace) };
}

/** `file:line` of what a list of keys leads to: the line of the last key, and that of a value in braces below it. */
function linesOf(expected: string, file: string, files: Files): string[] {
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

function judged(fault: ByHand): Result {
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

const known = [unnoticed, unnoticedTraded].flatMap((list) =>
  Object.entries(list).flatMap(([short, faults]) => faults.map(({ name }) => `${name}: ${short}`)),
);

/** What is not as it should be; undefined where all is well. */
function shortcoming({ found, atLine, oneTop }: Result): keyof typeof unnoticed | undefined {
  if (!found) return 'not found';
  if (!oneTop) return 'more at the top';
  return atLine ? undefined : 'wrong line';
}

function table(results: readonly Result[]): string {
  const mark = (yes: boolean): string => (yes ? ' yes' : '  no');
  const width = Math.max(...results.map(({ fault }) => fault.name.length));
  const rows = results.map(({ fault, tops, thrown, found, atLine, oneTop }) =>
    [
      fault.name.padEnd(width),
      mark(found),
      mark(atLine),
      mark(oneTop),
      thrown === undefined ? [...new Set(tops.map(({ id }) => id))].join(', ') : 'throws',
    ].join('  '),
  );
  const count = (is: (result: Result) => boolean): string => String(results.filter(is).length).padStart(4);
  const all = [
    `all ${results.length}`.padEnd(width),
    count(({ found }) => found),
    count(({ atLine }) => atLine),
    count(({ oneTop }) => oneTop),
  ];
  return [['fault'.padEnd(width), 'found', 'line', 'one top'].join(' '), ...rows, all.join('  ')].join('\n');
}

const inFull = ({ fault, tops, thrown }: Result): string =>
  [
    `### ${fault.name}${fault.several === undefined ? '' : ' (several)'}`,
    ...tops.map((one) => findingText(one)),
    thrown ?? '',
  ].join('\n');

test('the demo models are sound before anything is planted', () => {
  const found = [...sound].flatMap(([name, files]) => {
    const { errors, cautions } = outcomeOf(files);
    return [...errors, ...cautions].map(({ id }) => `${name}: ${id}`);
  });
  expect(found).toEqual([]);
});

test('each fault changes one place, and its lines are there', () => {
  expect(new Set(allFaults.map(({ name }) => name)).size).toBe(allFaults.length);
  expect(byHand.length).toBeGreaterThanOrEqual(80);
  expect(traded.length).toBeGreaterThanOrEqual(130);
  for (const fault of allFaults) {
    const after = planted(fault);
    const lines = fault.expected.flatMap((one) => linesOf(one, fault.file, after));
    expect(lines.length, fault.name).toBeGreaterThanOrEqual(fault.expected.length);
  }
});

test('each fault is an error, at its line, with one finding at the top', { timeout: 1_800_000 }, () => {
  const chosen = allFaults.filter((fault, i) =>
    only === undefined ? all !== undefined || i % 9 === 0 : chosenByName(fault.name),
  );
  const results = chosen.map(judged);
  console.log(table(results));
  if (show) console.log(results.map(inFull).join('\n\n'));

  expect(results.filter(({ thrown }) => thrown !== undefined).map(({ fault }) => fault.name)).toEqual([]);
  const short = results.flatMap((result) => {
    const what = shortcoming(result);
    return what === undefined ? [] : [`${result.fault.name}: ${what}`];
  });
  expect(short.toSorted()).toEqual(
    known.filter((one) => chosen.some(({ name }) => one.startsWith(`${name}: `))).toSorted(),
  );
});
