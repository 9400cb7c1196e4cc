/** Trim sawing: the second cut, close to the line and never through it. */
import { byEye, cautions, key, one, reliefSteps } from '../common.ts';
import { plan } from '../drawing/plan.ts';
import type { Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'trim-sawing',
  on: () => true,
  after: ['sizing', 'press'],
  machines: ['bandsaw'],
  card: (desk) => {
    const cap = desk.route.parts.includes('cap');
    const drawn = cap && desk.use.fact('tacks.out').value > 0;
    const leftInWaste = cap && desk.use.fact('tacks.in-waste').value > 0;
    const line = desk.figure('saw.trim.distance', { fraction: true });
    return {
      keyNumbers: [
        ...(drawn ? [key(say('trim-sawing.key.tacks'), desk.figure('tacks.out'))] : []),
        key(say('trim-sawing.key.line'), line),
      ],
      steps: [
        ...(drawn ? [say('trim-sawing.step.metal', { count: desk.figure('tacks.out') })] : []),
        ...(leftInWaste ? [say('trim-sawing.step.metal-stays', { count: desk.figure('tacks.in-waste') })] : []),
        say('trim-sawing.step.template'),
        ...reliefSteps(desk, 'trim'),
        say('trim-sawing.step.saw', { line }),
        say('trim-sawing.step.square'),
        say('trim-sawing.step.number'),
      ],
      tools: [
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.line'), name: desk.gauge('line').name },
      ],
      checks: [
        ...(drawn
          ? [
              {
                what: say('trim-sawing.check.tacks', { count: desk.figure('tacks.out') }),
                gauge: say('common.by-count'),
                often: say('common.every-piece'),
                boxes: [one],
              },
            ]
          : []),
        byEye(desk, say('trim-sawing.check.line'), desk.gauge('line').name),
        byEye(desk, say('trim-sawing.check.number')),
      ],
      whenOut: [say('trim-sawing.out.inside'), say('trim-sawing.out.outside')],
      cautions: cautions(desk, 'blade', 'metal', 'lockout'),
      drawings: [
        plan(desk, {
          caption: say('caption.trim'),
          view: 'top',
          trim: true,
          reliefs: 'trim',
          rough: true,
          pattern: true,
        }),
      ],
      tables: [],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.trim-line', 'sheet-column.body-length', 'sheet-column.body-width'],
    cells: (desk) => [
      desk.figure('saw.trim.distance', { fraction: true }),
      desk.figure('outline.length', { decimals: 0 }),
      desk.figure('outline.width', { decimals: 0 }),
    ],
  },
};
export default station;
