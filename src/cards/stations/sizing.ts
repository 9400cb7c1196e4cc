/** Sizing: the wide belt brings parts to the thickness they are glued at. */
import { byEye, cautions, key, partName, thickOrThin, partChecks } from '../common.ts';
import type { Part } from '../../facts/parts.ts';
import { machineNumber } from '../../facts/station-machine.ts';
import type { Series } from '../card.ts';
import { laminating } from '../laminating.ts';
import { pointsPlan } from '../drawing/plan.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'sizing',
  on: () => true,
  after: ['planing'],
  machines: ['wide-belt'],
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
            passes: belts(desk, part),
          }),
        ),
        say('sizing.step.feed', {
          least: desk.figure(machineNumber(desk.subject.plant, desk.use, 'sizing', 'least-feed')),
        }),
        say('sizing.step.measure'),
        say('sizing.step.again'),
        parts.includes('cap')
          ? say('sizing.step.glue-soon', {
              grit: desk.figure(glueFace(desk).grit),
              fresh: desk.figure(glueFace(desk).fresh),
            })
          : say('sizing.step.clean'),
      ],
      tools: [
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.thickness'), name: desk.gauge('thickness').name },
      ],
      checks: [
        ...partChecks(desk, 'sizing', 'sized'),
        byEye(
          desk,
          say('sizing.check.taper', {
            taper: desk.figure(machineNumber(desk.subject.plant, desk.use, 'sizing', 'taper')),
          }),
          desk.gauge('thickness').name,
        ),
        byEye(desk, say('sizing.check.clean')),
      ],
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
            desk.span(`thickness.part.${part}.planed`, 'thickness'),
            desk.limits(`thickness.part.${part}.sized`, 'thickness'),
            desk.span(`removal.part.${part}.sized`, 'thickness'),
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
            value: desk[stage === 'sized' ? 'limits' : 'span'](`thickness.part.${part}.${stage}`, 'thickness'),
          }),
        ),
      })),
  },
};
export default station;

/** How often with which belt; without belts in the plant's row, how often in all. */
function belts(desk: Desk, part: Part): Series {
  const ids = desk.use.fact('sizing.belts');
  if (ids.length === 0) return { kind: 'series', items: [desk.figure(`sizing.${part}.passes`)] };
  const rows = machineNumber(desk.subject.plant, desk.use, 'sizing', 'grits');
  return {
    kind: 'series',
    items: ids
      .filter((id) => desk.use.fact(`sizing.${part}.belt.${id}`).value > 0)
      .map((id) =>
        say('sizing.belt', { grit: desk.figure(rows[id]!.grit), passes: desk.figure(`sizing.${part}.belt.${id}`) }),
      ),
  };
}

/** What the glue asks of the face it is spread on. */
function glueFace(desk: Desk) {
  const { 'last-grit': grit, 'fresh-for': fresh } = laminating(desk);
  return { grit, fresh };
}
