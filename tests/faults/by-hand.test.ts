/**
 * Faults planted by hand: each is an error, at a line that is at fault, with one finding at the top.
 *
 *   FAULTS_ALL=1        all of them, of both lists; without it one of twenty-nine
 *   BY_HAND=text        only faults whose name has this in it
 *   BY_HAND_SHOW=1      prints what was found, in full
 */
import { expect, test } from 'vitest';
import { byHand } from './by-hand.ts';
import { allFaults, judged, linesOf, planted, shortcoming, soundAlone } from './by-hand-judge.ts';
import type { Result } from './by-hand-judge.ts';
import { findingText } from '../../src/findings/render.ts';
import { outcomeOf } from './judge.ts';
import { traded } from './trade/index.ts';
import { known } from './known.ts';
import { tableByFinding } from './table.ts';

const { FAULTS_ALL: all, BY_HAND: only, BY_HAND_SHOW: show } = process.env;

/** BY_HAND: parts of names, with | between them. */
const chosenByName = (name: string): boolean => (only ?? '').split('|').some((part) => name.includes(part));

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
  const checks = tableByFinding(results, ({ tops }) => tops.map(({ id }) => id));
  return [['fault'.padEnd(width), 'found', 'line', 'one top'].join(' '), ...rows, all.join('  '), '', checks].join(
    '\n',
  );
}

const inFull = ({ fault, tops, thrown }: Result): string =>
  [
    `### ${fault.name}${fault.several === undefined ? '' : ' (several)'}`,
    ...tops.map((one) => findingText(one)),
    thrown ?? '',
  ].join('\n');

test('the demo models are sound before anything is planted', () => {
  const found = [...soundAlone].flatMap(([name, files]) => {
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
    only === undefined ? all !== undefined || i % 29 === 0 : chosenByName(fault.name),
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
