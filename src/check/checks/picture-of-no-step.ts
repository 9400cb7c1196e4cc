/** A picture belongs to a step that is on the card. */
import { picturesOf } from '../../facts/pictures.ts';
import { nearest } from '../../findings/nearest.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'picture-of-no-step',
  stage: 'card',
  severity: 'error',
  why: 'No step would refer to the picture, and nobody turns the page for it.',
  mend: 'Name a step that is on the card; without "at" the picture belongs to no step.',
  example: { file: 'models/tarn.yaml', passes: 'at: saw,', fails: 'at: sow,' },
  run: ({ subject, facts, seen }) =>
    picturesOf(subject).flatMap(({ row: { station, at } }): Fault[] => {
      const asked = at && look(facts, (use) => ({ station: use(station), step: use(at) }));
      const card = asked && seen.find((one) => one.station === asked.station);
      if (!at || !card || card.steps.includes(asked.step)) return [];
      const near = nearest(asked.step, card.steps);
      return [
        {
          at: at.id,
          what: `No step of the card of ${asked.station} is called "${asked.step}".`,
          mend: `${near === undefined ? '' : `Did you mean "${near}"? `}Its steps are: ${[...new Set(card.steps)].join(', ')}.`,
          against: [{ at: station.id, text: 'the station' }],
        },
      ];
    }),
};
export default check;
