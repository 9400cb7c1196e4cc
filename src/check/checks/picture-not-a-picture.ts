/** A picture's file is a PNG, JPEG or SVG by what is in it, and is called as what it is. */
import type { Check, Fault } from '../check.ts';
import { TYPES, filesOf } from '../pictures.ts';

const check: Check = {
  id: 'picture-not-a-picture',
  stage: 'spec',
  severity: 'error',
  why: 'A browser goes by what is in a file, people by what it is called: the card would show nothing, or the wrong file.',
  mend: 'Save it as PNG, JPEG or SVG, and let its name end as such.',
  example: { file: 'models/tarn.yaml', passes: 'file: pictures/kerf.svg', fails: 'file: pictures/words.svg' },
  run: (bench) =>
    filesOf(bench).flatMap(({ row, path, file: { form } }): Fault[] => {
      const at = { at: row.file.id, against: [] };
      if (form.is === 'other') {
        const what = `What is in ${path} is neither PNG nor JPEG nor SVG.`;
        return [{ ...at, what, mend: 'Save the picture as one of these; renaming a file does not change what it is.' }];
      }
      const { name, ends } = TYPES[form.type];
      if (ends.some((end) => path.toLowerCase().endsWith(end))) return [];
      const called = path.replace(/(?:\.[^./]*)?$/, ends[0]);
      return [{ ...at, what: `What is in ${path} is ${name}.`, mend: `Call it ${called}, here and on the disk.` }];
    }),
};
export default check;
