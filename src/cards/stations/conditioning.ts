/** Conditioning store: wood rests until its moisture has settled. */
import { row, wanted } from '../../facts/row.ts';
import { gaugeAt } from '../../facts/station-machine.ts';
import { boardOf } from '../../facts/parts.ts';
import type { Part } from '../../facts/parts.ts';
import { byEye, cautions, key, one, partName } from '../common.ts';
import type { Line } from '../card.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'conditioning',
  on: () => true,
  after: [],
  machines: ['conditioning'],
  card: (desk) => {
    const room = store(desk);
    const moisture = desk.limits(room.moisture, 'moisture');
    return {
      keyNumbers: [
        key(say('conditioning.key.moisture'), moisture),
        key(say('conditioning.key.agree'), desk.figure(room.agree)),
        ...(capped(desk) ? [key(say('conditioning.key.pair'), desk.figure(room.pair))] : []),
        key(say('conditioning.key.temperature'), desk.limits(room.temperature, 'temperature')),
        key(say('conditioning.key.humidity'), desk.limits(room.humidity, 'humidity')),
      ],
      steps: [
        say('conditioning.step.label'),
        say('conditioning.step.stack'),
        ...(capped(desk) ? [say('conditioning.step.together')] : []),
        ...desk.route.parts.map((part) =>
          say('conditioning.step.rest', { part: partName(part), rest: desk.figure(`room.rest.${part}`) }),
        ),
        say('conditioning.step.read', { apart: desk.figure(room.apart) }),
        ...meter(desk),
        say('conditioning.step.release', { moisture, agree: desk.figure(room.agree) }),
        ...(capped(desk) ? [say('conditioning.step.pair', { pair: desk.figure(room.pair) })] : []),
        say('conditioning.step.room', {
          temperature: desk.figure(room.temperature),
          humidity: desk.figure(room.humidity),
          rests: desk.figure('room.equilibrium', { decimals: 1 }),
          holds: desk.limits('room.humidity', 'humidity'),
        }),
      ],
      tools: [
        { role: say('tool.store'), name: desk.machine() },
        { role: say('tool.moisture'), name: desk.gauge('moisture').name },
      ],
      checks: [
        {
          what: say('conditioning.check.first'),
          limits: moisture,
          gauge: desk.gauge('moisture').name,
          often: say('common.every-board'),
          boxes: [one],
        },
        {
          what: say('conditioning.check.second'),
          limits: moisture,
          gauge: desk.gauge('moisture').name,
          often: say('common.every-board'),
          boxes: [one],
        },
        {
          what: say('conditioning.check.room-temperature'),
          limits: desk.limits(room.temperature, 'temperature'),
          gauge: desk.gauge('temperature').name,
          often: say('common.daily'),
          boxes: [one],
        },
        {
          what: say('conditioning.check.room-humidity'),
          limits: desk.limits(room.humidity, 'humidity'),
          gauge: desk.gauge('humidity').name,
          often: say('common.daily'),
          boxes: [one],
        },
        { ...byEye(desk, say('conditioning.check.sound')), often: say('common.every-board') },
      ],
      whenOut: ['moisture', 'dry', 'insects', 'room'].map((out) => say(`conditioning.out.${out}`)),
      cautions: cautions(desk, 'lifting'),
      drawings: [],
      tables: [
        {
          title: say('conditioning.table'),
          columns: ['part', 'stock', 'rest', 'moves-across', 'moves-thick', 'known-from'].map((id) =>
            say(`column.${id}`),
          ),
          rows: desk.route.parts.map((part) => [
            partName(part),
            desk.name(row(desk.subject.plant.stock, desk.use(board(desk, part).stock), 'plant.stock').title),
            desk.figure(`room.rest.${part}`),
            desk.figure(`movement.${part}.across.per-percent`, { decimals: 2 }),
            desk.figure(`movement.${part}.thickness.per-percent`, { decimals: 3 }),
            knownFrom(desk, part),
          ]),
        },
      ],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.moisture', 'sheet-column.agree'],
    cells: (desk) => [desk.limits(store(desk).moisture, 'moisture'), desk.figure(store(desk).agree)],
  },
};
export default station;

const capped = (desk: Desk): boolean => desk.route.parts.includes('cap');
const board = (desk: Desk, part: Part) => boardOf(desk.subject.spec, part);

/** How to correct a reading, where the plant says what its meter is. */
function meter(desk: Desk): readonly Line[] {
  const { 'calibrated-at': at } = gaugeAt(desk.subject.plant, desk.use, desk.station, 'moisture');
  if (!at) return [];
  const with_ = {
    at: desk.figure(at),
    off: desk.figure('meter.per-step'),
    step: desk.figure('meter.step'),
    here: desk.figure('meter.correction'),
  };
  return [say('conditioning.step.meter', with_)];
}

/** Where the figures of movement come from; what nobody has verified says so. */
function knownFrom(desk: Desk, part: Part): Line {
  const { plant } = desk.subject;
  const own = row(plant.species, desk.use(board(desk, part).species), 'plant.species').movement;
  if (own) return say('conditioning.source.own', { name: desk.name(own.name), date: desk.name(own.date) });
  return say(
    desk.use.fact(`movement.${part}.sources-agree`) ? 'conditioning.source.published' : 'conditioning.source.dispute',
  );
}

function store(desk: Desk) {
  const machine = desk.use(wanted(desk.row.machine, `plant.stations.${desk.station}.machine`));
  const room = row(desk.subject.plant.machines, machine, 'plant.machines');
  const need = <T>(leaf: T | undefined, name: string): T => wanted(leaf, `plant.machines.${machine}.${name}`);
  return {
    moisture: need(room.moisture, 'moisture'),
    temperature: need(room.temperature, 'temperature'),
    humidity: need(room.humidity, 'humidity'),
    pair: need(room['pair-agree'], 'pair-agree'),
    apart: need(room['readings-apart'], 'readings-apart'),
    agree: need(room['readings-agree'], 'readings-agree'),
  };
}
