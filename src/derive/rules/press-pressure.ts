/** Pressure on the joint of cap and back: what the adhesive asks for, cut to what the softer of both woods bears. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { hole, Leaf } from '../../facts/leaf.ts';
import { boardOf, partsOf } from '../../facts/parts.ts';
import { row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import {
  alongDensity,
  ENDS_CERTAINTY,
  ENDS_SOURCE,
  HIGHEST_DENSITY,
  LINE_CERTAINTY,
  LINE_SOURCE,
  LOW_DENSITY,
} from '../../reference/joint-pressure.ts';
import type { PressureEnd } from '../../reference/joint-pressure.ts';
import { nominal } from '../../units/arithmetic.ts';
import type { Quantity } from '../../units/quantity.ts';
import { laminationAdhesive } from '../../facts/press-row.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

type Laminated = 'cap' | 'back';

/** A band, or the two ends that leave none. */
export type Pressable =
  | { readonly ok: true; readonly pressure: Quantity<'pressure'> }
  | { readonly ok: false; readonly asked: Quantity<'pressure'>; readonly borne: Quantity<'pressure'> };

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`press.bears.${Laminated}`, Quantity<'pressure'>> {
    'press.bears': Quantity<'pressure'>;
    'press.pressable': Pressable;
    'press.joint-pressure': Quantity<'pressure'>;
  }
}

const rule: Rule = (subject) => (partsOf(subject.spec).includes('cap') ? facts(subject) : []);
export default rule;

const facts: Rule = (subject) => [
  ...(['cap', 'back'] as const).map((part) =>
    derivation({
      id: `press.bears.${part}`,
      label: `${part}: highest joint pressure its wood bears`,
      formula: 'the plant’s own, else a straight line over density between both ends, level beyond them',
      source: practice(LINE_SOURCE),
      value: (use) => bears(subject, use, part),
    }),
  ),
  derivation({
    id: 'press.bears',
    label: 'highest joint pressure the softer wood bears',
    formula: 'the lesser of cap and back',
    source: byDefinition,
    value: (use) => {
      const [cap, back] = [use.fact('press.bears.cap'), use.fact('press.bears.back')];
      return back.value < cap.value ? back : cap;
    },
  }),
  derivation({
    id: 'press.pressable',
    label: 'pressure the adhesive asks for, as far as the wood bears it',
    formula: 'from the least the adhesive asks for to the lesser of its most and what the softer wood bears',
    source: practice('the softer wood sets the limit; common practice, no source'),
    value: (use) => {
      const leaf = laminationAdhesive(subject, use).need('joint-pressure', (glue) => glue['joint-pressure']);
      return pressable(use(leaf), use.fact('press.bears'));
    },
  }),
  derivation({
    id: 'press.joint-pressure',
    label: 'pressure on the joint',
    formula: 'as the adhesive asks for; cut, with its middle to be set, where the softer wood bears less',
    source: practice('the softer wood sets the limit; common practice, no source'),
    value: (use) => {
      const band = use.fact('press.pressable');
      const { id } = laminationAdhesive(subject, use);
      return band.ok ? band.pressure : use(hole(`${id}.joint-pressure`));
    },
  }),
];

function bears({ spec, plant }: Subject, use: Use, part: Laminated): Quantity<'pressure'> {
  const own = row(plant.species, use(boardOf(spec, part).species), 'plant.species')['joint-pressure'];
  if (own) {
    const given = use(own.value);
    return { ...nominal(given), value: given.low ?? given.value };
  }
  const [low, high] = [end(use, 'low-density', LOW_DENSITY), end(use, 'highest-density', HIGHEST_DENSITY)];
  const along = alongDensity(use.fact(`density.${part}`).value);
  return { ...low, value: low.value + along * (high.value - low.value) };
}

/** One of the published ends, and the density it is read to stand for, on record. */
function end(use: Use, name: string, { density, pressureKPa }: PressureEnd): Quantity<'pressure'> {
  use(
    new Leaf(
      `published.joint-pressure.${name}.density`,
      `${density}`,
      { kind: 'published', source: LINE_SOURCE, certainty: LINE_CERTAINTY },
      { kind: 'density', value: density, unit: 'kg/m³', decimals: 0 } as const,
    ),
  );
  return use(
    new Leaf(
      `published.joint-pressure.${name}`,
      `${pressureKPa}`,
      { kind: 'published', source: ENDS_SOURCE, certainty: ENDS_CERTAINTY },
      { kind: 'pressure', value: pressureKPa * 1000, unit: 'kPa', decimals: 0 } as const,
    ),
  );
}

/** What the adhesive asks for has limits: the schema sees to it. */
export function pressable(asked: Quantity<'pressure'>, borne: Quantity<'pressure'>): Pressable {
  const { low = asked.value, high = asked.value } = asked;
  if (low > borne.value) return { ok: false, asked, borne };
  if (high <= borne.value) return { ok: true, pressure: asked };
  const { kind, unit, decimals } = asked;
  return {
    ok: true,
    pressure: { kind, value: (low + borne.value) / 2, low, high: borne.value, unit, decimals },
  };
}
