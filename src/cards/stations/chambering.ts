/** Chambering: chambers cut into the glue face of the back, before the cap closes them. */
import { plan } from '../drawing/plan.ts';
import { machiningCard } from '../machining-card.ts';
import { fixtureName, setupOf } from '../machining.ts';
import type { Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'chambering',
  on: ({ setups }) => setups.includes('glue-face'),
  after: ['sizing'],
  machines: ['router'],
  card: (desk) =>
    machiningCard(desk, 'glue-face', {
      steps: [say('chambering.step.glue-soon')],
      drawing: plan(desk, {
        caption: say('caption.glue-face'),
        view: 'top',
        setup: 'glue-face',
        rough: true,
        pattern: true,
      }),
    }),
  sheet: {
    columns: ['sheet-column.fixture', 'sheet-column.program'],
    cells: (desk) => [fixtureName(desk, 'glue-face'), desk.name(setupOf(desk, 'glue-face').program)],
  },
};
export default station;
