/** Machining, back up: the first set-up. */
import { facesBack } from '../../facts/parts.ts';
import { key, often, one } from '../common.ts';
import { plan } from '../drawing/plan.ts';
import { machiningCard } from '../machining-card.ts';
import { fixtureName, setupOf } from '../machining.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'machining-back',
  on: () => true,
  after: ['sizing', 'press', 'trim-sawing'],
  machines: ['router'],
  card: (desk) =>
    machiningCard(desk, 'back', {
      ...(facesBack(desk.subject.spec) ? faced(desk) : {}),
      drawing: plan(desk, { caption: say('caption.back'), view: 'back', setup: 'back', pattern: true }),
    }),
  sheet: {
    columns: ['sheet-column.fixture', 'sheet-column.program', 'sheet-column.body-out'],
    cells: (desk) => [
      fixtureName(desk, 'back'),
      desk.name(setupOf(desk, 'back').program),
      desk.limits(facesBack(desk.subject.spec) ? 'thickness.body.back-faced' : 'thickness.blank', 'thickness'),
    ],
  },
};
export default station;

/** The faced back, where this set-up faces it. */
function faced(desk: Desk) {
  const limits = desk.limits('thickness.body.back-faced', 'thickness');
  const gauge = desk.gauge('thickness').name;
  return {
    keyNumbers: [key(say('machining.key.faced'), limits)],
    checks: [{ what: say('machining.check.faced'), limits, gauge, often: often(desk), boxes: [one] }],
  };
}
