/** What may still be done with a piece that is out: a line of each way on page 1, and all of it in a table. */
import type { Rework } from '../facts/reworks.ts';
import { REWORK_THINGS, reworkOf, reworksAt } from '../facts/reworks.ts';
import { row } from '../facts/row.ts';
import type { Arg, Line, Table } from './card.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

/** For page 1: what may be saved and how far out it may be. How, and who decides, stands in the table. */
export function reworkLines(desk: Desk): readonly Line[] {
  const items = reworksAt(desk.subject, desk.use, desk.station).map((one): Arg => {
    const most = farthest(desk, one, desk.station);
    return most ? say('rework.short', { out: outOf(desk, one), most }) : outOf(desk, one);
  });
  return items.length === 0 ? [] : [say('rework.page-one', { ways: { kind: 'series', items } })];
}

const outOf = (desk: Desk, { row: { out } }: Rework): Line => say(`rework.out.${desk.use(out)}`);

/** Down to which thickness, of each thing measured there; else how far past the limit. */
function farthest(desk: Desk, { id, row: { beyond } }: Rework, station: string): Arg | undefined {
  const floors = REWORK_THINGS.flatMap((thing): Arg[] => {
    const fact = `${reworkOf(id, station, thing)}.floor` as const;
    if (!desk.has(fact)) return [];
    const floor = desk.figure(fact, { least: true, decimals: 2 });
    return [say('rework.down-to', { thing: say(`rework.thing.${thing}`), floor })];
  });
  if (floors.length > 0) return { kind: 'series', items: floors };
  return beyond && say('rework.beyond', { beyond: desk.figure(beyond, { single: true }) });
}

/** The ways from this station; no table where there is none. */
export function reworkTable(desk: Desk): readonly Table[] {
  const rows = reworksAt(desk.subject, desk.use, desk.station).map((one) => cells(desk, one, [desk.station]));
  return table(rows, []);
}

/** The ways from every station of the route: each once, with all the stations it is open from. */
export function allReworks(desk: Desk): readonly Table[] {
  const at = desk
    .stations()
    .flatMap((station) => reworksAt(desk.subject, desk.use, station).map((one) => ({ one, station })));
  const ids = [...new Set(at.map(({ one }) => one.id))];
  const rows = ids.map((id) => {
    const own = at.filter(({ one }) => one.id === id);
    const stations = own.map(({ station }) => station);
    return [series(stations.map((station) => stationName(desk, station))), ...cells(desk, own[0]!.one, stations)];
  });
  return table(rows, ['found-at']);
}

const series = (items: readonly Arg[]): Arg => ({ kind: 'series', items });

function table(rows: readonly (readonly Arg[])[], before: readonly string[]): readonly Table[] {
  if (rows.length === 0) return [];
  const columns = [...before, 'out', 'most', 'done', 'then', 'under', 'decides'];
  return [{ title: say('rework.table'), columns: columns.map((id) => say(`rework.column.${id}`)), rows }];
}

function cells(desk: Desk, one: Rework, stations: readonly string[]): readonly Arg[] {
  const most = stations.flatMap((station) => farthest(desk, one, station) ?? []);
  // Past its limit by so much is the same everywhere; down to a thickness is each station's own.
  const alike = most[0]?.kind === 'line' ? most.slice(0, 1) : most;
  return [
    outOf(desk, one),
    alike.length > 0 ? series(alike) : say('rework.no-limit'),
    desk.name(one.row.title),
    then(desk, one),
    under(desk, one),
    desk.name(one.row.who),
  ];
}

const stationName = (desk: Desk, id: string): Arg =>
  desk.name(row(desk.subject.plant.stations, id, 'plant.stations').title);

function then(desk: Desk, { row: { then: stations } }: Rework): Arg {
  if (!stations) return say('rework.same-station');
  return { kind: 'series', items: stations.map((station) => stationName(desk, desk.use(station))) };
}

function under(desk: Desk, { row: { under: kinds } }: Rework): Arg {
  if (!kinds) return say('rework.any-finish');
  const { spec, plant } = desk.subject;
  const wanted = kinds.map((kind) => desk.use(kind));
  const finishes = spec.finishes
    .map((finish) => row(plant.finishes, desk.use(finish), 'plant.finishes'))
    .filter(({ kind }) => wanted.includes(desk.use(kind)));
  return { kind: 'series', items: finishes.map(({ title }) => desk.name(title)) };
}
