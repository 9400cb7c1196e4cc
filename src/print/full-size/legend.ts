/** What the line types of a template mean. */
import type { FullSize } from '../../cards/card.ts';
import { drawLegend, usedKinds, type LegendInput } from '../drawing/legend.ts';
import { num } from '../drawing/paper.ts';
import { TEXT_MM } from '../drawing/text.ts';
import { escaped } from '../markup.ts';
import type { Speech } from '../speech.ts';

export function legendOf({ marks }: FullSize, talk: Speech): LegendInput {
  const { lines } = usedKinds(marks);
  return {
    // Chain lines are the centreline on a card; here the bridge line is one as well.
    lines: lines.map((of) => ({ of, word: talk.phrase(of === 'centre' ? 'full-size.axes' : `drawing.${of}`) })),
    hatches: [],
    patternId: () => '',
  };
}

const WIDTH_MM = 180;

/** By itself, for a page. */
export function legendSvg(template: FullSize, title: string, talk: Speech): string {
  const { svg, height } = drawLegend(legendOf(template, talk), { x: 0, y: 0 }, WIDTH_MM);
  return (
    `<svg class="full-size-legend" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escaped(title)}" ` +
    `width="${WIDTH_MM}mm" height="${num(height)}mm" viewBox="0 0 ${WIDTH_MM} ${num(height)}" font-size="${TEXT_MM}">${svg}</svg>`
  );
}
