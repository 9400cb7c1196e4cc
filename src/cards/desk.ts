/** The desk a station works at while its card is made: facts to figures, and a record of what the card shows. */
import type { Reading } from '../facts/card-seen.ts';
import type { Facts, Use } from '../facts/facts.ts';
import type { FlowStation } from '../facts/flow.ts';
import type { Leaf } from '../facts/leaf.ts';
import { partsOf } from '../facts/parts.ts';
import { namesOf, row, wanted } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import { findUnit } from '../units/unit.ts';
import type { CardKey, Limits, Name } from './card.ts';
import type { Gauge, Ref } from './figures.ts';
import { figure, limits, valueOf } from './figures.ts';
import type { Desk, RouteOf, Station, StationRow } from './station.ts';
import { all } from './stations/all.generated.ts';

/** The plant's route, less what this model has no need of; after it the stations that stand aside. */
export function stationsOf(subject: Subject, facts: Facts): Station[] {
  const rows = namesOf(subject.plant.stations);
  const passed = facts.read((use) => onRoute(subject, readRoute(subject.spec, facts), use));
  return [...(passed.ok ? passed.value : []), ...all.filter(({ aside, id }) => aside && rows.includes(id))];
}

/** Every station there can be on the way of a body, in whatever order the plant has them. */
export function flowOf({ spec }: Pick<Subject, 'spec'>, facts: Facts): readonly FlowStation[] {
  const route = readRoute(spec, facts);
  return all
    .filter(({ aside }) => !aside)
    .map(({ id, on, after, machines = [] }) => ({ id, after, machines, passes: on(route) }));
}

const onRoute = ({ plant }: Subject, route: RouteOf, use: Use): Station[] =>
  wanted(plant.route, 'plant.route').flatMap((leaf) => {
    const id = use(leaf);
    return all.filter((station) => station.id === id && station.on(route));
  });

function readRoute(spec: Subject['spec'], facts: Facts): RouteOf {
  const parts = partsOf(spec);
  const pieces = facts.read((use) =>
    Object.fromEntries(parts.map((part) => [part, use.fact(`blank.${part}.pieces`).value])),
  );
  return { parts, setups: namesOf(spec.setups), pieces: pieces.ok ? pieces.value : {} };
}

export function keyOf(station: string, { spec, hand }: Subject, use: Use): CardKey {
  return { model: use(spec.model), hand, finishes: spec.finishes.map((finish) => use(finish)), station };
}

/** What a card asks of its gauges, written down while it is made. */
export interface Noted {
  readonly readings: Reading[];
  /** Facts that name its gauges. */
  readonly gauges: Set<string>;
  /** Facts it prints as one number, without limits. */
  readonly figures: Set<string>;
}

export const blankRecord = (): Noted => ({ readings: [], gauges: new Set(), figures: new Set() });

export function deskAt(station: Station, subject: Subject, facts: Facts, use: Use, record: Noted): Desk {
  const { plant, spec } = subject;
  const at: StationRow = row(plant.stations, station.id, 'plant.stations');
  const name = (leaf: Leaf<string>): Name => ({ kind: 'name', text: use(leaf), fact: leaf.id });
  const gaugeLeaf = (role: string) => wanted(at.gauges?.[role], `plant.stations.${station.id}.gauges.${role}`);
  const gauge = (role: string): Gauge => {
    const leaf = gaugeLeaf(role);
    const { title, unit, resolution, uncertainty } = row(plant.gauges, use(leaf), 'plant.gauges');
    record.gauges.add(leaf.id);
    const step = use(resolution);
    const off = uncertainty && use(uncertainty);
    return {
      name: name(title),
      unit: findUnit(use(unit))?.id ?? use(unit),
      step: step.value,
      // Of another kind than its step it says nothing: a check says so.
      ...(off?.kind === step.kind ? { uncertainty: off.value } : {}),
    };
  };
  const band = at['guard-band'] ?? plant.plant?.['guard-band'];
  const read = (ref: Ref, role: string, accepted: boolean): Limits => {
    const guarded = accepted && band && use(band) === 'full' ? band.id : undefined;
    const shown = limits(use, ref, gauge(role));
    const reading = {
      fact: valueOf(use, ref).id,
      gauge: gaugeLeaf(role).id,
      ...(guarded === undefined ? {} : { guarded }),
    };
    if (!shown.ok) {
      record.readings.push({ ...reading, counts: 0, why: shown.why });
      return unreadable(use, ref);
    }
    const { counts, proven } = shown;
    record.readings.push({ ...reading, counts, ...(proven === undefined ? {} : { provable: proven !== 'nothing' }) });
    const acceptance = guarded === undefined || proven === 'nothing' ? undefined : proven;
    return { ...shown.limits, ...(acceptance ? { acceptance } : {}) };
  };
  const route = readRoute(spec, facts);
  return {
    subject,
    use,
    has: facts.has,
    route,
    station: station.id,
    stations: () => onRoute(subject, route, use).map(({ id }) => id),
    row: at,
    name,
    gauge,
    machine: () =>
      name(
        row(plant.machines, use(wanted(at.machine, `plant.stations.${station.id}.machine`)), 'plant.machines').title,
      ),
    figure: (ref, style) => {
      const shown = figure(use, ref, style);
      record.figures.add(shown.fact);
      return shown;
    },
    limits: (ref, role) => read(ref, role, true),
    span: (ref, role) => read(ref, role, false),
  };
}

/** Stands in a card that will not be printed: a check says so. */
const unreadable = (use: Use, ref: Ref): Limits => ({
  kind: 'limits',
  fact: valueOf(use, ref).id,
  low: '',
  high: '',
  target: '',
  unit: '',
});
