/** Conditioning store: wood rests until its moisture has settled. */
import { row, wanted } from '../../facts/row.ts';
import { byEye, cautions, key, one } from '../common.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'conditioning',
  on: () => true,
  card: (desk) => {
    const room = store(desk);
    const moisture = desk.limits(room.moisture, 'moisture');
    return {
      keyNumbers: [
        key(say('conditioning.key.moisture'), moisture),
        key(say('conditioning.key.agree'), desk.figure(room.agree)),
        key(say('conditioning.key.temperature'), desk.limits(room.temperature, 'temperature')),
        key(say('conditioning.key.humidity'), desk.limits(room.humidity, 'humidity')),
      ],
      steps: [
        say('conditioning.step.label'),
        say('conditioning.step.stack'),
        say('conditioning.step.together'),
        say('conditioning.step.read', { apart: desk.figure(room.apart) }),
        say('conditioning.step.release', { moisture, agree: desk.figure(room.agree) }),
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
      tables: [],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.moisture', 'sheet-column.agree'],
    cells: (desk) => [desk.limits(store(desk).moisture, 'moisture'), desk.figure(store(desk).agree)],
  },
};
export default station;

function store(desk: Desk) {
  const machine = desk.use(wanted(desk.row.machine, `plant.stations.${desk.station}.machine`));
  const room = row(desk.subject.plant.machines, machine, 'plant.machines');
  const need = <T>(leaf: T | undefined, name: string): T => wanted(leaf, `plant.machines.${machine}.${name}`);
  return {
    moisture: need(room.moisture, 'moisture'),
    temperature: need(room.temperature, 'temperature'),
    humidity: need(room.humidity, 'humidity'),
    apart: need(room['readings-apart'], 'readings-apart'),
    agree: need(room['readings-agree'], 'readings-agree'),
  };
}
