import { num, type Point } from './paper.ts';
import { labelMarkup, TEXT_MM } from './text.ts';

/** True length on paper: held against a ruler, it proves that the print was not resized. */
const LONG_MM = 100;
/** Beside a drawing that is itself much smaller than the long bar. */
const SHORT_MM = 50;
const STEP_MM = 10;
/** From the bar's line to the far edge of its numbers. */
export const BAR_ROOM_MM = 3 + TEXT_MM;

/** Length of the bar along a side of a drawing. */
export function barLength(sideMm: number): number {
  return sideMm >= 0.8 * LONG_MM ? LONG_MM : SHORT_MM;
}

/** The bar from `start`, to the right or downward, ticked every 10 mm; its numbers on the side away from the drawing. */
export function scaleBar(start: Point, length: number, upright: boolean): string {
  const place = (along: number, off: number): Point =>
    upright ? { x: start.x - off, y: start.y + along } : { x: start.x + along, y: start.y + off };
  const to = (along: number, off: number) => `${num(place(along, off).x)} ${num(place(along, off).y)}`;
  let ticks = '';
  for (let along = 0; along <= length; along += STEP_MM)
    ticks += `M${to(along, 0)}L${to(along, along % 50 === 0 ? 2 : 1.2)}`;
  const numbers = [0, 50, 100]
    .filter((along) => along <= length)
    .map((along) => {
      const anchor = along === 0 ? 'start' : along === length ? 'end' : 'middle';
      // Upright numbers read from the right: their start is at the lower end.
      const turned = { start: 'end', end: 'start', middle: 'middle' } as const;
      return labelMarkup({
        at: place(along, 2.4 + TEXT_MM / 2),
        text: along === 0 ? '0' : `${along}\u00a0mm`,
        anchor: upright ? turned[anchor] : anchor,
        turn: upright ? -90 : 0,
      });
    });
  return (
    `<g class="scale-bar"><path class="bar" d="M${to(0, 0)}L${to(length, 0)}" stroke="#000" stroke-width="0.6" fill="none"/>` +
    `<path d="${ticks}" stroke="#000" stroke-width="0.3" fill="none"/>${numbers.join('')}</g>`
  );
}
