/** The conditioning store: what its air brings wood to, and the air that would hold the wood where it is wanted. */
import type { Use } from '../../facts/facts.ts';
import { practice, publishedIn } from '../../facts/facts.ts';
import { Leaf } from '../../facts/leaf.ts';
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { wanted } from '../../facts/row.ts';
import { gaugeAt, machineNumber } from '../../facts/station-machine.ts';
import type { Subject } from '../../facts/subject.ts';
import { EQUILIBRIUM_SOURCE, equilibriumMoisture, humidityFor } from '../../reference/equilibrium.ts';
import type { forms } from '../../reference/equilibrium.ts';
import { METER_PER_STEP, METER_SOURCE, METER_STEP_K } from '../../reference/meters.ts';
import type { Quantity } from '../../units/quantity.ts';
import { unitById } from '../../units/unit.ts';
import { forThickness } from '../by-thickness.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`room.rest.${Part}`, Quantity<'time'>> {
    'room.equilibrium': Quantity<'fraction'>;
    'room.humidity': Quantity<'fraction'>;
    'meter.per-step': Quantity<'fraction'>;
    'meter.step': Quantity<'temperature-difference'>;
    'meter.correction': Quantity<'fraction'>;
  }
}

const STATION = 'conditioning';
const published = publishedIn(EQUILIBRIUM_SOURCE);

const rule: Rule = (subject) => {
  const { plant } = subject;
  const temperature = (use: Use) => use(machineNumber(plant, use, STATION, 'temperature'));
  return [
    derivation({
      id: 'room.equilibrium',
      label: 'moisture the store brings wood to',
      formula:
        'two-hydrate equation of temperature and humidity; limits: the least and the most anywhere within the limits of both',
      source: published,
      value: (use) => {
        const air = use(machineNumber(plant, use, STATION, 'humidity'));
        const t = temperature(use);
        const at = (degrees: number, humidity: number) => equilibriumMoisture(formOf(t), degrees, humidity);
        return {
          ...percent(at(degreesOf(t, t.value), air.value), 1),
          low: Math.min(...swing(t).map((degrees) => at(degrees, air.low ?? air.value))),
          high: Math.max(...swing(t).map((degrees) => at(degrees, air.high ?? air.value))),
        };
      },
    }),
    derivation({
      id: 'room.humidity',
      label: 'humidity that holds the wood within its band',
      formula:
        'the two-hydrate equation solved for humidity: what keeps the wood within the band at any temperature within its limits; the middle at the set temperature',
      source: published,
      value: (use) => {
        const band = use(machineNumber(plant, use, STATION, 'moisture'));
        const t = temperature(use);
        const at = (degrees: number, moisture: number) => humidityFor(formOf(t), degrees, moisture);
        return {
          ...percent(at(degreesOf(t, t.value), band.value), 0),
          low: Math.max(...swing(t).map((degrees) => at(degrees, band.low ?? band.value))),
          high: Math.min(...swing(t).map((degrees) => at(degrees, band.high ?? band.value))),
        };
      },
    }),
    ...partsOf(subject.spec).map((part) => rest(subject, part)),
    ...meter(subject),
  ];
};
export default rule;

function rest({ plant }: Subject, part: Part) {
  return derivation({
    id: `room.rest.${part}`,
    label: `${part}: days in the store, at least`,
    formula: 'the plant’s row for its rough thickness',
    source: practice('a rule of the plant; common practice, no source'),
    value: (use) => {
      const rough = use.fact(`thickness.part.${part}.rough`);
      const days = machineNumber(plant, use, STATION, 'days');
      return use(forThickness(use, days, rough.high ?? rough.value, 'days of the store').rest);
    },
  });
}

/** Only a meter that says what it measures and at which temperature. */
function meter({ plant }: Subject) {
  const gauge = (use: Use) => gaugeAt(plant, use, STATION, 'moisture');
  const constant = <K extends 'fraction' | 'temperature-difference'>(id: string, q: Quantity<K>) =>
    new Leaf(id, '', { kind: 'published', source: METER_SOURCE, certainty: 'seen' }, q);
  const perStep = constant('published.meter.per-step', percent(METER_PER_STEP, 1));
  const step = constant('published.meter.step', {
    kind: 'temperature-difference',
    value: METER_STEP_K,
    unit: 'Δ°C',
    decimals: 1,
  });
  return [
    derivation({
      id: 'meter.per-step',
      label: 'reading of a moisture meter off by',
      formula: 'for each step of temperature the wood is off what the meter was calibrated at',
      source: publishedIn(METER_SOURCE),
      value: (use) => use(perStep),
    }),
    derivation({
      id: 'meter.step',
      label: 'step of temperature for a moisture meter',
      formula: 'as published: 10 °F',
      source: publishedIn(METER_SOURCE),
      value: (use) => use(step),
    }),
    derivation({
      id: 'meter.correction',
      label: 'to add to a reading in the store',
      formula: '0.5 % × (temperature it is calibrated at − temperature of the store) ÷ 5.6 °C',
      source: publishedIn(METER_SOURCE),
      value: (use) => {
        const at = use(wanted(gauge(use)['calibrated-at'], 'plant.gauges: the meter’s temperature'));
        const room = use(machineNumber(plant, use, STATION, 'temperature'));
        const steps = (at.value - room.value) / use.fact('meter.step').value;
        return percent(steps * use.fact('meter.per-step').value, 1);
      },
    }),
  ];
}

const percent = (value: number, decimals: number): Quantity<'fraction'> => ({
  kind: 'fraction',
  value,
  unit: '%',
  decimals,
});

/** The published form for the degrees the plant writes its temperature in. */
const formOf = (t: Quantity<'temperature'>): keyof typeof forms => (t.unit === '°F' ? 'fahrenheit' : 'celsius');
const degreesOf = (t: Quantity<'temperature'>, kelvin: number): number =>
  unitById(formOf(t) === 'fahrenheit' ? '°F' : '°C').fromBase(kelvin);

const STEPS = 8;

/** Degrees from the coolest to the warmest, in steps: below 10 °C the equation turns round, so the ends alone do not tell. */
function swing(t: Quantity<'temperature'>): readonly number[] {
  const { value, low = value, high = value } = t;
  return Array.from({ length: STEPS + 1 }, (_, i) => degreesOf(t, low + ((high - low) * i) / STEPS));
}
