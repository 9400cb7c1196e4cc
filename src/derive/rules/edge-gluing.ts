/** Edges glued under a radio-frequency field: stops of the electrode, pulses, glue, clamps. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { Leaf } from '../../facts/leaf.ts';
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { machineNumber } from '../../facts/station-machine.ts';
import type { Subject } from '../../facts/subject.ts';
import { EDGE_PULSES, EDGE_PULSES_CERTAINTY, EDGE_PULSES_SOURCE } from '../../reference/radio-frequency.ts';
import { nominal } from '../../units/arithmetic.ts';
import type { Quantity } from '../../units/quantity.ts';
import { adhesiveNumber, adhesiveOf } from '../adhesive.ts';
import { forThickness } from '../by-thickness.ts';
import { ramArea } from '../press-load.ts';
import { NM_PER_M } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`edge.${Part}.${'seams' | 'stops' | 'pulses-a-face' | 'faces' | 'pulses'}`, Quantity<'count'>>,
      Record<`edge.${Part}.${'pulse' | 'field'}`, Quantity<'time'>>,
      Record<`edge.${Part}.glue`, Quantity<'mass'>>,
      Record<`edge.${Part}.power`, Quantity<'power-density'>>,
      Record<`edge.${Part}.clamp-force`, Quantity<'force'>>,
      Record<`edge.${Part}.clamp-gauge`, Quantity<'pressure'>> {}
}

const NM2_PER_M2 = 1e18;

const pulsing = practice(EDGE_PULSES_SOURCE);

const count = (value: number): Quantity<'count'> => ({ kind: 'count', value, unit: '', decimals: 0 });

const rule: Rule = (subject) =>
  partsOf(subject.spec).flatMap((part) => [...seam(subject, part), ...field(subject, part), ...clamps(subject, part)]);
export default rule;

function seam(subject: Subject, part: Part) {
  return [
    derivation({
      id: `edge.${part}.seams`,
      label: `${part}: seams`,
      formula: 'pieces − 1',
      source: byDefinition,
      value: (use) => count(use.fact(`blank.${part}.pieces`).value - 1),
    }),
    derivation({
      id: `edge.${part}.stops`,
      label: `${part}: electrode stops along a seam`,
      formula: 'length of the blank ÷ distance between stops, rounded up',
      source: practice('electrodes side by side along the seam; common practice, no source'),
      value: (use) =>
        count(
          Math.ceil(use.fact('blank.length').value / use(adhesiveNumber(subject, use, 'edge-adhesive', 'stop')).value),
        ),
    }),
    derivation({
      id: `edge.${part}.glue`,
      label: `${part}: glue on a seam`,
      formula: 'spread × length of the blank × rough thickness, at its thickest',
      source: byDefinition,
      value: (use) => {
        const spread = use(adhesiveOf(subject, use, 'edge-adhesive').spread).value;
        return { kind: 'mass', value: spread * edgeAreaM2(use, part).most, unit: 'g', decimals: 0 };
      },
    }),
  ];
}

/** Glued area of a seam, m²: with the rough board at its thinnest and at its thickest. */
function edgeAreaM2(use: Use, part: Part): { readonly least: number; readonly most: number } {
  const { value, low = value, high = value } = use.fact(`thickness.part.${part}.rough`);
  const length = use.fact('blank.length').value;
  return { least: (length * low) / NM2_PER_M2, most: (length * high) / NM2_PER_M2 };
}

