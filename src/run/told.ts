/** A run as it is printed and shown: numbers as text, what is empty left out. */
import type { Finding } from '../findings/finding.ts';
import type { BodyLabels } from '../print/labels.ts';
import type { RunTold, SinceTold } from '../print/run-sheet.ts';
import { formatNumber } from '../units/format.ts';
import { bodyNumbers } from './body-numbers.ts';
import { FETCHED } from './set-up.ts';
import { boardFeetText, boardFootTenths } from './picks.ts';
import type { RunLoad } from './pressing.ts';
import type { Run } from './run.ts';

export interface Listed {
  readonly list: string;
  readonly run: Run;
  /** Findings of refused lines: where in the list, from 1, and what is written there. */
  readonly placeOf: (finding: Finding) => { readonly line: number; readonly written: string };
  /** Orders that were begun already, and when. */
  readonly begun: ReadonlyMap<string, string>;
  readonly since: readonly SinceTold[];
  /** Entries of the ledger. */
  readonly entries: number;
}

const hours = (minutes: number): string => formatNumber(minutes * 60, 'h', 1);

export function runTold({ list, run, placeOf, begun, since, entries }: Listed): RunTold {
  const { lines, picks, changeovers, asListed, hours: atStations, floor } = run;
  return {
    on: run.on,
    entries: String(entries),
    list,
    orders: String(lines.length),
    bodies: String(run.bodies),
    refused: run.refused.map((one) => {
      const { line, written } = placeOf(one);
      return { line: String(line), written, what: one.what, mend: one.mend };
    }),
    lines: lines.map(({ order, by, place, setUp, shift, late, upgradedBy, lots }) => ({
      place: String(place),
      order: order.number,
      model: by.title,
      revision: by.revision,
      hand: order.hand,
      finish: by.text(`plant.finishes.${order.finish}.title`) ?? order.finish,
      grade: order.grade,
      quantity: String(order.quantity),
      ...(order.due === undefined ? {} : { due: order.due }),
      ...(shift === undefined ? {} : { shift: String(shift) }),
      ...(late > 0 ? { late: String(late) } : {}),
      ...(upgradedBy === undefined ? {} : { upgradedBy }),
      ...(begun.has(order.number) ? { begun: begun.get(order.number)! } : {}),
      lots: lots.map(({ held, lot }) => `${held} ${lot}`),
      setUp: setUp.map(({ name }) => name),
    })),
    changeovers: { count: String(changeovers.count), hours: hours(changeovers.minutes) },
    asListed: { count: String(asListed.count), hours: hours(asListed.minutes) },
    picks: picks.map((pick) => ({
      ...pick,
      species: pick.speciesTitle,
      stock: pick.stockTitle,
      size: `${pick.width} × ${pick.length}`,
      apiece: String(pick.each),
      bodies: String(pick.bodies),
      pieces: String(pick.pieces),
      boards: String(pick.boards),
    })),
    timber: timberOf(run),
    ready: run.ready.map(({ name, things }) => ({
      name,
      groups: ([...FETCHED.slice(0, 2), 'programs', ...FETCHED.slice(2)] as const).flatMap((of) => {
        const titles = things.filter((thing) => thing.of === of).map(({ title }) => title);
        return titles.length === 0 ? [] : [{ of, titles }];
      }),
    })),
    hours: [
      ...atStations.stations.map(({ station, ...rest }) => ({ id: station, stations: [], ...rest })),
      ...atStations.machines.map(({ machine, ...rest }) => ({ id: machine, ...rest })),
    ].map(({ id, name, stations, work, changeovers: times, changing, share }) => ({
      name,
      stations,
      ...(work === undefined ? {} : { work: hours(work) }),
      changeovers: String(times),
      changing: hours(changing),
      ...(share === undefined ? {} : { share: formatNumber(share, '%', 0) }),
      over: share !== undefined && share > 1,
      most: id === atStations.bottleneck,
    })),
    ...(floor.shift === undefined ? {} : { shift: hours(floor.shift) }),
    firstPieces: firstPiecesOf(run),
    since,
    loads: loadsTold(run),
    notPressed: run.pressing.refused,
    secondUse: run.secondUse.map(({ of, part, serves }) => ({
      model: of.title,
      left: of.hand === 'left',
      part,
      serves: serves.map(({ by, part: as, orders }) => ({
        model: by.title,
        left: by.hand === 'left',
        part: as,
        orders,
      })),
    })),
  };
}

/** Bodies of an order go into the loads in the order of their numbers. */
function loadsTold({ lines, pressing }: Run): RunTold['loads'] {
  const left = new Map(lines.map(({ order }) => [order.number, [...bodyNumbers(order)]]));
  return pressing.loads.map((load) =>
    loadTold(
      load,
      load.stacks.flat().map(({ order }) => left.get(order)!.shift()!),
    ),
  );
}

function loadTold(load: RunLoad, numbers: readonly string[]): RunTold['loads'][number] {
  const { by, stacks, filling, height, reading, force, assembly, open, pressTime, rest, centre, daylight } = load;
  const mm = (m: number) => formatNumber(m * 1e9, 'mm', 0);
  const time = (seconds: number, unit: 'min' | 'h', decimals = 0) => formatNumber(seconds, unit, decimals);
  return {
    model: by.title,
    left: by.hand === 'left',
    orders: numbers,
    bodies: String(stacks.flat().length),
    stacks: stacks.map((stack) => String(stack.length)),
    filling: String(filling),
    height: mm((height.low + height.high) / 2),
    daylight: mm(daylight),
    gauge: {
      low: formatNumber(reading.low, reading.unit, reading.decimals),
      high: formatNumber(reading.high, reading.unit, reading.decimals),
      unit: reading.unit,
    },
    force: formatNumber((force.low + force.high) / 2, 'kN', 0),
    centre: { x: mm(centre.x), y: mm(centre.y) },
    assembly: time(assembly, 'min', 1),
    open: time(open, 'min', 1),
    pressTime: time(pressTime, 'min'),
    rest: time(rest, 'h'),
  };
}

function timberOf({ picks }: Run): RunTold['timber'] {
  // Of the rows as they are printed, each rounded up: whoever adds them comes to the same.
  const sums = new Map<string, number>();
  for (const { speciesTitle, timber } of picks)
    sums.set(speciesTitle, (sums.get(speciesTitle) ?? 0) + boardFootTenths(timber));
  return [...sums].map(([species, tenths]) => ({ species, boardFeet: boardFeetText(tenths) }));
}

/** After every set-up the first piece is measured: of these orders, at these stations. */
function firstPiecesOf({ lines, floor }: Run): RunTold['firstPieces'] {
  return floor.stations.flatMap(({ id, name }) => {
    const orders = lines.filter(({ setUp }) => setUp.some(({ station }) => station === id));
    return orders.length === 0 ? [] : [{ name, orders: orders.map(({ order }) => order.number) }];
  });
}

/** In the sequence of the run, a row a body. */
export const labelsTold = ({ lines }: Run): readonly BodyLabels[] =>
  lines.flatMap(({ order, by }) =>
    bodyNumbers(order).map((number) => ({
      number,
      model: by.title,
      revision: by.revision,
      hand: order.hand,
      finish: by.text(`plant.finishes.${order.finish}.title`) ?? order.finish,
      grade: order.grade,
      ...(order.due === undefined ? {} : { due: order.due }),
      parts: by.parts,
    })),
  );
