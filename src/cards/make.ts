/** The fourth phase: the cards of one hand of a sound model, in route order. */
import type { Facts, Use } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import { partsOf } from '../facts/parts.ts';
import { namesOf, row, wanted } from '../facts/row.ts';
import { placeOf } from '../facts/placed.ts';
import type { Subject } from '../facts/subject.ts';
import type { Finding, Place } from '../findings/finding.ts';
import { formatNumber, withUnit } from '../units/format.ts';
import type { Quantity } from '../units/quantity.ts';
import { findUnit } from '../units/unit.ts';
import type { Card, CardKey, Limits, MadeCard, Name, StationSheet } from './card.ts';
import { contentCode } from './code.ts';
import type { Gauge, Ref } from './figures.ts';
import { figure, limits, valueOf } from './figures.ts';
import type { Desk, RouteOf, Station, StationRow } from './station.ts';
import { say } from './station.ts';
import { all } from './stations/all.generated.ts';

/** Fewer readings than this inside the limits, and the gauge says nothing about a piece; common practice, no source. */
const LEAST_COUNTS = 4;

export interface Made {
  readonly cards: readonly MadeCard[];
  readonly findings: readonly Finding[];
}

export function makeCards(subject: Subject, facts: Facts): Made {
  const findings: Finding[] = [];
  const cards = stationsOf(subject, facts).flatMap((station) => {
    const card = makeCard(station, subject, facts, findings);
    return card ? [{ card, code: contentCode(card) }] : [];
  });
  return { cards, findings };
}

/** The plant's route, less what this model has no need of. */
function stationsOf({ spec, plant }: Subject, facts: Facts): Station[] {
  const route = readRoute(spec, facts);
  const order = facts.read((use) => plant.route!.map((station) => use(station)));
  return (order.ok ? order.value : []).flatMap((id) => all.filter((station) => station.id === id && station.on(route)));
}

function readRoute(spec: Subject['spec'], facts: Facts): RouteOf {
  const parts = partsOf(spec);
  const pieces = facts.read((use) =>
    Object.fromEntries(parts.map((part) => [part, use.fact(`blank.${part}.pieces`).value])),
  );
  return { parts, setups: namesOf(spec.setups), pieces: pieces.ok ? pieces.value : {} };
}

function makeCard(station: Station, subject: Subject, facts: Facts, findings: Finding[]): Card | undefined {
  const { spec, plant } = subject;
  const reading = facts.read((use): Card => {
    const desk = deskAt(station, subject, facts, use, findings);
    const named = (leaf: Leaf<string>) => desk.name(leaf);
    const { row: at } = desk;
    const note = spec.notes?.[station.id];
    return {
      key: keyOf(station.id, subject, use),
      model: named(spec.title),
      station: named(at.title),
      ...(spec.handed ? { handLine: say(`hand.${subject.hand}`) } : {}),
      finishNames: spec.finishes.map((finish) => named(row(plant.finishes, use(finish), 'plant.finishes').title)),
      decides: named(at.decides),
      notes: [note, at.notice].flatMap((leaf) => (leaf ? [named(leaf)] : [])),
      ...station.card(desk),
    };
  });
  if (reading.ok) return reading.value;
  findings.push(
    problem('card-not-made', placeOf(plant.stations?.[station.id]) ?? placeOf(spec)!, {
      what: `The card of ${station.id} cannot be made: ${reading.missing.join(', ')} is missing.`,
      why: 'A station on the route of this model would be without a card.',
      mend: 'Give what is missing, in the plant or in the model.',
    }),
  );
  return undefined;
}

function keyOf(station: string, { spec, hand }: Subject, use: Use): CardKey {
  return { model: use(spec.model), hand, finishes: spec.finishes.map((finish) => use(finish)), station };
}

