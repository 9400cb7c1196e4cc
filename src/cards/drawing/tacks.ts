/** Tacks of the lamination in the plan, and the strip they stand in, full size. */
import { bounds } from '../../geometry/measure.ts';
import type { Drawing, Mark } from '../card.ts';
import type { Desk } from '../station.ts';
import { say } from '../station.ts';
import { kindsInWaste, tackIds } from '../tacks.ts';
import { hundredth } from './coordinates.ts';

/** Seen from the top: where a tack may stand, and each that does by number. */
export function tackMarks(desk: Desk): readonly Mark[] {
  const zones = kindsInWaste(desk).map((kind): Mark => {
    const rings = desk.use.fact(`tacks.zone.${kind}`).map((ring) => [...ring].map(hundredth));
    return { kind: 'region', hatch: 'tack-zone', rings };
  });
  const points = tackIds(desk).map((id, i): Mark => {
    const { xMm, yMm } = desk.use.fact(`tack.${id}.spot`);
    const number = { kind: 'literal', of: 'point', text: String(i + 1) } as const;
    return { kind: 'point', x: hundredth(xMm), y: hundredth(yMm), number };
  });
  return [...zones, ...seams(desk), ...points];
}

/** Seams of either part beside the centreline: no tack stands in one. */
function seams({ use }: Desk): readonly Mark[] {
  return use.fact('tacks.closed').flatMap(({ of, region }): readonly Mark[] => {
    const { minX, minY, maxX, maxY } = bounds(region[0]!)!;
    const x = hundredth((minX + maxX) / 2);
    if (of !== 'seam' || x === 0) return [];
    return [{ kind: 'line', line: 'seam', points: [x, hundredth(minY), x, hundredth(maxY)], closed: false }];
  });
}

/** How long a piece of the edge is drawn, mm. */
const LONG_MM = 30;

/** A piece of the edge full size, the body on the left: outline, trim line, strip, rough line, with their distances. */
export const tackStrips = (desk: Desk): readonly Drawing[] =>
  kindsInWaste(desk).map((kind, i) => strip(desk, kind, i === 0 ? 'tack-strip' : `tack-strip-${letter(i)}`));

/** Names of drawings hold no numerals: a, b, c, … */
const letter = (i: number): string => String.fromCharCode(97 + i);

function strip({ use, figure }: Desk, kind: string, id: string): Drawing {
  const mm = (nm: number): number => hundredth(nm / 1e6);
  const [from, to] = [mm(use.fact(`tacks.from.${kind}`).value), mm(use.fact(`tacks.to.${kind}`).value)];
  const [trim, rough] = [mm(use.fact('saw.trim.distance').value), mm(use.fact('saw.rough.distance').value)];
  const upright = (line: 'outline' | 'saw-line', x: number): Mark => ({
    kind: 'line',
    line,
    points: [x, 0, x, LONG_MM],
    closed: false,
  });
  const dimension = (
    ref: `tacks.${'from' | 'to'}.${string}` | 'saw.rough.distance',
    end: number,
    step: number,
  ): Mark => ({
    kind: 'dimension',
    from: [0, 0],
    to: [end, 0],
    offset: -DIMENSION_MM * step,
    text: figure(ref, { decimals: 1, single: true }),
  });
  return {
    id,
    caption: say('caption.tack-strip'),
    scale: 1,
    marks: [
      { kind: 'area', hatch: 'tack-zone', points: [from, 0, to, 0, to, LONG_MM, from, LONG_MM] },
      upright('outline', 0),
      upright('saw-line', trim),
      upright('saw-line', rough),
      // The longest first: no line of it runs through the numbers below.
      dimension('saw.rough.distance', rough, 1),
      dimension(`tacks.to.${kind}`, to, 2),
      dimension(`tacks.from.${kind}`, from, 3),
    ],
  };
}

/** From one dimension to the next. */
const DIMENSION_MM = 7;
