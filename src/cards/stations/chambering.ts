/** Chambering: chambers cut into the glue face of the back, before the cap closes them. */
import { cautions, key } from '../common.ts';
import { byFloor, cavitiesOf } from '../cutting-order.ts';
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
import type { Station } from '../station.ts';
import { say } from '../station.ts';

const MOST_KEY_NUMBERS = 3;

const station: Station = {
  id: 'chambering',
  on: ({ setups }) => setups.includes('glue-face'),
  card: (desk) => ({
    keyNumbers: byFloor(desk, cavitiesOf(desk, 'glue-face'))
      .map((name) => {
        const { way } = desk.use.fact(`cavity.${name}.measuring`);
        const title = cutTitle(desk, 'cavities', name);
        const role = way === 'depth' ? 'depth' : 'height';
        return key(say(`machining.key.${way}`, { cavity: title }), desk.limits(`cavity.${name}.measured`, role));
      })
      .slice(0, MOST_KEY_NUMBERS),
    steps: [...settingSteps(desk, 'glue-face'), ...cuttingSteps(desk, 'glue-face'), say('chambering.step.glue-soon')],
    tools: machiningTools(desk, 'glue-face'),
    checks: [...depthChecks(desk, 'glue-face'), ...machiningChecks(desk)],
    whenOut: [say('machining.out.deep'), say('machining.out.shallow'), say('machining.out.moved')],
    cautions: cautions(desk, 'first-cut', 'rotating', 'metal', 'stopped', 'lockout'),
    drawings: [
      plan(desk, { caption: say('caption.glue-face'), view: 'top', setup: 'glue-face', rough: true, pattern: true }),
    ],
    tables: depthTable(desk, 'glue-face'),
    signOff: [say('sign.program')],
  }),
  sheet: {
    columns: ['sheet-column.fixture', 'sheet-column.program'],
    cells: (desk) => [fixtureName(desk, 'glue-face'), desk.name(setupOf(desk, 'glue-face').program)],
  },
};
export default station;
