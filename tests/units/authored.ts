import fc from 'fast-check';
import type { Kind } from '../../src/units/quantity.ts';
import type { Unit } from '../../src/units/unit.ts';
import { UNITS } from '../../src/units/unit.ts';

/** A text of a quantity as somebody could write it, with what it has to be read as. */
export interface Authored {
  readonly text: string;
  readonly kind: Kind;
}

/** Digits that every unit holds exactly: a length in inches has no more than five decimals, one in feet four. */
function numbers(unit: Unit): fc.Arbitrary<string> {
  const most = unit.kind !== 'length' ? 5 : ({ µm: 3, thou: 2, ft: 4, in: 5 }[unit.id] ?? 6);
  return fc
    .tuple(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 0, max: most }), fc.nat())
    .map(([whole, scale, part]) =>
      scale === 0 ? `${whole}` : `${whole}.${`${part}`.padStart(scale, '0').slice(-scale)}`,
    );
}

const fractions = fc
  .tuple(fc.integer({ min: 0, max: 60 }), fc.constantFrom(2, 4, 8, 16, 32, 64, 128), fc.nat())
  .map(([whole, d, n]) => (whole === 0 ? `${n % (2 * d)}/${d}` : `${whole}-${n % d}/${d}`));

function forms(number: fc.Arbitrary<string>, unit: Unit): fc.Arbitrary<string> {
  const u = fc.constantFrom(...unit.spellings).map((s) => (s === '' ? '' : ` ${s}`));
  const sign = fc.constantFrom('', '', '-');
  const pm = fc.constantFrom(' ±', ' ± ', ' +/-', ' +-', '±');
  return fc.oneof(
    fc.tuple(sign, number, u).map((p) => p.join('')),
    fc.tuple(sign, number, pm, number, u).map((p) => p.join('')),
    fc.tuple(sign, number, u, pm, number, u).map((p) => p.join('')),
    fc.tuple(number, number, number, u).map(([n, a, b, u]) => `${n} +${a}/-${b}${u}`),
    fc.tuple(number, number, number, u).map(([n, a, b, u]) => `${n}${u} -${a} / +${b}`),
    fc.tuple(sign, number, number, u, fc.boolean()).map(([s, a, b, u, wide]) => {
      const [low, high] = s === '-' ? [`-${a}`, b] : amount(a) <= amount(b) ? [a, b] : [b, a];
      return `${low}${wide ? ' .. ' : '..'}${high}${u}`;
    }),
  );
}

function amount(text: string): number {
  const [, whole, n, d] = /^(?:(\d+)-)?(\d+)\/(\d+)$/.exec(text) ?? [];
  return d === undefined ? Number(text) : Number(whole ?? 0) + Number(n) / Number(d);
}

/** Any unit, spelling and form. */
export const authored: fc.Arbitrary<Authored> = fc.constantFrom(...UNITS).chain((unit) => {
  const number = unit.id === 'in' ? fc.oneof(numbers(unit), fractions) : numbers(unit);
  return forms(number, unit).map((text) => ({ text, kind: unit.kind }));
});

/** Toleranced lengths only. */
export const authoredLength = authored.filter((a) => a.kind === 'length');
