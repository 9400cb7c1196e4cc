/**
 * Chart forms: a sheet for everything a station measures against limits, to be filled in sample by sample. Where enough was
 * read before, it shows what came of it and the limits of its control charts. No card: readings change it, and it has no code.
 */
import type { Facts } from '../facts/facts.ts';
import type { Subject } from '../facts/subject.ts';
import { present, wanted } from '../facts/row.ts';
import type { Length, Quantity } from '../units/quantity.ts';
import type { Card, ChartLines, ChartSheet } from './card.ts';
import { figureOf } from './figures.ts';
import { say } from './station.ts';

/** The sheets of one card, in the order of its checks; none where the plant says nothing of samples. */
export function chartSheets(card: Card, subject: Subject, facts: Facts): ChartSheet[] {
  const capability = present(subject.plant.plant)?.capability;
  if (!capability) return [];
  const seen = new Set<string>();
  return card.checks.flatMap(({ what, limits, gauge, often }) => {
    if (!limits || seen.has(limits.fact)) return [];
    seen.add(limits.fact);
    const made = facts.read((use) => ({
      size: use(wanted(capability.sample, 'plant.plant.capability.sample')).value,
      ...foundOf(limits.fact, facts),
    }));
    if (!made.ok) return [];
    const { key, model, station, handLine } = card;
    const hand = handLine ? { handLine } : {};
    return [{ key, model, station, ...hand, what, fact: limits.fact, limits, gauge, often, ...made.value }];
  });
}

function foundOf(fact: string, facts: Facts): Pick<ChartSheet, 'found' | 'means' | 'ranges'> {
  const id = `measured.${fact}` as const;
  const reading = facts.has(id) ? facts.read((use) => use.fact(id)) : undefined;
  if (!reading?.ok) return { found: [] };
  const { count, mean, deviation, capability, charts } = reading.value;
  const of = (q: Quantity) => figureOf(id, q, q.decimals, { single: true });
  const lines = (band: { low: Length; centre: Length; high: Length }): ChartLines =>
    [band.low, band.centre, band.high].map((q) => ({ at: q.value, figure: of(q) }));
  return {
    found: [
      deviation
        ? say('chart.found', { count: of(count), mean: of(mean), deviation: of(deviation) })
        : say('chart.found-one', { mean: of(mean) }),
      capability ? say('chart.capability', { cp: of(capability.cp), cpk: of(capability.cpk) }) : say('chart.too-few'),
      ...(charts ? [say('chart.within', { within: of(charts.within), size: of(charts.size) })] : []),
      ...(charts && charts.out.length > 0 ? [say('chart.out')] : []),
    ],
    ...(charts ? { means: lines(charts.means), ranges: lines(charts.ranges) } : {}),
  };
}
