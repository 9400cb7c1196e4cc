/** Gauges as the checks of cards look at them: the row behind each, what it is read against, and what would do instead. */
import type { Reading } from '../facts/card-seen.ts';
import type { Facts, Use } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import { namesOf, row } from '../facts/row.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { GaugeClass, GaugeRule } from '../reference/gauges.ts';
import { gaugeRules } from '../reference/gauges.ts';
import type { Quantity } from '../units/quantity.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';
import { say } from './say.ts';

type GaugeRow = NonNullable<PlantSpec['gauges']>[string];

/** A gauge of the plant with what its row says. */
export interface GaugeSeen {
  readonly name: string;
  readonly row: GaugeRow;
  readonly reads: string;
  readonly rule: GaugeRule;
  readonly unit: string;
  readonly step: Quantity;
  /** U95; absent where none is given, or one that is of another kind than its step. */
  readonly off?: Quantity;
  readonly reach?: Quantity;
}

/** A number with limits that it reads. */
export interface ReadAgainst {
  readonly reading: Reading;
  readonly q: Quantity;
  /** Upper less lower limit, base unit. */
  readonly span: number;
}

/** A gauge where a station names it, and all it is read against on the card. */
export interface GaugeAt {
  /** Fact that names it. */
  readonly at: string;
  readonly station: string;
  readonly gauge: GaugeSeen;
  readonly against: readonly ReadAgainst[];
}

const CLASS_BY_KIND: Readonly<Record<string, GaugeClass>> = {
  temperature: 'meter',
  humidity: 'meter',
  moisture: 'meter',
  pressure: 'pressure',
  time: 'timer',
  mass: 'scale',
  pass: 'go-no-go',
};

function gaugeOf(table: PlantSpec['gauges'], name: string, use: Use): GaugeSeen {
  const found = row(table, name, 'plant.gauges');
  const reads = use(found.reads);
  const kind = CLASS_BY_KIND[reads] ?? (found.class ? use(found.class) : 'measure');
  const step = use(found.resolution);
  const off = found.uncertainty && use(found.uncertainty);
  return {
    name,
    row: found,
    reads,
    rule: gaugeRules[kind],
    unit: use(found.unit),
    step,
    ...(off && off.kind === step.kind ? { off } : {}),
    ...(found.reach ? { reach: use(found.reach) } : {}),
  };
}

/** Every gauge of every card, each station's own; what lacks something is another finding's business. */
export function gaugesSeen({ subject: { plant }, facts, seen }: Bench): readonly GaugeAt[] {
  return seen.flatMap(({ station, gauges, readings }) =>
    gauges.flatMap((at) => {
      const named = facts.fact(at)?.state;
      const gauge = named?.ok && look(facts, (use) => gaugeOf(plant.gauges, String(named.value), use));
      if (!gauge) return [];
      const mine = readings.filter((reading) => reading.gauge === at && reading.why === undefined);
      return [{ at, station, gauge, against: unlike(mine.flatMap((reading) => readAgainst(facts, reading))) }];
    }),
  );
}

function readAgainst(facts: Facts, reading: Reading): ReadAgainst[] {
  const state = facts.fact(reading.fact)?.state;
  const q = state?.ok ? (state.value as Quantity) : undefined;
  if (q?.low === undefined || q.high === undefined) return [];
  return [{ reading, q, span: q.high - q.low }];
}

/** A fact shown twice on a card is one; the narrowest limits first. */
function unlike(all: readonly ReadAgainst[]): ReadAgainst[] {
  return all
    .filter(({ reading }, i) => all.findIndex((other) => other.reading.fact === reading.fact) === i)
    .toSorted((a, b) => a.span - b.span);
}

/** Doubles miss a tenth of a share by a hair. */
const HAIR = 1 + 1e-9;

export const tooCoarse = ({ step, rule }: GaugeSeen, span: number): boolean =>
  rule.steps !== undefined && step.value * rule.steps > span * HAIR;

export const tooUncertain = ({ off, rule }: GaugeSeen, span: number): boolean =>
  rule.ratio !== undefined && off !== undefined && 2 * off.value * rule.ratio > span * HAIR;

/** A number in the unit of the gauge's step, one decimal finer than it reads: a difference, never a reading. */
export const sayOf = ({ step }: GaugeSeen, value: number): string =>
  say({ unit: step.unit, decimals: step.decimals + 1 }, value);

/** What reads worst of these, and how many more there are of them. */
export const andMore = (others: number): string =>
  others === 0
    ? ''
    : others === 1
      ? ' The same is true of one more number on this card.'
      : ` The same is true of ${others} more numbers on this card.`;

/** Whether a row may be used on that day. */
export function inUse(facts: Facts, { retired, calibrated, 'calibration-due': due }: GaugeRow, on: string): boolean {
  const day = (leaf: Leaf<string> | undefined): string | undefined => leaf && look(facts, (use) => use(leaf));
  return !((day(retired) ?? '9') <= on || (day(due) ?? '9') < on || (day(calibrated) ?? '0') > on);
}

/** The gauge of the plant that would do for all of it by its numbers, nearest in what it reads and how finely. */
export function instead(bench: Bench, { gauge, against }: GaugeAt): GaugeSeen | undefined {
  const { plant } = bench.subject;
  return namesOf(plant.gauges)
    .filter((name) => name !== gauge.name)
    .flatMap((name) => look(bench.facts, (use) => gaugeOf(plant.gauges, name, use)) ?? [])
    .filter((other) => other.reads === gauge.reads && inUse(bench.facts, other.row, bench.on))
    .filter((other) => against.every((one) => wouldDo(other, one)))
    .toSorted((a, b) => Number(a.unit !== gauge.unit) - Number(b.unit !== gauge.unit) || nearness(gauge, a, b))[0];
}

const nearness = ({ step }: GaugeSeen, a: GaugeSeen, b: GaugeSeen): number =>
  Math.abs(Math.log(a.step.value / step.value)) - Math.abs(Math.log(b.step.value / step.value));

function wouldDo(other: GaugeSeen, { q, span }: ReadAgainst): boolean {
  // A ratio nobody can compute is no recommendation.
  if (other.rule.ratio !== undefined && other.off === undefined) return false;
  if (other.reach && (q.high ?? q.value) > other.reach.value) return false;
  return !tooCoarse(other, span) && !tooUncertain(other, span);
}

/** `The plant has another that would do …`, or nothing where no gauge of the plant would do. */
export function sayInstead(bench: Bench, one: GaugeAt): string | undefined {
  const other = instead(bench, one);
  if (!other) return undefined;
  const title = look(bench.facts, (use) => use(other.row.title));
  return `The plant has another that would do by its numbers: "${other.name}" (${title}).`;
}
