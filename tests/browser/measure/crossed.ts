/// <reference lib="dom" />
/** Texts of drawings that a line runs through: their halo keeps them readable, so they are counted, not refused. */
import type { Page } from 'puppeteer';
import { crosses, edgesOf, type Edges, type Point } from './quad.ts';
import type { TextRun } from './texts.ts';

export interface DrawnLine {
  readonly from: Point;
  readonly to: Point;
}

/** Straight parts of all drawn lines, in millimetres of the page. */
export const linesOn = (page: Page): Promise<DrawnLine[]> =>
  page.evaluate(() => {
    const MM = 25.4 / 96;
    return [...document.querySelectorAll('svg.drawing path')].flatMap((path) => {
      const place = (path as SVGGraphicsElement).getScreenCTM();
      if (!place || path.closest('defs') || getComputedStyle(path).stroke === 'none') return [];
      const at = (x: number, y: number) => {
        const point = new DOMPoint(x, y).matrixTransform(place);
        return { x: point.x * MM, y: (point.y + scrollY) * MM };
      };
      // Paths of a drawing are runs of straight parts: M, L and Z with two coordinates each.
      return path
        .getAttribute('d')!
        .split('M')
        .flatMap((run) => {
          const flat = run.match(/-?[\d.]+/g)?.map(Number) ?? [];
          const points = Array.from({ length: flat.length >> 1 }, (_, i) => at(flat[2 * i]!, flat[2 * i + 1]!));
          if (run.includes('Z') && points[0]) points.push(points[0]);
          return points.slice(1).map((to, i) => ({ from: points[i]!, to }));
        });
    });
  });

/** A line that only touches the edge of the box runs through no letter. */
const DEEP_MM = 0.3;

export function crossed(texts: readonly TextRun[], lines: readonly DrawnLine[]): TextRun[] {
  const drawn = lines.map(({ from, to }) => ({ from, to, edges: edgesOf([from, to, to, from]) }));
  return texts.filter(
    ({ role, quads }) =>
      role === 'drawing' &&
      quads.some((quad) => {
        const box = edgesOf(quad);
        return drawn.some(({ from, to, edges }) => touch(box, edges) && crosses(quad, from, to, DEEP_MM));
      }),
  );
}

const touch = (a: Edges, b: Edges): boolean =>
  a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
