/** Press: bodies in a stack under pressure until the glue holds. */
import { byEye, cautions, key, thicknessCheck } from '../common.ts';
import { stack } from '../drawing/stack.ts';
import { pointsPlan } from '../drawing/plan.ts';
import type { Station } from '../station.ts';
import { say } from '../station.ts';
import { laminating } from '../laminating.ts';

const station: Station = {
  id: 'press',
  on: ({ parts }) => parts.includes('cap'),
  card: (desk) => {
    const glue = laminating(desk);
    return {
      keyNumbers: [
        key(say('press.key.pressure'), desk.figure(glue.pressure)),
        key(say('press.key.time'), desk.figure(glue.press)),
        key(say('press.key.after'), desk.figure(glue.after)),
        key(say('press.key.blank'), desk.limits('thickness.blank', 'thickness')),
      ],
      steps: [
        say('press.step.count'),
        say('press.step.load'),
        say('press.step.open-time', { open: desk.figure(glue.open) }),
        say('press.step.pressure', { pressure: desk.figure(glue.pressure) }),
        say('press.step.time', { time: desk.figure(glue.press) }),
        say('press.step.unload'),
        say('press.step.tacks-out'),
        say('press.step.rest', { after: desk.figure(glue.after) }),
      ],
      tools: [
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.pressure'), name: desk.gauge('pressure').name },
        { role: say('tool.time'), name: desk.gauge('time').name },
      ],
      checks: [
        thicknessCheck(desk, say('press.check.blank'), 'thickness.blank', 'thickness'),
        byEye(desk, say('press.check.flat'), desk.gauge('flatness').name),
        byEye(desk, say('press.check.line')),
        { ...byEye(desk, say('press.check.tacks'), say('common.by-count')), often: say('common.every-piece') },
      ],
      whenOut: ['thick', 'thin', 'open-joint', 'pressure'].map((out) => say(`press.out.${out}`)),
      cautions: cautions(desk, 'press', 'lifting', 'glue', 'lockout'),
      drawings: [pointsPlan(desk), stack(desk)],
      tables: [
        {
          title: say('press.table'),
          columns: [say('column.blank'), say('column.likely')],
          rows: [[desk.limits('thickness.blank', 'thickness'), desk.figure('thickness.blank.rss')]],
        },
      ],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.pressure', 'sheet-column.press-time', 'sheet-column.blank'],
    cells: (desk) => {
      const glue = laminating(desk);
      return [desk.figure(glue.pressure), desk.figure(glue.press), desk.limits('thickness.blank', 'thickness')];
    },
  },
};
export default station;
