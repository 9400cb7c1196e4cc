/** Lamination: glue on the joint, cap on back, tacked so that they cannot slide. */
import { byEye, cautions, key, one } from '../common.ts';
import { plan } from '../drawing/plan.ts';
import { stack } from '../drawing/stack.ts';
import { tackStrips } from '../drawing/tacks.ts';
import { laminating } from '../laminating.ts';
import type { Station } from '../station.ts';
import { say } from '../station.ts';
import { countSteps, kindsInWaste, pinSteps, tackSteps, tackTable } from '../tacks.ts';

const station: Station = {
  id: 'lamination',
  on: ({ parts }) => parts.includes('cap'),
  after: ['sizing', 'chambering'],
  machines: ['glue-spreader'],
  card: (desk) => {
    const glue = laminating(desk);
    const tacked = desk.use.fact('tacks.count').value > 0;
    return {
      keyNumbers: [
        key(say('lamination.key.glue'), desk.figure('lamination.glue', { single: true })),
        ...(tacked ? [key(say('lamination.key.tacks'), desk.figure('tacks.count'))] : []),
        key(say('lamination.key.open-time'), desk.figure(glue.open)),
      ],
      steps: [
        say('lamination.step.faces', { fresh: desk.figure(glue['fresh-for']) }),
        say('lamination.step.bodies', {
          stack: desk.figure('press.stack.bodies'),
          row: desk.figure('press.row.bodies'),
        }),
        say('lamination.step.pair'),
        say('lamination.step.dry'),
        ...pinSteps(desk),
        say('lamination.step.spread', {
          glue: desk.figure('lamination.glue', { single: true }),
          spread: desk.figure(glue.spread),
        }),
        say('lamination.step.go-pin'),
        ...tackSteps(desk),
        ...countSteps(desk),
        say('lamination.step.close', { open: desk.figure(glue.open) }),
        say('lamination.step.mark'),
      ],
      tools: [
        { role: say('tool.adhesive'), name: glue.title },
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.scale'), name: desk.gauge('glue').name },
        { role: say('tool.time'), name: desk.gauge('time').name },
      ],
      checks: [
        byEye(desk, say('lamination.check.glue'), desk.gauge('glue').name),
        byEye(desk, say('lamination.check.time'), desk.gauge('time').name),
        byEye(desk, say('lamination.check.pins'), say('common.go-pin')),
        ...(tacked
          ? [
              {
                what: say('lamination.check.tacks-in', { count: desk.figure('tacks.count') }),
                gauge: say('common.by-count'),
                often: say('common.every-piece'),
                boxes: [one],
              },
            ]
          : []),
      ],
      whenOut: [say('lamination.out.late'), say('lamination.out.slid')],
      cautions: cautions(desk, 'rollers', ...(tacked ? (['tacks'] as const) : []), 'glue', 'metal', 'lifting'),
      drawings: [
        plan(desk, {
          caption: say(`caption.${!tacked ? 'no-tacks' : kindsInWaste(desk).length > 0 ? 'tacks' : 'tack-pins'}`),
          view: 'top',
          rough: true,
          trim: true,
          seam: true,
          pattern: true,
          tacks: true,
        }),
        ...tackStrips(desk),
        stack(desk),
      ],
      tables: tackTable(desk),
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.glue', 'sheet-column.tacks', 'sheet-column.open-time'],
    cells: (desk) => [
      desk.figure('lamination.glue', { single: true }),
      desk.figure('tacks.count'),
      desk.figure(laminating(desk).open),
    ],
  },
};
export default station;
