/** One edit of the sample, and what the trade expects of it: where cards change, where they stay, what is shown. */
import { beforeAll, describe, expect, test } from 'vitest';
import { sample } from '../cases/workspace.ts';
import { BASE, changed, diffOf, made, PLANT, rightHand, sampled, TARN } from './asked.ts';
import type { Answer, Change, Files, Given, Made } from './asked.ts';

const files = { model: TARN, base: BASE, plant: PLANT };

/** The stations of the route, and the rack. */
const ALL = (
  'conditioning jointing edge-gluing planing picking rough-sawing sizing lamination press trim-sawing machining-back ' +
  'machining-top sign-off set-aside'
).split(' ');

export interface Expected {
  readonly edit: string;
  readonly in: keyof typeof files;
  readonly find: string;
  readonly replace: string;
  /** Stations whose card changes, at least these. */
  readonly touched: string;
  /** Stations whose card stays: some by name, or all but those that are touched. */
  readonly stays: string;
  /** What must be said where: words of one change, and the signed size of one of its moves in nanometres. */
  readonly shown?: readonly (readonly [station: string, words: RegExp, by?: number])[];
  /** The given line, and what it is for; where it went or came it may have no more than an id. */
  readonly given: readonly [id: string, tag: Given['tag']];
  /** With the left hand too; else the right one alone. */
  readonly both?: true;
}

export const THE_REST = 'the rest';

const listed = (stations: string): string[] => stations.split(' ').filter((name) => name !== '');

const staying = ({ touched, stays }: Expected): string[] =>
  stays === THE_REST ? ALL.filter((name) => !listed(touched).includes(name)) : listed(stays);

/** Stations of which a card got another code. */
const otherCodes = (before: Made, after: Made): string[] =>
  ALL.filter((name) =>
    ['right', 'left'].some((hand) => before.codes[`${name} ${hand}`] !== after.codes[`${name} ${hand}`]),
  );

const changedAt = ({ stations }: Answer, id: string) =>
  stations.filter((station) => station.id === id).flatMap(({ cards }) => cards.filter((card) => card.is === 'changed'));

/** All it says, with plain blanks: where a line may not break is no matter here. */
const ofWords = (change: Change): string => [change.text, ...change.also].join(' | ').replaceAll('\u00A0', ' ');

export function holds(title: string, table: readonly Expected[]): void {
  describe(title, () => {
    const hands = { one: rightHand(), both: sample() };
    const before: { one?: Made; both?: Made } = {};
    beforeAll(() => {
      before.one = made(hands.one);
      if (table.some(({ both }) => both)) before.both = made(hands.both);
    });

    test.each(sampled(table))('$edit', async (row) => {
      const which = row.both ? 'both' : 'one';
      const old = hands[which];
      const path = files[row.in];
      expect(old[path]!.split(row.find)).toHaveLength(2);
      const now: Files = { ...old, [path]: changed(old[path]!, row.find, row.replace) };
      const [was, is] = [before[which]!, made(now)];
      expect(is.errors).toEqual([]);
      const said = await diffOf(old, now);

      // What it says of cards is what became of their codes, card by card.
      const moved = otherCodes(was, is);
      const told = ALL.flatMap((id) => changedAt(said, id).map((card) => [`${id} ${card.hand}`, [card.old, card.new]]));
      const keys = Object.keys(was.codes).filter((key) => was.codes[key] !== is.codes[key]);
      expect(told).toHaveLength(keys.length);
      expect(Object.fromEntries(told)).toEqual(
        Object.fromEntries(keys.map((key) => [key, [was.codes[key], is.codes[key]]])),
      );
      expect([...said.untouched].toSorted()).toEqual(ALL.filter((name) => !moved.includes(name)).toSorted());

      expect(moved).toEqual(expect.arrayContaining(listed(row.touched)));
      expect(moved.filter((name) => staying(row).includes(name))).toEqual([]);
      const [id, tag] = row.given;
      const given = [...said.plant, ...said.models.flatMap((model) => model.given)];
      expect(given.map((line) => [line.id, line.tag])).toContainEqual([id, tag]);

      for (const [station, words, by] of row.shown ?? []) {
        const changes = changedAt(said, station).flatMap((card) => card.changes);
        const fits = changes.filter(
          (change) => words.test(ofWords(change)) && (by === undefined || change.moves.some((move) => move.by === by)),
        );
        if (fits.length > 0) expect(fits[0]!.because).toContain(id);
        else
          expect(changes.map((change) => [ofWords(change), change.moves.map((move) => move.by)])).toContainEqual([
            words,
            by,
          ]);
      }
    });
  });
}
