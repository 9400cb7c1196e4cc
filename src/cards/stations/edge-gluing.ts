/** Edge gluing under a radio-frequency field. */
import type { Part } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import { byEye, cautions, key, one, partName } from '../common.ts';
import type { Arg, Series } from '../card.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'edge-gluing',
  on: ({ parts, pieces }) => parts.some((part) => (pieces[part] ?? 1) > 1),
  after: ['jointing'],
  machines: ['edge-gluer'],
  card: (desk) => {
    const glue = adhesive(desk);
    const parts = glued(desk);
    const first = parts[0]!;
    return {
      keyNumbers: [
        ...parts.map((part) => key(say('edge-gluing.key.air', { part: partName(part) }), air(desk, part))),
        key(
          say('edge-gluing.key.pulses'),
          each(parts, (part) => say('edge-gluing.pulses', pulses(desk, part))),
        ),
      ],
      steps: [
        say('edge-gluing.step.pair'),
        say('edge-gluing.step.spread', {
          glue: each(parts, (part) => desk.figure(`edge.${part}.glue`, { single: true })),
        }),
        say('edge-gluing.step.clamp', { air: each(parts, (part) => air(desk, part)) }),
        say('edge-gluing.step.wipe'),
        say('edge-gluing.step.field', {
          field: each(parts, (part) =>
            say('edge-gluing.field', { faces: desk.figure(`edge.${part}.faces`), ...pulses(desk, part) }),
          ),
        }),
        say('edge-gluing.step.stops', {
          stops: desk.figure(`edge.${first}.stops`),
          apart: desk.figure(glue.stop),
        }),
        say('edge-gluing.step.hold', { hold: desk.figure(glue.hold) }),
        say('edge-gluing.step.rest', { rest: desk.figure(glue.rest) }),
      ],
      tools: [
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.adhesive'), name: glue.title },
        { role: say('tool.time'), name: desk.gauge('time').name },
        { role: say('tool.pressure'), name: desk.gauge('pressure').name },
      ],
      checks: [
        ...parts.map((part) => ({
          what: say('edge-gluing.check.air', { part: partName(part) }),
          limits: air(desk, part),
          gauge: desk.gauge('pressure').name,
          often: say('common.every-piece'),
          boxes: [one],
        })),
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
          columns: ['part', 'seams', 'stops', 'field', 'glue', 'clamp-force', 'power'].map((id) => say(`column.${id}`)),
          rows: parts.map((part) => [
            partName(part),
            desk.figure(`edge.${part}.seams`),
            desk.figure(`edge.${part}.stops`),
            desk.figure(`edge.${part}.field`),
            desk.figure(`edge.${part}.glue`, { single: true }),
            desk.figure(`edge.${part}.clamp-force`, { decimals: 1 }),
            desk.figure(`edge.${part}.power`, { decimals: 1, single: true }),
          ]),
        },
      ],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.stops', 'sheet-column.air', 'sheet-column.pulses', 'sheet-column.rest'],
    cells: (desk) => {
      const parts = glued(desk);
      return [
        desk.figure(`edge.${parts[0]!}.stops`),
        each(parts, (part) => air(desk, part)),
        each(parts, (part) => say('edge-gluing.pulses', pulses(desk, part))),
        desk.figure(adhesive(desk).rest),
      ];
    },
  },
};
export default station;

const glued = (desk: Desk) => desk.route.parts.filter((part) => (desk.route.pieces[part] ?? 1) > 1);

/** A value for each part, named by it. */
const each = (parts: readonly Part[], value: (part: Part) => Arg): Series => ({
  kind: 'series',
  items: parts.map((part) => say('sheet-cell.part-value', { part: partName(part), value: value(part) })),
});

const air = (desk: Desk, part: Part) => desk.limits(`edge.${part}.clamp-gauge`, 'pressure');

const pulses = (desk: Desk, part: Part) => ({
  pulses: desk.figure(`edge.${part}.pulses-a-face`),
  pulse: desk.figure(`edge.${part}.pulse`),
});

function adhesive({ subject: { spec, plant }, use, name }: Desk) {
  const line = use(spec.line);
  const id = use(wanted(row(plant.lines, line, 'plant.lines')['edge-adhesive'], `plant.lines.${line}.edge-adhesive`));
  const glue = row(plant.adhesives, id, 'plant.adhesives');
  const need = <T>(leaf: T | undefined, key: string): T => wanted(leaf, `plant.adhesives.${id}.${key}`);
  return {
    title: name(glue.title),
    stop: need(glue.stop, 'stop'),
    hold: need(glue.hold, 'hold'),
    rest: need(glue.rest, 'rest'),
  };
}
