/** How the cutters of the plant run: chip, speed of the edge, and the band its chip should lie in. */
import type { Use } from '../../facts/facts.ts';
import { publishedIn } from '../../facts/facts.ts';
import type { Cutter } from '../../facts/cutter-row.ts';
import { cutterRow } from '../../facts/cutter-row.ts';
import { namesOf, present } from '../../facts/row.ts';
import { CHIP_LOAD_CERTAINTY, CHIP_LOAD_SOURCE, chipLoadBandIn } from '../../reference/chip-load.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { chipLoad, chipShare, engagement, surfaceSpeed } from '../chips.ts';
import { NM_PER_M } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `cutter.${string}.chip-load`]: Length;
    [id: `cutter.${string}.surface-speed`]: Quantity<'speed'>;
    /** Of its turn; half a turn where it has no step over. */
    [id: `cutter.${string}.engagement`]: Quantity<'angle'>;
    [id: `cutter.${string}.chip`]: Length;
    /** Nothing for drills, and for cutters thinner than any that is published, unless the plant says. */
    [id: `cutter.${string}.chip-band`]: Length | undefined;
  }
}

const milling = publishedIn('speeds and feeds of milling (textbook)');
const NM_PER_INCH = 25_400_000;

const rule: Rule = ({ plant }) =>
  namesOf(plant.cutters)
    .map((id) => cutterRow(plant, id))
    .filter(({ row }) => present(row)?.speed !== undefined)
    .flatMap((cutter) => [
      derivation({
        id: `cutter.${cutter.id}.chip-load`,
        label: `${cutter.id}: chip load`,
        formula: 'feed ÷ (turns × flutes)',
        source: milling,
        value: (use) => {
          const metres = chipLoad(
            use(cutter.need('feed')).value,
            use(cutter.need('speed')).value,
            use(cutter.need('flutes')).value,
          );
          return thin(metres * NM_PER_M);
        },
      }),
      derivation({
        id: `cutter.${cutter.id}.surface-speed`,
        label: `${cutter.id}: speed of its edge`,
        formula: 'π × diameter × turns',
        source: milling,
        value: (use) => {
          const metres = use(cutter.need('diameter')).value / NM_PER_M;
          return {
            kind: 'speed',
            value: surfaceSpeed(metres, use(cutter.need('speed')).value),
            unit: 'm/s',
            decimals: 1,
          };
        },
      }),
      derivation({
        id: `cutter.${cutter.id}.engagement`,
        label: `${cutter.id}: share of its turn in the wood`,
        formula: 'acos(1 − step over ÷ radius), on a straight path; half a turn where it has no step over',
        source: publishedIn('engagement of a milling cutter (geometry of a circle)'),
        value: (use) => ({ kind: 'angle', value: engaged(use, cutter), unit: 'deg', decimals: 0 }),
      }),
      derivation({
        id: `cutter.${cutter.id}.chip`,
        label: `${cutter.id}: its thickest chip`,
        formula: 'chip load × sine of the engagement; the whole chip load from a quarter turn on',
        source: publishedIn('thinning of the chip at a narrow step over (textbook of milling)'),
        value: (use) => {
          const load = use.fact(`cutter.${cutter.id}.chip-load`);
          return {
            ...load,
            value: Math.round(load.value * chipShare(use.fact(`cutter.${cutter.id}.engagement`).value)),
          };
        },
      }),
      derivation({
        id: `cutter.${cutter.id}.chip-band`,
        label: `${cutter.id}: band its chip should lie in`,
        formula:
          'the plant’s own where its row has one; else, of cutters that go sideways, the published row by diameter',
        source: publishedIn(`${CHIP_LOAD_SOURCE} (certainty: ${CHIP_LOAD_CERTAINTY})`),
        value: (use) => band(use, cutter),
      }),
    ]);
export default rule;

const thin = (nm: number): Length => ({ kind: 'length', value: Math.round(nm), unit: 'mm', decimals: 3 });

function engaged(use: Use, { row: { diameter, 'step-over': over } }: Cutter): number {
  const across = use(diameter).value;
  return over === undefined ? 180 : engagement(use(over).value, across);
}

function band(use: Use, { row }: Cutter): Length | undefined {
  if (row['chip-load']) return use(row['chip-load']);
  if (use(row.kind) === 'drill') return undefined;
  const published = chipLoadBandIn(use(row.diameter).value / NM_PER_INCH);
  if (!published) return undefined;
  const [low, high] = [published.low * NM_PER_INCH, published.high * NM_PER_INCH].map(Math.round) as [number, number];
  return { ...thin((low + high) / 2), low, high };
}
