/** Machining, top up: the second set-up, located on cuts of the first. */
import { cautions, key, one, thicknessCheck } from '../common.ts';
import { plan, topPoint } from '../drawing/plan.ts';
import {
  carveTable,
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
import { highestPoint, pointsOf } from '../../facts/parts.ts';

/** Three to a row: more would be small print. All depths stand among the checks. */
const MOST_KEY_NUMBERS = 3;

const station: Station = {
  id: 'machining-top',
  on: () => true,
  card: (desk) => ({
    keyNumbers: [...thickness(desk), ...depths(desk)].slice(0, MOST_KEY_NUMBERS),
    steps: [...settingSteps(desk, 'top'), ...cuttingSteps(desk, 'top')],
    tools: machiningTools(desk, 'top'),
    checks: [...thicknessChecks(desk), ...depthChecks(desk, 'top'), ...machiningChecks(desk)],
    whenOut: [say('machining.out.deep'), say('machining.out.shallow'), say('machining.out.moved')],
    cautions: cautions(desk, 'first-cut', 'rotating', 'vacuum', 'metal', 'stopped', 'lockout'),
    drawings: [plan(desk, { caption: say('caption.top'), view: 'top', setup: 'top' })],
    tables: [...depthTable(desk, 'top'), ...carveTable(desk)],
    signOff: [say('sign.program')],
  }),
  sheet: {
    columns: ['sheet-column.fixture', 'sheet-column.program', 'sheet-column.body-out'],
    cells: (desk) => [fixtureName(desk, 'top'), desk.name(setupOf(desk, 'top').program), sheetThickness(desk)],
  },
};
export default station;

const depths = (desk: Desk) =>
  byFloor(desk, cavitiesOf(desk, 'top')).map((name) => {
    const { way } = desk.use.fact(`cavity.${name}.measuring`);
    const title = cutTitle(desk, 'cavities', name);
    return key(
      say(`machining.key.${way}`, { cavity: title }),
      desk.limits(`cavity.${name}.measured`, way === 'depth' ? 'depth' : 'height'),
    );
  });

const named = (desk: Desk) => `thickness.body.machined.${highestPoint(desk.subject.spec)}` as const;

const thickness = (desk: Desk) => [
  key(say('machining.key.machined', { point: topPoint(desk) }), desk.limits(named(desk), 'thickness')),
];

const thicknessChecks = (desk: Desk) =>
  pointsOf(desk.subject.spec, 'machined').map((point) => ({
    ...thicknessCheck(
      desk,
      say('machining.check.machined', { point: say(`point.${point}`) }),
      `thickness.body.machined.${point}`,
      'thickness',
    ),
    boxes: [one],
  }));

const sheetThickness = (desk: Desk) => desk.limits(named(desk), 'thickness');
