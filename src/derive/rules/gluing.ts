/** Glue, electrode stops and field time for edges and for the lamination. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import type { Leaf } from '../../facts/leaf.ts';
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import type { PlantSpec } from '../../facts/spec.generated.ts';
import type { Subject } from '../../facts/subject.ts';
import { nominal } from '../../units/arithmetic.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`edge.${Part}.${'seams' | 'stops' | 'pulses'}`, Quantity<'count'>>,
      Record<`edge.${Part}.field`, Quantity<'time'>>,
      Record<`edge.${Part}.glue`, Quantity<'mass'>> {
    'lamination.glue': Quantity<'mass'>;
  }
}

type Adhesive = NonNullable<PlantSpec['adhesives']>[string];
type Purpose = 'adhesive' | 'edge-adhesive';

/** The adhesive a line uses for edges or for the lamination. */
export function adhesiveOf(subject: Subject, use: Use, purpose: Purpose): Adhesive {
  return row(subject.plant.adhesives, adhesiveName(subject, use, purpose), 'plant.adhesives');
}

function adhesiveName({ spec, plant }: Subject, use: Use, purpose: Purpose): string {
  const line = use(spec.line);
  return use(wanted(row(plant.lines, line, 'plant.lines')[purpose], `plant.lines.${line}.${purpose}`));
}

const count = (value: number): Quantity<'count'> => ({ kind: 'count', value, unit: '', decimals: 0 });
const mass = (kg: number): Quantity<'mass'> => ({ kind: 'mass', value: kg, unit: 'g', decimals: 0 });

const rule: Rule = (subject) => [
  ...partsOf(subject.spec).flatMap((part) => edge(subject, part)),
  ...(subject.spec.timber.cap
    ? [
        derivation({
          id: 'lamination.glue',
          label: 'glue on the joint of cap and back',
          formula: 'spread × area of the joint, chambers left out',
          source: byDefinition,
          value: (use) => mass(use(adhesiveOf(subject, use, 'adhesive').spread).value * use.fact('joint.area').value),
        }),
      ]
    : []),
];
export default rule;

function edge(subject: Subject, part: Part) {
  const adhesive = (use: Use) => adhesiveOf(subject, use, 'edge-adhesive');
  const asked = <T>(use: Use, key: string, of: (row: Adhesive) => Leaf<T> | undefined): T =>
    use(wanted(of(adhesive(use)), `plant.adhesives.${adhesiveName(subject, use, 'edge-adhesive')}.${key}`));
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
      value: (use) => count(Math.ceil(use.fact('blank.length').value / asked(use, 'stop', (row) => row.stop).value)),
    }),
    derivation({
      id: `edge.${part}.pulses`,
      label: `${part}: pulses at a stop`,
      formula: 'pulses a face × faces',
      source: practice('three pulses of three seconds on each face; common practice, no source'),
      value: (use) =>
        count(asked(use, 'pulses', (row) => row.pulses).value * asked(use, 'faces', (row) => row.faces).value),
    }),
    derivation({
      id: `edge.${part}.field`,
      label: `${part}: time under the field for a seam`,
      formula: 'stops × pulses at a stop × length of a pulse',
      source: practice('three pulses of three seconds on each face; common practice, no source'),
      value: (use) => {
        const pulses = use.fact(`edge.${part}.stops`).value * use.fact(`edge.${part}.pulses`).value;
        const pulse = asked(use, 'pulse', (row) => row.pulse);
        return { ...nominal(pulse), value: pulses * pulse.value, decimals: 0 };
      },
    }),
    derivation({
      id: `edge.${part}.glue`,
      label: `${part}: glue on a seam`,
      formula: 'spread × length of the blank × rough thickness, at its thickest',
      source: byDefinition,
      value: (use) => {
        const rough = use.fact(`thickness.part.${part}.rough`);
        const areaNm2 = use.fact('blank.length').value * (rough.high ?? rough.value);
        return mass((use(adhesive(use).spread).value * areaNm2) / 1e18);
      },
    }),
  ];
}
