/** Station sheets: a row a model, what really hangs at the sander and the press. */
import type { Facts } from '../facts/facts.ts';
import { namesOf } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import type { StationSheet } from './card.ts';
import { blankRecord, deskAt, keyOf, stationsOf } from './desk.ts';
import type { Station } from './station.ts';
import { say } from './station.ts';
import { all } from './stations/all.generated.ts';

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
    const desk = deskAt(station, subject, facts, use, blankRecord());
    const row = {
      key: keyOf(station.id, subject, use),
      model: desk.name(subject.spec.title),
      cells: station.sheet.cells(desk),
    };
    return { station: desk.name(desk.row.title), row };
  });
  return reading.ok ? [reading.value] : [];
}
