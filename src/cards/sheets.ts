/** Station sheets: a row a model, what really hangs at the sander and the press. */
import type { Facts } from '../facts/facts.ts';
import { namesOf } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import type { StationSheet } from './card.ts';
import { blankRecord, deskAt, keyOf, stationsOf } from './desk.ts';
import type { Station } from './station.ts';
import { say } from './station.ts';
import { all } from './stations/all.generated.ts';

interface Variant {
  readonly subject: Subject;
  readonly facts: Facts;
}

/** The sheet of each station: a row a model that passes it. */
export function makeSheets(plant: Subject['plant'], variants: readonly Variant[]): StationSheet[] {
  const ids = namesOf(plant.stations);
  return all
    .toSorted((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id))
    .flatMap((station) => {
      const rows = variants.flatMap((variant) => sheetRow(station, variant, variants));
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

function sheetRow(station: Station, { subject, facts }: Variant, all: readonly Variant[]) {
  if (!stationsOf(subject, facts).includes(station)) return [];
  const deskOf = (variant: Variant) =>
    variant.facts.read((use) => deskAt(station, variant.subject, variant.facts, use, blankRecord()));
  // One hand stands for its model: what is asked of others is the same for both.
  const others = all.filter((other) => other.subject.hand === 'right' && other.subject.spec !== subject.spec);
  const reading = facts.read((use) => {
    const desk = deskAt(station, subject, facts, use, blankRecord());
    const row = {
      key: keyOf(station.id, subject, use),
      model: desk.name(subject.spec.title),
      cells: station.sheet.cells(
        desk,
        others.flatMap((other) => {
          const made = deskOf(other);
          return made.ok ? [made.value] : [];
        }),
      ),
    };
    return { station: desk.name(desk.row.title), row };
  });
  return reading.ok ? [reading.value] : [];
}
