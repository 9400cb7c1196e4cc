/** The same sizes in another notation or unit. */
import type { Entry } from '../entries.ts';
import { entriesOf } from '../entries.ts';
import { planted, valued } from '../fault.ts';
import { plain, sizeOf } from '../quantity.ts';
import type { Seeded } from '../seeded.ts';
import type { Sound } from '../sound.ts';
import type { Way } from './variant.ts';

export const unitsWritten = respelling('unit written out', (text) =>
  /^-?[\d.]+( ?±[\d.]+)?$/.test(text) ? text.replace(/^(-?[\d.]+)/, '$1 mm') : undefined,
);

/** `16.40 ±0.10` and `16.3..16.5` are the same limits, and the middle is aimed at in both. */
export const asRange = respelling('± as a range', (text) => {
  const parts = /^([\d.]+) ±([\d.]+)( ?[a-zA-Z%°]+)?$/.exec(text);
  if (!parts) return undefined;
  const [nominal, tolerance] = [Number(parts[1]), Number(parts[2])];
  const digits = Math.max(...[parts[1]!, parts[2]!].map((one) => one.split('.')[1]?.length ?? 0));
  return `${(nominal - tolerance).toFixed(digits)}..${(nominal + tolerance).toFixed(digits)}${parts[3] ?? ''}`;
});

export const asDeviations = respelling('± as two deviations', (text) =>
  /^[\d.]+ ±[\d.]+( ?[a-zA-Z%°]+)?$/.test(text) ? text.replace(/±([\d.]+)/, '+$1/-$1') : undefined,
);

export const plusMinus = respelling('± as +/-', (text) => (text.includes('±') ? text.replace('±', '+/-') : undefined));

const inMillimetres = (text: string, bare: string): string | undefined => {
  const size = sizeOf(text, bare);
  if (!size || size.unit !== 'in' || /±|\.\.|\+/.test(text)) return undefined;
  const exact = plain(size.nominal);
  return exact.length < 9 ? `${exact} mm` : undefined;
};

/** Exact: an inch is 25.4 mm. */
export const boardLength = respelling('inches as millimetres, plant', inMillimetres, 'plant');

/** A size of the model is printed as it is given: other cards. */
export const modelLength: Way = {
  ...respelling('inches as millimetres, model', inMillimetres, 'model'),
  same: false,
};

/** Exact: a bar is 100 kPa. A pressure is printed in the unit it is given in, so the card of the press is another. */
export const otherPressure: Way = {
  ...respelling('kPa as bar', (text) => {
    const pressure = /^(\d+) ±(\d+) kPa$/.exec(text);
    return pressure ? `${plain(Number(pressure[1]) / 100)} ±${plain(Number(pressure[2]) / 100)} bar` : undefined;
  }),
  same: false,
};

function respelling(name: string, spell: (text: string, bare: string) => string | undefined, only?: Entry['of']): Way {
  return {
    name,
    same: true,
    apply: (sound, chance) => {
      const all = entriesOf(sound).filter(
        ({ schema, scalar }) => schema.quantity === 'length' || scalar?.endsWith('kPa'),
      );
      const possible = all.flatMap((entry) => {
        if (only !== undefined && entry.of !== only) return [];
        const bare = /^units: (\w+)/m.exec(sound.files[entry.file]!)?.[1] ?? 'mm';
        // A bare number in a file in inches is not in millimetres.
        const text =
          entry.scalar === undefined || (name === 'unit written out' && bare === 'in')
            ? undefined
            : spell(entry.scalar, bare);
        return text === undefined ? [] : [[entry, text] as const];
      });
      return some(sound, possible, chance);
    },
  };
}

function some(
  sound: Sound,
  possible: readonly (readonly [Entry, string])[],
  chance: Seeded,
): Record<string, string> | undefined {
  if (possible.length === 0) return undefined;
  const chosen = chance.shuffle(possible).slice(0, 1 + chance.whole(4));
  return planted(
    sound.files,
    chosen.flatMap(([entry, text]) => valued(entry, text)),
  );
}
