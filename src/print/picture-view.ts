/** A picture as its template sees it: carried inside the page, so that the page stands by itself. As an image it is inert. */
import type { Picture } from '../cards/card.ts';
import { printedSize } from '../geometry/picture-box.ts';
import type { PrintInput } from './input.ts';
import { escaped, markup } from './markup.ts';
import type { Speech } from './speech.ts';

export function pictureView({ number, steps, caption, sha256 }: Picture, files: PrintInput['pictures'], talk: Speech) {
  const file = files.get(sha256);
  if (!file) throw new Error(`the picture ${caption.text} was not handed to the printer`);
  const { widthMm, heightMm } = printedSize(file);
  const address = `data:${file.type};base64,${Buffer.from(file.bytes).toString('base64')}`;
  const said = talk.name(caption.text);
  const title = steps.length === 0 ? 'picture.title' : 'picture.title-of-step';
  const args = steps.length === 0 ? { number } : { number, steps: { kind: 'series', items: steps } as const };
  return {
    title: talk.html({ kind: 'line', say: title, with: args }),
    caption: said,
    image: markup(
      `<img class="picture" src="${address}" alt="${escaped(said)}" ` +
        `style="width:${mm(widthMm)}mm;height:${mm(heightMm)}mm">`,
    ),
  };
}

/** To a hundredth of a millimetre. */
const mm = (length: number): number => Math.round(length * 100) / 100;
