/** What readings of a station come to: mean, spread, capability against the limits, and the limits of its control charts. */
import { publishedIn } from '../../facts/facts.ts';
import { present, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { isToleranced } from '../../units/quantity.ts';
import { capabilityOf, chartsOf, spreadOf } from '../capability.ts';
import type { Charts } from '../capability.ts';
import { askedOf, canBeMeasured } from '../measured.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

export interface Summary {
  readonly count: Quantity<'count'>;
  readonly mean: Length;
  /** Absent of a single reading. */
  readonly deviation?: Length;
  /** Absent of fewer readings than the plant believes, of readings all alike, and of what has no limits. */
  readonly capability?: { readonly cp: Quantity<'count'>; readonly cpk: Quantity<'count'> };
  /** Absent of fewer than two samples, of samples of unlike size, and of single readings. */
  readonly charts?: {
    readonly size: Quantity<'count'>;
    readonly means: Band;
    readonly ranges: Band;
    /** Spread from piece to piece within a sample. */
    readonly within: Length;
    /** Names of samples outside, with what is outside. */
    readonly out: readonly { readonly sample: string; readonly by: 'mean' | 'range' }[];
  };
}

export interface Band {
  readonly low: Length;
  readonly centre: Length;
  readonly high: Length;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `measured.${string}`]: Summary;
  }
}

const source = publishedIn(
  'Cp = (U − L)/6σ, Cpk = min(U − x̄, x̄ − L)/3σ; charts x̿ ± A2·R̄, D3·R̄ … D4·R̄: ASTM E2587 and NIST/SEMATECH e-Handbook 6.3.2 (from memory), factors as printed in textbooks',
);

const rule: Rule = (subject) =>
  present(subject.plant.plant)?.capability
    ? [...subject.readings.keys()].filter((fact) => canBeMeasured(subject, fact)).map((fact) => summary(subject, fact))
    : [];
export default rule;

const number = (value: number): Quantity<'count'> => ({ kind: 'count', value, unit: '', decimals: 2 });

function summary(subject: Subject, fact: string) {
  return derivation({
    id: `measured.${fact}`,
    label: `readings of ${fact}`,
    formula: 'mean, standard deviation, Cp and Cpk; limits of charts from the mean range of samples',
    source,
    value: (use): Summary => {
      const capability = wanted(subject.plant.plant!.capability, 'plant.plant.capability');
      const { values, samples, unit, fineness } = use(subject.readings.get(fact)!);
      const { q } = wanted(askedOf(subject, use, fact), fact);
      const count = values.length;
      const spread = spreadOf(values);
      // A decimal more than the gauge shows: a mean of many lies between its steps.
      const length = (value: number): Length => ({ kind: 'length', value, unit, decimals: fineness + 1 });
      const enough = count >= use(capability.readings).value && isToleranced(q);
      const ratios = enough && spread ? capabilityOf(q, spread) : undefined;
      const charts = chartsOf(samples.map((sample) => sample.values));
      return {
        count: { kind: 'count', value: count, unit: '', decimals: 0 },
        mean: length(spread?.mean ?? values[0]!),
        ...(spread ? { deviation: { ...length(spread.deviation), decimals: fineness + 2 } } : {}),
        ...(ratios ? { capability: { cp: number(ratios.cp), cpk: number(ratios.cpk) } } : {}),
        ...(charts ? { charts: named(charts, samples, length) } : {}),
      };
    },
  });
}

function named(
  { means, ranges, deviation, out }: Charts,
  samples: readonly { readonly name: string; readonly values: readonly number[] }[],
  length: (value: number) => Length,
): NonNullable<Summary['charts']> {
  const band = ({ low, centre, high }: Charts['means']): Band => ({
    low: length(low),
    centre: length(centre),
    high: length(high),
  });
  return {
    size: { kind: 'count', value: samples[0]!.values.length, unit: '', decimals: 0 },
    means: band(means),
    ranges: band(ranges),
    within: length(deviation),
    out: out.map(({ sample, by }) => ({ sample: samples[sample]!.name, by })),
  };
}