function field(subject: Subject, part: Part) {
  const pulses = (use: Use) => pulsesOf(subject, use, part);
  return [
    derivation({
      id: `edge.${part}.pulses-a-face`,
      label: `${part}: pulses at a stop, each face`,
      formula: 'the adhesive’s row for the rough thickness at its thickest, else three',
      source: pulsing,
      value: (use) => use(pulses(use).pulses),
    }),
    derivation({
      id: `edge.${part}.pulse`,
      label: `${part}: length of a pulse`,
      formula: 'the adhesive’s row for the rough thickness at its thickest, else three seconds',
      source: pulsing,
      value: (use) => use(pulses(use).pulse),
    }),
    derivation({
      id: `edge.${part}.faces`,
      label: `${part}: faces pulsed`,
      formula: 'the adhesive’s row for the rough thickness at its thickest, else both',
      source: pulsing,
      value: (use) => use(pulses(use).faces),
    }),
    derivation({
      id: `edge.${part}.pulses`,
      label: `${part}: pulses at a stop`,
      formula: 'pulses a face × faces',
      source: pulsing,
      value: (use) => count(use.fact(`edge.${part}.pulses-a-face`).value * use.fact(`edge.${part}.faces`).value),
    }),
    derivation({
      id: `edge.${part}.field`,
      label: `${part}: time under the field for a seam`,
      formula: 'stops × pulses at a stop × length of a pulse',
      source: pulsing,
      value: (use) => {
        const all = use.fact(`edge.${part}.stops`).value * use.fact(`edge.${part}.pulses`).value;
        const pulse = use.fact(`edge.${part}.pulse`);
        return { ...nominal(pulse), value: all * pulse.value, decimals: 0 };
      },
    }),
    derivation({
      id: `edge.${part}.power`,
      label: `${part}: power of the field on the glued area of a stop`,
      formula: 'power of the machine ÷ (distance between stops × rough thickness at its thinnest)',
      source: practice('a plausibility; the machine’s manual comes first'),
      value: (use) => {
        const { value, low = value } = use.fact(`thickness.part.${part}.rough`);
        const stop = use(adhesiveNumber(subject, use, 'edge-adhesive', 'stop')).value;
        const watts = use(machineNumber(subject.plant, use, 'edge-gluing', 'power')).value;
        return { kind: 'power-density', value: watts / ((stop * low) / NM2_PER_M2), unit: 'W/cm²', decimals: 1 };
      },
    }),
  ];
}

/** The plant's row for the thickness, or what is common practice where the adhesive has no rows. */
function pulsesOf(subject: Subject, use: Use, part: Part) {
  const rows = adhesiveOf(subject, use, 'edge-adhesive').field;
  if (!rows) return COMMON;
  const rough = use.fact(`thickness.part.${part}.rough`);
  return forThickness(use, rows, rough.high ?? rough.value, 'pulses of the edge adhesive');
}

const common = <K extends 'count' | 'time'>(name: string, text: string, q: Quantity<K>): Leaf<Quantity<K>> =>
  new Leaf(
    `published.edge.${name}`,
    text,
    { kind: 'published', source: EDGE_PULSES_SOURCE, certainty: EDGE_PULSES_CERTAINTY },
    q,
  );

const COMMON = {
  pulses: common('pulses', `${EDGE_PULSES.pulses}`, count(EDGE_PULSES.pulses)),
  pulse: common('pulse', `${EDGE_PULSES.pulseS} s`, {
    kind: 'time',
    value: EDGE_PULSES.pulseS,
    unit: 's',
    decimals: 0,
  }),
  faces: common('faces', `${EDGE_PULSES.faces}`, count(EDGE_PULSES.faces)),
};

function clamps(subject: Subject, part: Part) {
  const machine = (use: Use, key: 'clamps' | 'clamp-bore'): number =>
    use(machineNumber(subject.plant, use, 'edge-gluing', key) as Leaf<Quantity>).value;
  return [
    derivation({
      id: `edge.${part}.clamp-force`,
      label: `${part}: force of the side clamps`,
      formula:
        'pressure on the edges × length of the blank × rough thickness; its least at the thickest board, its most at the thinnest',
      source: byDefinition,
      value: (use) => {
        const pressure = use(adhesiveNumber(subject, use, 'edge-adhesive', 'edge-pressure'));
        const { least, most } = edgeAreaM2(use, part);
        return {
          kind: 'force',
          value: (pressure.value * (least + most)) / 2,
          low: (pressure.low ?? pressure.value) * most,
          high: (pressure.high ?? pressure.value) * least,
          unit: 'kN',
          decimals: 1,
        };
      },
    }),
    derivation({
      id: `edge.${part}.clamp-gauge`,
      label: `${part}: air of the side clamps`,
      formula: 'force ÷ (cylinders × π × bore² ÷ 4)',
      source: { kind: 'published', text: 'Pascal’s law; friction left out' },
      value: (use) => {
        const force = use.fact(`edge.${part}.clamp-force`);
        const pa = (newton: number): number =>
          newton / ramArea({ count: machine(use, 'clamps'), bore: machine(use, 'clamp-bore') / NM_PER_M });
        return {
          kind: 'pressure',
          value: pa(force.value),
          low: pa(force.low!),
          high: pa(force.high!),
          unit: 'bar',
          decimals: 1,
        };
      },
    }),
  ];
}
