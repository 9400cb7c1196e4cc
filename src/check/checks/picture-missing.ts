/** A picture's file is there, below models/. */
import { offer } from '../../findings/nearest.ts';
import type { Check } from '../check.ts';
import { shownBy } from '../pictures.ts';

const check: Check = {
  id: 'picture-missing',
  stage: 'spec',
  severity: 'error',
  why: 'The step would send people to a picture that is not on the card.',
  mend: 'Put the file below models/ and name it from there, as pictures/kerf.svg.',
  example: { file: 'models/tarn.yaml', passes: 'file: pictures/kerf.svg', fails: 'file: pictures/kert.svg' },
  run: (bench) =>
    shownBy(bench)
      .filter(({ file }) => file === undefined || file === 'outside')
      .map(({ row, path, file }) => ({
        at: row.file.id,
        what:
          file === 'outside'
            ? `"${path}" leads out of models/, and only what lies below it is read.`
            : `There is no file models/${path}.`,
        mend:
          file === 'outside'
            ? 'Copy it below models/, and name it from there.'
            : offer(path, bench.subject.pictures.there),
        against: [],
      })),
};
export default check;
