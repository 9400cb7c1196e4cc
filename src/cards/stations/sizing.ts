/** Sizing: the wide belt brings parts to the thickness they are glued at. */
import { byEye, cautions, key, partName, thickOrThin, partChecks } from '../common.ts';
import { pointsPlan } from '../drawing/plan.ts';
import type { Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'sizing',
  on: () => true,
  card: (desk) => {
    const { parts } = desk.route;
    return {
      keyNumbers: parts.map((part) =>
        key(say('sizing.key.out', { part: partName(part) }), desk.limits(`thickness.part.${part}.sized`, 'thickness')),
      ),
      steps: [
        say('sizing.step.zero'),
        ...parts.map((part) =>
          say('sizing.step.cut', {
            part: partName(part),
            removal: desk.figure(`removal.part.${part}.sized`, { decimals: 2 }),
            passes: desk.figure(`sizing.${part}.passes`),
          }),
        ),
        say('sizing.step.feed'),
        say('sizing.step.measure'),
        say('sizing.step.again'),
        say(parts.includes('cap') ? 'sizing.step.glue-soon' : 'sizing.step.clean'),
      ],
      tools: [
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.thickness'), name: desk.gauge('thickness').name },
      ],
      checks: [...partChecks(desk, 'sizing', 'sized'), byEye(desk, say('sizing.check.clean'))],
      whenOut: [...thickOrThin(desk), say('sizing.out.taper')],
      cautions: cautions(desk, 'belt', 'metal', 'lockout', 'stopped'),
      drawings: [pointsPlan(desk)],
      tables: [
        {
          title: say('sizing.table'),
          columns: [
            say('column.part'),
            say('column.in'),
            say('column.out'),
            say('column.removal'),
            say('column.passes'),
          ],
          rows: parts.map((part) => [
            partName(part),
            desk.limits(`thickness.part.${part}.planed`, 'thickness'),
            desk.limits(`thickness.part.${part}.sized`, 'thickness'),
            desk.limits(`removal.part.${part}.sized`, 'thickness'),
            desk.figure(`sizing.${part}.passes`),
          ]),
        },
      ],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.part-in', 'sheet-column.part-out'],
    cells: (desk) =>
      (['planed', 'sized'] as const).map((stage) => ({
        kind: 'series',
        items: desk.route.parts.map((part) =>
          say('sheet-cell.part-value', {
            part: partName(part),
            value: desk.limits(`thickness.part.${part}.${stage}`, 'thickness'),
          }),
        ),
      })),
  },
};
export default station;
