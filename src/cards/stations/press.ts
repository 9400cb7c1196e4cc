/** Press: bodies in a stack under pressure until the glue holds. */
import { byEye, cautions, key, thicknessCheck } from '../common.ts';
import { centreMark } from '../drawing/centre-mark.ts';
import { loadDrawing } from '../drawing/load.ts';
import { stack } from '../drawing/stack.ts';
import { pointsPlan } from '../drawing/plan.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';
import { laminating } from '../laminating.ts';
import { flatness, gaugeChecks, gaugeKeys, loadingSteps, loadTable, sheetCells, sourceTable } from '../pressing.ts';

const station: Station = {
  id: 'press',
  on: ({ parts }) => parts.includes('cap'),
  after: ['lamination'],
  machines: ['press'],
  card: (desk) => {
    const glue = laminating(desk);
    return {
      keyNumbers: [...gaugeKeys(desk), key(say('press.key.time'), desk.figure(glue.press))],
      steps: [
        tacksIn(desk) ? say('press.step.count', { count: desk.figure('tacks.count') }) : say('press.step.one-model'),
        ...loadingSteps(desk),
        say('press.step.time', { time: desk.figure(glue.press) }),
        tacksOut(desk) ? say('press.step.unload-tacks', { count: desk.figure('tacks.out') }) : say('press.step.unload'),
        say('press.step.rest', { after: desk.figure(glue.after) }),
      ],
      tools: [
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.pressure'), name: desk.gauge('pressure').name },
        { role: say('tool.time'), name: desk.gauge('time').name },
      ],
      checks: [
        ...gaugeChecks(desk),
        thicknessCheck(desk, say('press.check.blank'), 'thickness.blank', 'thickness'),
        byEye(desk, say('press.check.flat', { flat: desk.figure(flatness(desk)) }), desk.gauge('flatness').name),
        byEye(desk, say('press.check.line')),
        ...(tacksOut(desk)
          ? [
              {
                ...byEye(desk, say('press.check.tacks', { count: desk.figure('tacks.out') }), say('common.by-count')),
                often: say('common.every-piece'),
              },
            ]
          : []),
      ],
      whenOut: ['above', 'pressure', 'thick', 'thin', 'bowed', 'open-joint'].map((out) => say(`press.out.${out}`)),
      cautions: cautions(desk, 'press', 'lifting', ...(tacksOut(desk) ? (['tacks'] as const) : []), 'glue', 'lockout'),
      drawings: [loadDrawing(desk), centred(desk), stack(desk)],
      tables: [
        loadTable(desk),
        sourceTable(desk),
        {
          title: say('press.table'),
          columns: [say('column.blank'), say('column.likely')],
          rows: [[desk.limits('thickness.blank', 'thickness'), desk.figure('thickness.blank.rss', { decimals: 2 })]],
        },
      ],
      signOff: [],
    };
  },
  sheet: {
    columns: [
      'press.sheet.gauge',
      'press.sheet.gauge-row',
      'press.sheet.bodies',
      'sheet-column.press-time',
      'sheet-column.blank',
    ],
    cells: (desk) => [
      ...sheetCells(desk),
      desk.figure(laminating(desk).press),
      desk.limits('thickness.blank', 'thickness'),
    ],
  },
};
export default station;

const tacksIn = (desk: Desk): boolean => desk.use.fact('tacks.count').value > 0;
const tacksOut = (desk: Desk): boolean => desk.use.fact('tacks.out').value > 0;

/** The plan of the points, with the middle of the glue on it. */
const centred = (desk: Desk) => {
  const plan = pointsPlan(desk);
  return { ...plan, caption: say('press.caption'), marks: [...plan.marks, ...centreMark(desk)] };
};
