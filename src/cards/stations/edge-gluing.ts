/** Edge gluing under a radio-frequency field. */
import { row, wanted } from '../../facts/row.ts';
import { byEye, cautions, key, partName } from '../common.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'edge-gluing',
  on: ({ parts, pieces }) => parts.some((part) => (pieces[part] ?? 1) > 1),
  card: (desk) => {
    const glue = adhesive(desk);
    const parts = glued(desk);
    const [first] = parts;
    return {
      keyNumbers: [
        key(say('edge-gluing.key.stops'), desk.figure(`edge.${first!}.stops`)),
        key(say('edge-gluing.key.pulses'), desk.figure(glue.pulses)),
        key(say('edge-gluing.key.pulse'), desk.figure(glue.pulse)),
        ...parts.map((part) =>
          key(
            say('edge-gluing.key.glue', { part: partName(part) }),
            desk.figure(`edge.${part}.glue`, { single: true }),
          ),
        ),
        key(say('edge-gluing.key.rest'), desk.figure(glue.rest)),
      ],
      steps: [
        say('edge-gluing.step.pair'),
        say('edge-gluing.step.spread'),
        say('edge-gluing.step.clamp'),
        say('edge-gluing.step.wipe'),
        say('edge-gluing.step.field', {
          pulses: desk.figure(glue.pulses),
          pulse: desk.figure(glue.pulse),
          faces: desk.figure(glue.faces),
        }),
        say('edge-gluing.step.stops', {
          stops: desk.figure(`edge.${first!}.stops`),
          apart: desk.figure(glue.stop),
        }),
        say('edge-gluing.step.hold'),
        say('edge-gluing.step.rest', { rest: desk.figure(glue.rest) }),
      ],
      tools: [
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.adhesive'), name: glue.title },
        { role: say('tool.time'), name: desk.gauge('time').name },
      ],
      checks: [
        byEye(desk, say('edge-gluing.check.squeeze-out')),
        byEye(desk, say('edge-gluing.check.flush')),
        byEye(desk, say('edge-gluing.check.time'), desk.gauge('time').name),
      ],
      whenOut: [say('edge-gluing.out.starved'), say('edge-gluing.out.arc')],
      cautions: cautions(desk, 'field', 'glue', 'lockout'),
      drawings: [],
      tables: [
        {
          title: say('edge-gluing.table'),
          columns: [
            say('column.part'),
            say('column.seams'),
            say('column.stops'),
            say('column.field'),
            say('column.glue'),
          ],
          rows: parts.map((part) => [
            partName(part),
            desk.figure(`edge.${part}.seams`),
            desk.figure(`edge.${part}.stops`),
            desk.figure(`edge.${part}.field`),
            desk.figure(`edge.${part}.glue`, { single: true }),
          ]),
        },
      ],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.stops', 'sheet-column.pulses', 'sheet-column.rest'],
    cells: (desk) => {
      const part = glued(desk)[0]!;
      return [desk.figure(`edge.${part}.stops`), desk.figure(adhesive(desk).pulses), desk.figure(adhesive(desk).rest)];
    },
  },
};
export default station;

const glued = (desk: Desk) => desk.route.parts.filter((part) => (desk.route.pieces[part] ?? 1) > 1);

function adhesive({ subject: { spec, plant }, use, name }: Desk) {
  const line = use(spec.line);
  const id = use(wanted(row(plant.lines, line, 'plant.lines')['edge-adhesive'], `plant.lines.${line}.edge-adhesive`));
  const glue = row(plant.adhesives, id, 'plant.adhesives');
  const need = <T>(leaf: T | undefined, key: string): T => wanted(leaf, `plant.adhesives.${id}.${key}`);
  return {
    title: name(glue.title),
    pulse: need(glue.pulse, 'pulse'),
    pulses: need(glue.pulses, 'pulses'),
    faces: need(glue.faces, 'faces'),
    stop: need(glue.stop, 'stop'),
    rest: need(glue.rest, 'rest'),
  };
}
