/** A picture is no larger than paper shows. */
import { dotsPerInch } from '../../geometry/picture-box.ts';
import type { Check, Fault } from '../check.ts';
import { filesOf } from '../pictures.ts';

/** Bytes: every page that shows it carries it, and every release keeps it. */
const MOST_BYTES = { dots: 1_000_000, drawing: 500_000 };
/** Pixels a side. */
const MOST_PIXELS = 4000;
/** Dots to an inch that paper shows at most. */
const ENOUGH = 300;

const check: Check = {
  id: 'picture-too-large',
  stage: 'spec',
  severity: 'error',
  why: 'Every page and every release carries the picture whole: large ones make cards slow to print and to open at the station, and show no more.',
  mend: 'Scale it down, or save a photo as JPEG.',
  example: { file: 'models/tarn.yaml', passes: 'file: pictures/kerf.svg', fails: 'file: pictures/wide.png' },
  run: (bench) =>
    filesOf(bench).flatMap(({ row, path, file: { form, bytes } }): Fault[] => {
      if (form.is === 'other') return [];
      const drawing = form.type === 'image/svg+xml';
      const most = drawing ? MOST_BYTES.drawing : MOST_BYTES.dots;
      const size = !drawing && form.is === 'picture' ? form : undefined;
      const wide = size !== undefined && Math.max(size.width, size.height) > MOST_PIXELS;
      if (bytes.length <= most && !wide) return [];
      const sides = size ? `${size.width} × ${size.height} pixels, ` : '';
      const what = `${path} has ${sides}${Math.ceil(bytes.length / 1000)} kB. It may have at most ${wide ? `${MOST_PIXELS} pixels a side` : `${most / 1000} kB`}.`;
      const fits = size && Math.floor((size.width * ENOUGH) / dotsPerInch(size));
      const mend =
        fits !== undefined && fits < size!.width
          ? `Scale it to ${fits} pixels wide: the card shows no more.`
          : drawing
            ? 'Draw it with fewer points, or save it as PNG.'
            : 'Save it as JPEG, or packed tighter.';
      return [{ at: row.file.id, what, mend, against: [] }];
    }),
};
export default check;
