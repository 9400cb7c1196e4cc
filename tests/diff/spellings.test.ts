import { describe, test } from 'vitest';
import { sample } from '../cases/workspace.ts';
import { BASE, changed, rightHand, sampled, TARN } from './asked.ts';
import type { Files } from './asked.ts';
import * as as from './rewriting.ts';
import { sameAs } from './same.ts';

const lengths =
  (change: (text: string, key: string) => string | undefined) =>
  (files: Files): Files =>
    as.everySpec(files, (text) =>
      as.respelt(text, (one, key) => {
        const bare = as.bareLength(one, key);
        return bare === undefined ? undefined : change(bare, key);
      }),
    );

const values =
  (change: (text: string) => string | undefined) =>
  (files: Files): Files =>
    as.everySpec(files, (text) => as.respelt(text, change));

/** `6 min` as `360 s`: the same time in another unit, by whole numbers. */
const times = (from: string, to: string, by: number) =>
  values((text) => {
    const found = new RegExp(`^(\\d+) ${from}$`).exec(text);
    const size = Number(found?.[1]) * by;
    return found && Number.isInteger(size) ? `${size} ${to}` : undefined;
  });

const INCHES: Record<string, string> = {
  '13/16 in': '0.8125 in',
  '1-1/2 in': '1.5 in',
  '1-3/4 in': '1.75 in',
  '7/16 in': '.4375 in',
  '3/8 in': '0.375"',
  '1/4 in': '1/4"',
  '2 in': '2.000 in',
};

const PRESSURES: Record<string, string> = {
  '700 ±50 kPa': '7.0 ±0.5 bar',
  '700 ±200 kPa': '0.7 ±0.2 MPa',
  '70 kPa': '0.07 MPa',
  '8 bar': '800 kPa',
};

const spellings: Record<string, (files: Files) => Files> = {
  'zeros after the last place': lengths((text) =>
    text.replaceAll(/\d+(?:\.\d+)?/g, (one) => (one.includes('.') ? `${one}00` : `${one}.000`)),
  ),
  'zeros taken away': lengths((text) => {
    const less = text.replaceAll(/\d+\.\d+/g, (one) => one.replace(/\.?0+$/, ''));
    return less === text ? undefined : less;
  }),
  'each length with its unit': lengths((text) => `${text} mm`),
  'millimetres as centimetres': lengths((text) => `${as.shifted(text, -1)} cm`),
  'millimetres as metres and micrometres': lengths((text) =>
    text.includes('.') ? `${as.shifted(text, 3)} µm` : `${as.shifted(text, -3)} m`,
  ),
  'a model in inches whose every length says mm': (files) => {
    const said = lengths((text) => `${text} mm`)(files);
    const inInches = [TARN, BASE].map((path) => [path, changed(said[path]!, /^units: mm$/m, 'units: in')]);
    return { ...said, ...Object.fromEntries(inInches) };
  },
  'limits as a range': lengths((text) => {
    const found = as.ends(text);
    return found && `${found.low}..${found.high}`;
  }),
  'limits of pressures as a range': values((text) => {
    const found = as.ends(text);
    return found && text.endsWith(' kPa') ? `${found.low}..${found.high} kPa` : undefined;
  }),
  'limits as two deviations': values((text) => as.ends(text) && text.replace(/±(\S+)/, '+$1/-$1')),
  'limits in ASCII and without a blank': values((text) => as.ends(text) && text.replace(' ±', '+/-')),
  'minutes as seconds': times('min', 's', 60),
  'hours as minutes, days as hours': (files) => times('d', 'h', 24)(times('h', 'min', 60)(files)),
  'fractions of an inch as decimals': values((text) => INCHES[text]),
  'pressures in another unit': values((text) => PRESSURES[text]),
};

describe('a number spelt in another way is no change', () => {
  const files = rightHand();
  test.each(sampled(Object.keys(spellings)))('%s', async (name) => sameAs(files, spellings[name]!(files)));

  test('both hands, one rewrite on top of the other', async () => {
    const whole = sample();
    const ranged = spellings['limits as a range']!(whole);
    const after = as.everySpec(
      spellings['minutes as seconds']!(spellings['each length with its unit']!(ranged)),
      as.reversed,
    );
    await sameAs(whole, after);
  });
});
