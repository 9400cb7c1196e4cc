/** A picture has dots enough for the size it prints at. */
import { dotsPerInch, printedSize } from '../../geometry/picture-box.ts';
import type { Check, Fault } from '../check.ts';
import { filesOf } from '../pictures.ts';

/** Dots to an inch under which edges blur at reading distance: practice, no source. */
const LEAST = 100;

const check: Check = {
  id: 'picture-coarse',
  stage: 'spec',
  severity: 'caution',
  why: 'What the picture is to show is lost between its dots, through dusty glasses first.',
  mend: 'Use a larger picture, or cut out the part that matters.',
  example: { file: 'models/tarn.yaml', passes: 'file: pictures/kerf.svg', fails: 'file: pictures/small.png' },
  run: (bench) =>
    filesOf(bench).flatMap(({ row, path, file: { form } }): Fault[] => {
      if (form.is !== 'picture' || form.type === 'image/svg+xml' || dotsPerInch(form) >= LEAST) return [];
      const { width, height } = form;
      const { widthMm } = printedSize(form);
      const what = `${path}, ${width} × ${height} pixels, prints ${Math.round(widthMm)} mm wide: ${Math.floor(dotsPerInch(form))} dots to an inch, and ${LEAST} are wanted.`;
      const mend = `Use a picture at least ${Math.ceil((LEAST * widthMm) / 25.4)} pixels wide.`;
      return [{ at: row.file.id, what, mend, against: [] }];
    }),
};
export default check;
