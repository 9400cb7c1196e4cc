/** A model's picture is for a station that has a card of it. */
import { picturesOf } from '../../facts/pictures.ts';
import { offer } from '../../findings/nearest.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'picture-off-route',
  stage: 'card',
  severity: 'error',
  why: 'The picture would hang at no station: whoever put it there believes that it does.',
  mend: 'Name a station that the model passes, or take the picture out.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'kerf: { station: trim-sawing, at: saw,',
    fails: 'kerf: { station: chambering,',
  },
  run: ({ subject, facts, seen }) =>
    picturesOf(subject).flatMap(({ row, of }): Fault[] => {
      const station = look(facts, (use) => use(row.station));
      const stations = seen.map((card) => card.station);
      // One of the plant is for the models that pass there.
      if (station === undefined || of === 'plant' || seen.length === 0 || stations.includes(station)) return [];
      const what = `This model does not pass ${station}: it has no card there.`;
      return [{ at: row.station.id, what, mend: offer(station, stations), against: [] }];
    }),
};
export default check;
