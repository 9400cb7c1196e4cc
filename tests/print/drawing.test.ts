import { describe, expect, it } from 'vitest';
import type { Drawing, Mark } from '../../src/cards/card.ts';
import { drawDrawing, drawOnPage } from '../../src/print/drawing/drawing.ts';
import { LINE_TYPES } from '../../src/print/drawing/lines.ts';
import { drawingWords, speech } from '../../src/print/speech.ts';
import { figure, line, name, ownWords, plan, stack } from './fixture.ts';
import { elements } from './well-formed.ts';

const talk = speech(ownWords().words, (finding) => {
  throw new Error(finding.what);
});
const draw = (drawing: Drawing) => drawDrawing(drawing, 'test', drawingWords(talk, 'A <plan> & more', drawing.scale));
const square = (scale: Drawing['scale'], side: number, more: readonly Mark[] = []): Drawing => ({
  id: 'square',
  caption: line('fixture.plan'),
  scale,
  marks: [{ kind: 'line', line: 'outline', points: [0, 0, side, 0, side, side, 0, side], closed: true }, ...more],
});

function attribute(svg: string, pattern: RegExp): number[] {
  return (pattern.exec(svg) ?? []).slice(1).map(Number);
}

describe('a drawing', () => {
  it.each([plan, stack])('$id is well-formed and has the same text twice', (drawing) => {
    const { svg } = draw(drawing);
    expect(elements(svg)[0]).toBe('svg');
    expect(draw(structuredClone(drawing)).svg).toBe(svg);
  });

  it.each([1, 2, 2.5, 5, 10] as const)('at 1:%s has one unit of its view box to a millimetre of paper', (scale) => {
    const { svg, widthMm, heightMm } = draw(square(scale, 300));
    const [width, height, boxWidth, boxHeight] = attribute(
      svg,
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="\S+ \S+ ([\d.]+) ([\d.]+)"/,
    );
    expect([boxWidth, boxHeight]).toEqual([width, height]);
    expect([widthMm, heightMm].map((side) => Math.round(side * 100) / 100)).toEqual([width, height]);
    const side = 300 / scale;
    expect(svg).toContain(`<path d="M0 0L${side} 0L${side} -${side}L0 -${side}Z"`);
    expect(svg).toContain(`Scale 1:${scale}`);
  });

  it.each([
    [1, 300, 100],
    [5, 300, 50],
    [5, 400, 100],
  ] as const)('at 1:%i of %i mm has a bar of %i mm of paper', (scale, side, bar) => {
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = attribute(
      draw(square(scale, side)).svg,
      /class="bar" d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)"/,
    );
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo(bar, 2);
  });

  it('keeps every mark and letter within its frame', () => {
    for (const drawing of [plan, stack]) {
      const { svg } = draw(drawing);
      const [left = 0, top = 0, width = 0, height = 0] = attribute(svg, /viewBox="(\S+) (\S+) (\S+) (\S+)"/);
      const points = [...svg.matchAll(/(?:[ML]| x="| cx=")(-?[\d.]+)(?:" c?y=")? ?(-?[\d.]+)/g)].slice(0);
      expect(points.length).toBeGreaterThan(20);
      for (const [all, x, y] of points) {
        // Pattern tiles have coordinates of their own, which lie near zero and inside as well.
        expect(Number(x), all).toBeGreaterThanOrEqual(left);
        expect(Number(x), all).toBeLessThanOrEqual(left + width);
        expect(Number(y), all).toBeGreaterThanOrEqual(top);
        expect(Number(y), all).toBeLessThanOrEqual(top + height);
      }
    }
  });

  it('has at most two decimals anywhere', () => {
    const odd = square(10, 333.33, [{ kind: 'circle', line: 'cut', x: 1 / 3, y: 2 / 3, radius: 10 / 7 }]);
    for (const drawing of [plan, stack, odd]) expect(draw(drawing).svg).not.toMatch(/\d\.\d{3}|e-\d|NaN|Infinity/);
  });

  it('leaves text from a spec inert', () => {
    const hostile = name(`</text><script>alert('"x"')</script>`);
    const { svg } = draw(square(1, 90, [{ kind: 'label', x: 0, y: 0, text: hostile, anchor: 'start' }]));
    expect(elements(svg)).not.toContain('script');
  });

  it('sets dimensions off to the left of their way', () => {
    const dimension = (to: readonly [number, number]): Mark => ({
      kind: 'dimension',
      from: [0, 0],
      to,
      offset: 10,
      text: figure('90', 'mm'),
    });
    expect(draw(square(1, 90, [dimension([90, 0])])).svg).toContain('M0 -10L90 -10');
    expect(draw(square(1, 90, [dimension([0, 90])])).svg).toContain('M-10 0L-10 -90');
  });

  it('too big for a page is drawn at the next scale that fits, and says so', () => {
    const { svg, widthMm } = drawOnPage(square(1, 550), 'test', (scale) => drawingWords(talk, 'x', scale));
    expect(widthMm).toBeLessThanOrEqual(190);
    expect(svg).toContain('Scale 1:5');
    expect(svg).toContain('L110 0L110 -110');
  });

  it('with nothing on it still has its scale and its bar', () => {
    expect(elements(draw({ ...plan, marks: [] }).svg)).toContain('g');
  });

  it('tells each kind of line apart by weight or dashes', () => {
    const looks = Object.values(LINE_TYPES).map(({ width, dashes }) => `${width} ${dashes.join(' ')}`);
    expect(new Set(looks).size).toBe(looks.length);
  });
});
