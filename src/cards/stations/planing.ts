/** Planing: a light cut off each face so that both clean up. */
import { byEye, cautions, key, partName, thickOrThin, partChecks } from '../common.ts';
import { machineNumber } from '../../facts/station-machine.ts';
import { plan } from '../drawing/plan.ts';
import type { Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'planing',
  on: () => true,
  after: ['conditioning', 'edge-gluing'],
  machines: ['planer'],
  card: (desk) => {
    const { parts } = desk.route;
    return {
      keyNumbers: parts.map((part) =>
        key(
          say('planing.key.out', { part: partName(part) }),
          desk.limits(`thickness.part.${part}.planed`, 'thickness'),
        ),
      ),
      steps: [
        say('planing.step.rested'),
        say('planing.step.metal'),
        ...parts.map((part) =>
          say('planing.step.cut', {
            part: partName(part),
            out: desk.limits(`thickness.part.${part}.planed`, 'thickness'),
            passes: desk.figure(`planing.${part}.passes`),
          }),
        ),
        say('planing.step.feed', {
          least: desk.figure(machineNumber(desk.subject.plant, desk.use, 'planing', 'least-feed')),
        }),
        say('planing.step.measure'),
        say('planing.step.order'),
      ],
      tools: [
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.thickness'), name: desk.gauge('thickness').name },
      ],
      checks: [...partChecks(desk, 'planing', 'planed'), byEye(desk, say('planing.check.clean'))],
      whenOut: [...thickOrThin(desk), say('planing.out.rough')],
      cautions: cautions(desk, 'rotating', 'feed', 'metal', 'lockout', 'stopped'),
      drawings: [plan(desk, { caption: say('caption.points'), view: 'top', rough: true, blank: true, points: true })],
      tables: [
        {
          title: say('planing.table'),
          columns: [
            say('column.part'),
            say('column.in'),
            say('column.out'),
            say('column.removal'),
            say('column.each-face'),
          ],
          rows: parts.map((part) => [
            partName(part),
            desk.span(`thickness.part.${part}.rough`, 'thickness'),
            desk.limits(`thickness.part.${part}.planed`, 'thickness'),
            desk.span(`removal.part.${part}.planed`, 'thickness'),
            desk.figure(`planing.${part}.cut`, { decimals: 2 }),
          ]),
        },
        {
          title: say('planing.marks'),
          columns: ['knife-pitch', 'knife-depth', 'least-feed', 'least-thickness', 'widest'].map((id) =>
            say(`column.${id}`),
          ),
          rows: [
            [
              desk.figure('planing.knife-pitch', { decimals: 2 }),
              desk.figure('planing.knife-depth', { decimals: 3 }),
              ...(['least-feed', 'least-thickness', 'widest'] as const).map((key) =>
                desk.figure(machineNumber(desk.subject.plant, desk.use, 'planing', key)),
              ),
            ],
          ],
        },
      ],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.part-out'],
    cells: (desk) => [
      {
        kind: 'series',
        items: desk.route.parts.map((part) =>
          say('sheet-cell.part-value', {
            part: partName(part),
            value: desk.limits(`thickness.part.${part}.planed`, 'thickness'),
          }),
        ),
      },
    ],
  },
};
export default station;
