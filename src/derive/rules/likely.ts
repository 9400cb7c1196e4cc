/**
 * What is likely of every distance that set-ups have to hold: three views of one list of causes. At worst; root-sum-square;
 * and by capability, with the spread that was measured where there is one.
 *
 * A cause that was never measured is taken as centred between its limits, and those as three standard deviations away.
 */
import type { CutKind } from '../../facts/cuts.ts';
import { cutsOf } from '../../facts/cuts.ts';
import { publishedIn } from '../../facts/facts.ts';
import type { Use } from '../../facts/facts.ts';
import type { BodyPoint } from '../../facts/parts.ts';
import { pointsOf } from '../../facts/parts.ts';
import { present, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { nominal, rootSumSquare } from '../../units/arithmetic.ts';
import type { Cause, Length, Quantity } from '../../units/quantity.ts';
import { isToleranced } from '../../units/quantity.ts';
import { capabilityOf } from '../capability.ts';
import type { Measured } from '../measured.ts';
import { measuredOf } from '../measured.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

export interface Likely {
  readonly required: Length;
  /** What the set-ups hold at worst. */
  readonly worst: Length;
  readonly rootSumSquare: Length;
  readonly mean: Length;
  readonly deviation: Length;
  /** Absent where nothing varies, and where nothing is required. */
  readonly cpk?: Quantity<'count'>;
  /** What was measured of it, by the facts that were. */
  readonly measured: readonly string[];
}

type Id = `likely.${CutKind}.${string}` | `likely.body.machined.${BodyPoint}`;

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<Id, Likely> {}
}

const source = publishedIn(
  'worst case Σ|s·t|, root-sum-square √Σ(s·t)², capability √Σ(s·σ)² for independent causes: textbook tolerance stack; a cause not measured, σ = t/3: common practice, no source',
);

const rule: Rule = (subject) => {
  if (!present(subject.plant.plant)?.capability) return [];
  return [
    ...cutsOf(subject.spec).map(({ kind, id }) =>
      likely(subject, `likely.${kind}.${id}`, { label: `${kind} ${id}` }, (use) => ({
        required: use.fact(`${kind}.${id}.required`),
        achieved: use.fact(`${kind}.${id}.achieved`),
      })),
    ),
    ...pointsOf(subject.spec, 'machined').map((point) => machined(subject, point)),
  ];
};
export default rule;

/** A thickness is its own measurement, where it was measured: all that goes into it was in the reading. */
function machined(subject: Subject, point: BodyPoint) {
  const own = `thickness.body.machined.${point}` as const;
  return likely(subject, `likely.body.machined.${point}`, { label: `body, machined at the ${point}`, own }, (use) => ({
    required: use.fact(own),
    achieved: use.fact(`${own}.achieved`),
  }));
}

function likely(
  subject: Subject,
  id: Id,
  { label, own = '' }: { readonly label: string; readonly own?: string },
  of: (use: Use) => { readonly required: Length; readonly achieved: Length },
) {
  return derivation({
    id,
    label: `${label}: at worst, by root-sum-square, and by what was measured`,
    formula: 'from the causes of what its set-ups hold; what was measured stands for the causes that were in it',
    source,
    value: (use) => {
      const { required, achieved } = of(use);
      const causes = achieved.causes ?? [];
      const all = measurements(subject, use);
      const self = all.find(({ fact }) => fact === own);
      const { mean, deviation, measured } = self
        ? { mean: self.mean - self.nominal, deviation: self.deviation, measured: [self.fact] }
        : byCapability(causes, all);
      const centre = required.value + mean;
      const ratios = isToleranced(required) ? capabilityOf(required, { mean: centre, deviation }) : undefined;
      const length = (value: number): Length => ({ ...nominal(required), value, decimals: 3 });
      return {
        required,
        worst: achieved,
        rootSumSquare: length(rootSumSquare(causes)),
        mean: length(centre),
        deviation: { ...length(deviation), decimals: 4 },
        ...(ratios ? { cpk: { kind: 'count', value: ratios.cpk, unit: '', decimals: 2 } } : {}),
        measured,
      };
    },
  });
}

/** All that was measured of this body: what stands for the most causes first, what is its own before the plant's. */
function measurements(subject: Subject, use: Use): readonly Measured[] {
  if (subject.readings.size === 0) return [];
  const { readings } = wanted(subject.plant.plant!.capability, 'plant.plant.capability');
  const least = use(readings).value;
  return [...subject.readings.keys()]
    .flatMap((fact) => measuredOf(subject, use, fact, least) ?? [])
    .toSorted((a, b) => b.causes.length - a.causes.length || ofPlant(a) - ofPlant(b));
}

const ofPlant = ({ fact }: Measured): number => (fact.startsWith('plant.') ? 1 : 0);

/** Mean, as a deviation from nominal, and standard deviation of the sum of causes. */
export function byCapability(
  causes: readonly Cause[],
  measurements: readonly Measured[],
): { readonly mean: number; readonly deviation: number; readonly measured: readonly string[] } {
  let left = causes;
  let mean = 0;
  let variance = 0;
  const measured: string[] = [];
  for (const one of measurements) {
    for (;;) {
      const found = standsFor(one, left);
      if (!found) break;
      mean += found.times * (one.mean - one.nominal);
      variance += (found.times * one.deviation) ** 2;
      left = left.filter((cause) => !found.causes.includes(cause));
      measured.push(one.fact);
    }
  }
  for (const { sensitivity, minus, plus } of left) {
    mean += (sensitivity * (plus + minus)) / 2;
    variance += ((sensitivity * (plus - minus)) / 6) ** 2;
  }
  return { mean, deviation: Math.sqrt(variance), measured: [...new Set(measured)] };
}

/**
 * The causes a measurement stands for, where all that was in it is in the sum too, each by the same factor. What was read off
 * a machine's own error stands for any one occasion of it.
 */
function standsFor(
  { causes, fact }: Measured,
  sum: readonly Cause[],
): { readonly times: number; readonly causes: readonly Cause[] } | undefined {
  const own = causes.length === 1 && causes[0]!.cause === fact;
  const matches = causes.map((cause) =>
    sum.find((other) => other.cause === cause.cause || (own && other.cause.startsWith(`${cause.cause}#`))),
  );
  const found = matches.flatMap((match) => match ?? []);
  if (causes.length === 0 || found.length < causes.length) return undefined;
  const factors = found.map((match, i) => match.sensitivity / causes[i]!.sensitivity);
  return factors.every((factor) => factor === factors[0]) ? { times: factors[0]!, causes: found } : undefined;
}
