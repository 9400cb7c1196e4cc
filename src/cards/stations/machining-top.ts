/** Machining, top up: the second set-up, located on cuts of the first. */
import { highestPoint, pointsOf } from '../../facts/parts.ts';
import { key, one, thicknessCheck } from '../common.ts';
import { plan, topPoint } from '../drawing/plan.ts';
import { across } from '../drawing/section.ts';
import { machiningCard } from '../machining-card.ts';
import { fixtureName, setupOf } from '../machining.ts';
import { carveTable } from '../cut-tables.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'machining-top',
  on: () => true,
  after: ['machining-back'],
  machines: ['router'],
  card: (desk) =>
    machiningCard(desk, 'top', {
      keyNumbers: [key(say('machining.key.machined', { point: topPoint(desk) }), thickest(desk))],
      checks: pointsOf(desk.subject.spec, 'machined').map((point) => {
        const what = say('machining.check.machined', { point: say(`point.${point}`) });
        return { ...thicknessCheck(desk, what, `thickness.body.machined.${point}`, 'thickness'), boxes: [one] };
      }),
      drawing: plan(desk, { caption: say('caption.top'), view: 'top', setup: 'top' }),
      drawings: across(desk),
      tables: carveTable(desk),
    }),
  sheet: {
    columns: ['sheet-column.fixture', 'sheet-column.program', 'sheet-column.body-out'],
    cells: (desk) => [fixtureName(desk, 'top'), desk.name(setupOf(desk, 'top').program), thickest(desk)],
  },
};
export default station;

const thickest = (desk: Desk) => desk.limits(`thickness.body.machined.${highestPoint(desk.subject.spec)}`, 'thickness');
