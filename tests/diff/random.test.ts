/**
 * What holds for any edit, tried on random ones: a state against itself is empty, the other way round is the mirror image, and
 * a card has a new code if and only if something on it is said to differ. 12 edits; DIFF_ALL=1 for a thousand,
 * DIFF_EDITS and DIFF_SEED for so many others.
 */
import { parseDocument } from 'yaml';
import { expect, test } from 'vitest';
import { compileAll, isError } from '../../src/compile.ts';
import type { Compiled } from '../../src/compile.ts';
import { sideOfCompile } from '../../src/comparing.ts';
import { isEmpty, noticeOf } from '../../src/diff/notice.ts';
import type { Notice, Side } from '../../src/diff/notice.ts';
import type { Change } from '../../src/diff/change.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { rightHanded } from './desk.ts';
import { randomEdits } from './random-edits.ts';

const EDITS = process.env['DIFF_ALL'] === undefined ? 12 : Number(process.env['DIFF_EDITS'] ?? 1000);
const ON = '2026-11-27';

const compiled = (files: Readonly<Record<string, string>>): Compiled => compileAll(memoryHost(files), ON);
const sound = ({ checked, models }: Compiled) =>
  ![...checked.findings, ...models.flatMap(({ findings }) => findings)].some(isError);
const sideOf = (name: string, all: Compiled): Side => sideOfCompile(name, all, ['tarn'], true).side;
const codesOf = ({ models: [model] }: Side) =>
  new Map(model!.cards.map(({ card: { key }, code }) => [`${key.station} ${key.hand}`, code]));

const MIRRORED: Readonly<Record<string, string>> = { new: 'gone', gone: 'new', wider: 'tighter', tighter: 'wider' };
const mirrored = (word: string): string => MIRRORED[word] ?? word;

/** What of a change does not depend on which side is the old one; `turn`: seen from the other. */
function seen({ is, how, tag, moves, because }: Change, turn: boolean) {
  const word = turn ? mirrored : (text: string) => text;
  const size = (by: number) => (turn ? -by : by) + 0;
  return {
    is,
    how: word(how),
    tag,
    because: because.toSorted(),
    moves: moves.map(({ fact, was = fact, by, limits }) => {
      const facts = turn ? [fact, was] : [was, fact];
      return `${facts.join(' > ')} ${size(by)} ${limits === undefined ? '' : word(limits)}`;
    }),
  };
}

const ordered = (all: readonly unknown[]): readonly string[] => all.map((one) => JSON.stringify(one)).toSorted();

const picture = ({ plant, models, stations, untouched }: Notice, turn: boolean) => ({
  plant: ordered(plant.map((one) => seen(one, turn))),
  models: models.map(({ id, is, given, elsewhere }) => ({
    id,
    is: turn ? mirrored(is) : is,
    given: ordered(given.map((one) => seen(one, turn))),
    elsewhere: elsewhere.map((one) => one.id).toSorted(),
  })),
  stations: stations
    .map(({ id, cards }) => ({
      id,
      cards: cards.map((card) => ({
        hand: card.hand,
        is: turn ? mirrored(card.is) : card.is,
        codes: turn ? [card.new, card.old] : [card.old, card.new],
        changes: ordered(card.changes.map((one) => seen(one, turn))),
      })),
    }))
    .toSorted((a, b) => (a.id < b.id ? -1 : 1)),
  untouched: untouched.map(({ id }) => id).toSorted(),
});

const files = rightHanded();
const base = sideOf('old', compiled(files));

test('a state against itself, read again from another text of it, is empty', () => {
  const again = Object.fromEntries(
    Object.entries(files).map(([path, text]) => [
      path,
      path.endsWith('.yaml') ? parseDocument(text).toString({ lineWidth: 40, indent: 4 }) : text,
    ]),
  );
  expect(again).not.toEqual(files);
  expect(isEmpty(noticeOf(base, sideOf('new', compiled(again))))).toBe(true);
});

test(`${EDITS} random edits`, { timeout: 7_200_000 }, () => {
  const edit = randomEdits(files, Number(process.env['DIFF_SEED'] ?? 20_261_127));
  const said: string[] = [];
  let tried = 0;
  for (let done = 0; done < EDITS; tried++) {
    const { files: edited, file, path, from, to } = edit();
    const all = compiled(edited);
    if (!sound(all) || all.models[0]!.cards.length === 0) continue;
    done++;
    const after = sideOf('new', all);
    const notice = noticeOf(base, after);
    const what = `${file} ${path}: ${from} -> ${to}`;
    expect(isEmpty(noticeOf(after, after)), what).toBe(true);
    expect(picture(noticeOf(after, base), false), what).toEqual(picture(notice, true));
    // Codes and what is said of cards, both ways.
    const [before, now] = [codesOf(base), codesOf(after)];
    const moved = [...new Set([...before.keys(), ...now.keys()])].filter((key) => before.get(key) !== now.get(key));
    const told = notice.stations.flatMap(({ id, cards }) =>
      cards.filter(({ is, changes }) => is !== 'changed' || changes.length > 0).map(({ hand }) => `${id} ${hand}`),
    );
    expect(told.toSorted(), what).toEqual(moved.toSorted());
    // Each says why, and what is given as on a card is why some card changed.
    const changes = notice.stations.flatMap(({ cards }) => cards.flatMap((card) => card.changes));
    for (const change of changes) expect(change.because.length, `${what}: ${change.line.say}`).toBeGreaterThan(0);
    const because = new Set(changes.flatMap((change) => change.because));
    const given = [...notice.plant, ...notice.models.flatMap((model) => model.given)];
    for (const one of given)
      expect(
        one.because.some((id) => because.has(id)),
        `${what}: ${one.id} ${one.tag}`,
      ).toBe(one.tag === 'card');
    said.push(told.length > 0 ? 'cards' : given.length > 0 ? given[0]!.tag : 'nothing');
  }
  const count = (kind: string) => said.filter((one) => one === kind).length;
  process.stdout.write(
    `${EDITS} sound edits of ${tried}: ${count('cards')} change cards, ${count('check')} checks only, ${count('record')} the record only, ${count('nothing')} nothing\n`,
  );
  // Of edits that mean something most reach a card.
  expect(count('cards')).toBeGreaterThan(EDITS / 4);
});
