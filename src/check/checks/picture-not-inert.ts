/** A drawing is a drawing: it runs nothing, moves nothing and fetches nothing. */
import type { Check, Fault } from '../check.ts';
import { filesOf } from '../pictures.ts';

const check: Check = {
  id: 'picture-not-inert',
  stage: 'spec',
  severity: 'error',
  why: 'A card shows the same to everybody, on every screen and on paper, today and when it is posted again: what runs in it, or is fetched, can show something else.',
  mend: 'Save it as a plain SVG, with no scripts, links, fonts or pictures from elsewhere.',
  example: { file: 'models/tarn.yaml', passes: 'file: pictures/kerf.svg', fails: 'file: pictures/script.svg' },
  run: (bench) =>
    filesOf(bench).flatMap(({ row, path, file: { form } }): Fault[] => {
      if (form.is !== 'acting') return [];
      const what = `${path} holds more than a drawing: ${form.acts.slice(0, 4).join(', ')}.`;
      return [{ at: row.file.id, what, mend: 'Save it as a plain SVG, without these.', against: [] }];
    }),
};
export default check;
