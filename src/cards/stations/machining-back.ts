/** Machining, back up: the first set-up. */
import { cautions, key, often, one } from '../common.ts';
import { plan } from '../drawing/plan.ts';
import {
  cutTitle,
  cuttingSteps,
  depthChecks,
  depthTable,
  fixtureName,
  machiningChecks,
  machiningTools,
  settingSteps,
  setupOf,
} from '../machining.ts';
import { byFloor, cavitiesOf } from '../cutting-order.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';
import { facesBack } from '../../facts/parts.ts';

/** Three to a row: more would be small print. All depths stand among the checks. */
const MOST_KEY_NUMBERS = 3;

const station: Station = {
  id: 'machining-back',
  on: () => true,
  card: (desk) => ({
    keyNumbers: [...thickness(desk), ...depths(desk)].slice(0, MOST_KEY_NUMBERS),
    steps: [...settingSteps(desk, 'back'), ...cuttingSteps(desk, 'back')],
    tools: machiningTools(desk, 'back'),
    checks: [...thicknessChecks(desk), ...depthChecks(desk, 'back'), ...machiningChecks(desk)],
    whenOut: [say('machining.out.deep'), say('machining.out.shallow'), say('machining.out.moved')],
    cautions: cautions(desk, 'first-cut', 'rotating', 'metal', 'stopped', 'lockout'),
    drawings: [plan(desk, { caption: say('caption.back'), view: 'back', setup: 'back', pattern: true })],
    tables: depthTable(desk, 'back'),
    signOff: [say('sign.program')],
  }),
  sheet: {
    columns: ['sheet-column.fixture', 'sheet-column.program', 'sheet-column.body-out'],
    cells: (desk) => [fixtureName(desk, 'back'), desk.name(setupOf(desk, 'back').program), sheetThickness(desk)],
  },
};
export default station;

const depths = (desk: Desk) =>
  byFloor(desk, cavitiesOf(desk, 'back')).map((name) => {
    const { way } = desk.use.fact(`cavity.${name}.measuring`);
    const title = cutTitle(desk, 'cavities', name);
    return key(
      say(`machining.key.${way}`, { cavity: title }),
      desk.limits(`cavity.${name}.measured`, way === 'depth' ? 'depth' : 'height'),
    );
  });

/** The faced back, where this set-up faces it. */
const thickness = (desk: Desk) =>
  facesBack(desk.subject.spec)
    ? [key(say('machining.key.faced'), desk.limits('thickness.body.back-faced', 'thickness'))]
    : [];

const thicknessChecks = (desk: Desk) =>
  facesBack(desk.subject.spec)
    ? [
        {
          what: say('machining.check.faced'),
          limits: desk.limits('thickness.body.back-faced', 'thickness'),
          gauge: desk.gauge('thickness').name,
          often: often(desk),
          boxes: [one],
        },
      ]
    : [];

const sheetThickness = (desk: Desk) =>
  facesBack(desk.subject.spec)
    ? desk.limits('thickness.body.back-faced', 'thickness')
    : desk.limits('thickness.blank', 'thickness');
