/** A picture's file came through whole. */
import type { Check, Fault } from '../check.ts';
import { TYPES, filesOf } from '../pictures.ts';

const check: Check = {
  id: 'picture-broken',
  stage: 'spec',
  severity: 'error',
  why: 'Half a picture, or a blank where it belongs, looks on the card as if it were meant.',
  mend: 'Save it anew from the program it was made with, and copy it whole.',
  example: { file: 'models/tarn.yaml', passes: 'file: pictures/kerf.svg', fails: 'file: pictures/torn.svg' },
  run: (bench) =>
    filesOf(bench).flatMap(({ row, path, file: { form } }): Fault[] => {
      if (form.is !== 'broken') return [];
      const what = `The ${TYPES[form.type].name} ${path} cannot be shown: ${form.what}.`;
      return [{ at: row.file.id, what, mend: 'Save it anew from the program it was made with.', against: [] }];
    }),
};
export default check;
