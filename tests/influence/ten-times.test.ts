/**
 * Every number a model gives, moved by ten times its tolerance, moves a derived fact that prints, or raises a finding. That
 * the number itself is printed as it now stands does not count. A number without limits is moved by ten of its last digit.
 *
 *   INFLUENCE_ALL=1       every number of every demo model; without it a seeded few
 *   INFLUENCE_ALL=tarn    every number of that model
 */
import { expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import type { Facts } from '../../src/facts/facts.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { dotted, entriesOf } from '../faults/entries.ts';
import type { Entry } from '../faults/entries.ts';
import { planted, valued } from '../faults/fault.ts';
import { DAY } from '../faults/judge.ts';
import type { Files } from '../faults/merged.ts';
import { plain, sizeOf, withFirst } from '../faults/quantity.ts';
import { seeded } from '../faults/seeded.ts';
import type { Sound } from '../faults/sound.ts';
import { soundDemos } from '../faults/sound.ts';

const { INFLUENCE_ALL: everything } = process.env;

/** What a workspace comes to: whether anything is found, and every derived number its cards print. */
interface Outcome {
  readonly found: boolean;
  readonly printed: readonly string[];
}

function outcomeOf(files: Files): Outcome {
  const { checked, models } = compileAll(memoryHost(files), DAY);
  const found = checked.findings.length > 0 || models.some(({ findings }) => findings.length > 0);
  const printed = found
    ? []
    : models.flatMap(({ cards, hands }) =>
        cards.flatMap(({ card }) => {
          const { facts } = hands.find(({ subject }) => subject.hand === card.key.hand)!;
          return [...derivedOn(card, facts)].map((one) => `${card.key.hand} ${card.key.station} ${one}`);
        }),
      );
  return { found, printed };
}

/** Texts of a card that come from a fact somebody computed: not of one that says what was given. */
function* derivedOn(value: unknown, facts: Facts): Generator<string> {
  if (typeof value !== 'object' || value === null) return;
  const { fact, kind, ...rest } = value as { fact?: unknown; kind?: string };
  if (typeof fact === 'string' && (kind === 'figure' || kind === 'limits')) {
    const origin = facts.fact(fact)?.origin;
    if (origin?.kind === 'derived' && !/^as (?:given|the line)/.test(origin.formula))
      yield JSON.stringify([fact, rest]);
    return;
  }
  for (const one of Object.values(value)) yield* derivedOn(one, facts);
}

interface Move {
  readonly id: string;
  readonly files: Files;
}

function movesOf(sound: Sound): Move[] {
  return entriesOf(sound)
    .filter(
      ({ of, schema, scalar, shadowed }) => of === 'model' && schema.quantity && scalar !== undefined && !shadowed,
    )
    .flatMap((entry) =>
      textsOf(entry).map((text) => ({
        id: `${sound.name}: ${dotted(entry)} ${entry.scalar} → ${text}`,
        files: planted(sound.files, valued(entry, /[:#%]|^-$/.test(text) && entry.flow ? `'${text}'` : text)),
      })),
    );
}

/** The text with its number ten tolerances, or ten last digits, more and less. */
function textsOf({ scalar, schema }: Entry): string[] {
  const text = scalar!;
  const size = sizeOf(text, 'mm');
  if (!size) return [];
  const { low, high, unit } = size;
  const by = unit === 'in' || unit === '"' ? 25.4 : 1;
  const [, decimals = ''] = /^[^\d]*\d*\.?(\d*)/.exec(text) ?? [];
  const step = schema.whole === true ? 1 : 10 * 10 ** -decimals.length;
  const amount = high > low ? ((high - low) / 2 / by) * 10 : step;
  if (/\.\./.test(text))
    return [amount, -amount].map((more) => {
      const tail = /[^\d.]*$/.exec(text)![0];
      return `${plain(low / by + more)}..${plain(high / by + more)}${tail}`;
    });
  return [amount, -amount].map((more) => withFirst(text, (value) => plain(value + more)));
}

const demos = soundDemos();
const named = demos.filter(({ name }) => everything?.split(',').includes(name));
const chosen = named.length > 0 ? named : demos;

test(
  'ten tolerances off, it shows: a derived number that prints moves, or something is found',
  { timeout: 14_400_000 },
  () => {
    const chance = seeded(20261127);
    const quiet: string[] = [];
    const counts = { tried: 0, found: 0, moved: 0 };
    for (const sound of chosen) {
      const before = new Set(outcomeOf(sound.files).printed);
      const moves = movesOf(sound);
      for (const { id, files } of everything ? moves : chance.shuffle(moves).slice(0, 2)) {
        counts.tried += 1;
        const after = outcomeOf(files);
        // A card may print one number twice: as sets.
        const now = new Set(after.printed);
        const same = now.size === before.size && [...now].every((one) => before.has(one));
        if (after.found) counts.found += 1;
        else if (!same) counts.moved += 1;
        else quiet.push(id);
      }
      if (everything) console.log(`${sound.name}: ${JSON.stringify(counts)}\n${quiet.join('\n')}`);
    }
    expect(quiet).toEqual([]);
  },
);
