/** Numbers moved, and limits drawn in, as far as our own arithmetic says that all still holds. */
import type { Entry } from '../entries.ts';
import { dotted, entriesOf } from '../entries.ts';
import { planted, valued } from '../fault.ts';
import { plain, withFirst } from '../quantity.ts';
import type { Seeded } from '../seeded.ts';
import type { Sound } from '../sound.ts';
import { unsound } from '../trade.ts';
import type { Way } from './variant.ts';

/** What may be moved a little, and by how many millimetres at most. */
const ROOM: readonly (readonly [RegExp, number])[] = [
  [/^stages\.(cap|back|slab)\.sized$/, 0.05],
  [/^stages\.body\./, 0.05],
  [/^cavities\.[\w-]+\.at\.[xy]$/, 0.4],
  [/^holes\.bridge-[\w-]+\.at\.[xy]$/, 0.1],
  [/^cavities\.[\w-]+\.(depth|floor)$/, 0.1],
  [/^cavities\.[\w-]+\.shape\.(length|width)$/, 0.5],
  [/^holes\.(bridge|stud|cover)-[\w-]+\.depth$/, 0.5],
  [/^carve\.(land|recurve|bevel)$/, 0.5],
  [/^bridge\.(compensation|travel)$/, 0.3],
  [/^lines\.\w+\.(jointing|rough-line|blank-over)$/, 0.5],
  [/^machines\.[\w-]+\.(wander|kerf)$/, 0.1],
];

export const nudged: Way = {
  name: 'numbers moved inside their margins',
  same: false,
  apply: (sound, chance) => {
    const all = entriesOf(sound).flatMap((entry) => {
      const room = ROOM.find(([path]) => path.test(dotted(entry)))?.[1];
      return room === undefined || entry.scalar === undefined ? [] : [[entry, room] as const];
    });
    const chosen = chance.shuffle(all).slice(0, 1 + chance.whole(3));
    const texts = chosen.map(([entry, room]) => [entry, nudge(sound, entry, room, chance)] as const);
    return ifSound(sound, texts);
  },
};

function nudge(sound: Sound, entry: Entry, roomMm: number, chance: Seeded): string {
  const inches = entry.scalar!.endsWith('in') || /^units: in/m.test(sound.files[entry.file]!);
  const steps = chance.whole(11) - 5;
  const by = ((roomMm / 5) * steps) / (inches ? 25.4 : 1);
  // As fine as people write: hundredths of a millimetre, thousandths of an inch.
  return withFirst(entry.scalar!, (value) => (value + by).toFixed(inches ? 3 : 2));
}

/** Tighter than before, and still far above what the machines hold and the gauges read. */
export const tightened: Way = {
  name: 'limits drawn in',
  same: false,
  apply: (sound, chance) => {
    const all = entriesOf(sound).filter(
      ({ scalar, path }) => path[0] === 'stages' && /^[\d.]+ ±[\d.]+$/.test(scalar ?? ''),
    );
    const chosen = chance.shuffle(all).slice(0, 1 + chance.whole(3));
    const texts = chosen.map((entry) => {
      const part = 0.8 + chance.whole(4) * 0.05;
      const drawn = entry.scalar!.replace(
        /±([\d.]+)/,
        (_, tolerance: string) => `±${plain(Math.max(0.001, round(Number(tolerance) * part)))}`,
      );
      return [entry, drawn] as const;
    });
    return ifSound(sound, texts);
  },
};

const round = (value: number): number => (value < 0.02 ? Math.ceil(value * 1000) / 1000 : Math.ceil(value * 100) / 100);

function ifSound(sound: Sound, texts: readonly (readonly [Entry, string])[]): Record<string, string> | undefined {
  const files = planted(
    sound.files,
    texts.flatMap(([entry, text]) => valued(entry, text)),
  );
  return texts.length > 0 && unsound(files, sound.layers).length === 0 ? files : undefined;
}