function deskAt(station: Station, subject: Subject, facts: Facts, use: Use, findings: Finding[]): Desk {
  const { plant, spec } = subject;
  const at: StationRow = row(plant.stations, station.id, 'plant.stations');
  const name = (leaf: Leaf<string>): Name => ({ kind: 'name', text: use(leaf), fact: leaf.id });
  const gauge = (role: string): Gauge => {
    const id = use(wanted(at.gauges?.[role], `plant.stations.${station.id}.gauges.${role}`));
    const { title, unit, resolution } = row(plant.gauges, id, 'plant.gauges');
    return { name: name(title), unit: findUnit(use(unit))?.id ?? use(unit), step: use(resolution).value };
  };
  return {
    subject,
    use,
    has: facts.has,
    route: readRoute(spec, facts),
    station: station.id,
    row: at,
    name,
    gauge,
    machine: () =>
      name(
        row(plant.machines, use(wanted(at.machine, `plant.stations.${station.id}.machine`)), 'plant.machines').title,
      ),
    figure: (ref, style) => figure(use, ref, style),
    limits: (ref, role) => {
      const read = limits(use, ref, gauge(role));
      if (!read.ok || read.counts < LEAST_COUNTS)
        findings.push(unread(subject, station, use, ref, role, read.ok ? undefined : read.why));
      return read.ok ? read.limits : unreadable(use, ref);
    },
  };
}

/** Stands in a card that will not be printed: its finding is an error. */
const unreadable = (use: Use, ref: Ref): Limits => ({
  kind: 'limits',
  fact: valueOf(use, ref).id,
  low: '',
  high: '',
  target: '',
  unit: '',
});

function unread(
  { plant }: Subject,
  station: Station,
  use: Use,
  ref: Ref,
  role: string,
  why: string | undefined,
): Finding {
  const { id, q } = valueOf(use, ref);
  const leaf = plant.stations?.[station.id]?.gauges?.[role];
  const place = leaf?.writing.kind === 'plant' ? leaf.writing.place : placeOf(plant.stations?.[station.id])!;
  const gauge = leaf ? use(leaf) : role;
  return problem('limits-no-gauge-reads', place, {
    what: `${gauge} cannot be read against ${id} (${rangeOf(q)}): ${why ?? 'fewer than four of its steps lie inside the limits'}.`,
    why: 'A gauge that shows two or three steps between in and out passes bad pieces and stops good ones.',
    mend: 'Name a finer gauge for this check, or widen the limits.',
  });
}

const rangeOf = (q: Quantity): string =>
  q.low === undefined || q.high === undefined
    ? 'no limits'
    : `${withUnit(formatNumber(q.low, q.unit, q.decimals), q.unit)} to ${withUnit(formatNumber(q.high, q.unit, q.decimals), q.unit)}`;

function problem(id: string, place: Place, text: { what: string; why: string; mend: string }): Finding {
  return { id, severity: 'error', place, ...text, notes: [], about: [] };
}

/** The sheet of each station: a row a model that passes it. */
export function makeSheets(
  plant: Subject['plant'],
  variants: readonly { subject: Subject; facts: Facts }[],
): StationSheet[] {
  const ids = namesOf(plant.stations);
  return all
    .toSorted((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id))
    .flatMap((station) => {
      const rows = variants.flatMap(({ subject, facts }) => sheetRow(station, subject, facts));
      const name = rows[0]?.station;
      return name === undefined
        ? []
        : [
            {
              station: { id: station.id, name },
              columns: station.sheet.columns.map((id) => say(id)),
              rows: rows.map((one) => one.row),
            },
          ];
    });
}

function sheetRow(station: Station, subject: Subject, facts: Facts) {
  if (!stationsOf(subject, facts).includes(station)) return [];
  const reading = facts.read((use) => {
    const desk = deskAt(station, subject, facts, use, []);
    const row = {
      key: keyOf(station.id, subject, use),
      model: desk.name(subject.spec.title),
      cells: station.sheet.cells(desk),
    };
    return { station: desk.name(desk.row.title), row };
  });
  return reading.ok ? [reading.value] : [];
}
