/** Templates at full size as pictures: true to the model, named, and never the wrong way round; and the grid they are cut by. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import { bounds } from '../../src/geometry/measure.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { printFullSizes } from '../../src/printing.ts';
import { cornersOf, gridOver, OVERLAP_MM } from '../../src/print/full-size/grid.ts';
import { shownOn } from '../../src/print/full-size/tile-page.ts';
import { demoFiles } from '../cards/demo.ts';
import { elements } from './well-formed.ts';

const host = memoryHost(demoFiles());
const whole = compileAll(host, '2026-11-25');
const printed = printFullSizes(host, whole, '2026-11-25', {});
const text = (path: string): string => {
  const content = printed.files.get(path);
  if (typeof content !== 'string') throw new Error(`there is no ${path}`);
  return content;
};
const svgs = [...printed.files.keys()].filter((path) => path.endsWith('.svg'));
const derived = (model: string, hand: string) =>
  whole.models.find(({ id }) => id === model)!.hands.find(({ subject }) => subject.hand === hand)!;
function outlineOf(model: string, hand: string) {
  const reading = derived(model, hand).facts.read((use) => use.fact('outline.polygon'));
  if (!reading.ok) throw new Error(reading.missing.join(', '));
  return reading.value;
}
const numbers = (of: string): number[] => of.match(/-?\d+(?:\.\d+)?/g)!.map(Number);

/** Points of the outline as the picture has them: the one thick closed line. */
const drawnOutline = (svg: string): number[] => {
  const lines = [...svg.matchAll(/<path d="(M[^"]*Z)" fill="none" stroke="#000" stroke-width="0.7"/g)];
  expect(lines).toHaveLength(1);
  return numbers(lines[0]![1]!);
};

describe('the picture of a face', () => {
  test('is made of the top of every model and hand, and of what else is cut from', () => {
    expect(svgs).toEqual(
      expect.arrayContaining(['tarn/top.svg', 'tarn/back.svg', 'tarn/top-left.svg', 'tarn/back-left.svg']),
    );
    expect(svgs).toContain('voe/glue-face.svg');
    expect(svgs).not.toContain('tarn/glue-face.svg');
    expect(svgs).toHaveLength(printed.sheets.length);
    expect(printed.findings).toEqual([]);
  });

  test.each(svgs)('%s is well formed, in true millimetres, with a bar each way', (path) => {
    const svg = text(path);
    expect(elements(svg.replace(/<style>[^<]*<\/style>/, ''))[0]).toBe('svg');
    const [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="\S+ \S+ ([\d. ]+)"/.exec(svg)!;
    expect(box).toBe(`${width} ${height}`);
    const bars = [...svg.matchAll(/class="bar" d="([^"]+)"/g)].map(([, d]) => numbers(d!));
    expect(bars.map(([x0, y0, x1, y1]) => [x1! - x0!, y1! - y0!].map(Math.round))).toEqual([
      [100, 0],
      [0, 100],
    ]);
  });

  test.each(svgs)('%s has the outline where the model has it, from the back the other way round', (path) => {
    const [, model, face, left] = /^(.*)\/(top|back|glue-face)(-left)?\.svg$/.exec(path)!;
    const outline = outlineOf(model!, left ? 'left' : 'right');
    const drawn = drawnOutline(text(path));
    const flip = face === 'back' ? -1 : 1;
    const points = (of: ArrayLike<number>, wide: number, high: number) =>
      Array.from({ length: of.length / 2 }, (_, i) => [of[2 * i]! * wide, of[2 * i + 1]! * high]);
    const own = points(outline, 1, 1);
    const seen = points(drawn, flip, -1);
    expect(seen).toHaveLength(own.length);
    for (const [x, y] of seen)
      expect(Math.min(...own.map(([a, b]) => Math.hypot(a! - x!, b! - y!)))).toBeLessThan(0.01);
    const { minX, maxX, minY, maxY } = bounds(outline)!;
    const box = bounds(Float64Array.from(seen.flat()))!;
    expect(Math.abs(box.minX - minX)).toBeLessThan(0.01);
    expect(Math.abs(box.maxX - maxX)).toBeLessThan(0.01);
    expect(Math.abs(box.minY - minY)).toBeLessThan(0.01);
    expect(Math.abs(box.maxY - maxY)).toBeLessThan(0.01);
  });

  test('has the centre of a hole where the spec has it, seen from its face', () => {
    // skerry.yaml: bridge-pilot-a at (-36, -16) from the top, ferrule-b at (-15.6, -24) from the back.
    const cross = (x: number, y: number, reach: number) =>
      `M${x - reach} ${y}H${x + reach}M${x} ${y - reach}V${y + reach}"`;
    expect(text('skerry/top.svg')).toContain(cross(-36, 16, 3.25));
    expect(text('skerry/back.svg')).toContain(cross(15.6, 24, 6));
    expect(text('skerry/top.svg')).not.toContain(cross(-15.6, 24, 6));
    // tarn.yaml: bridge-stud-a at (-37, -3) with the right hand, on the other side with the left.
    expect(text('tarn/top.svg')).toContain(cross(-37, 3, 7.5));
    expect(text('tarn/top-left.svg')).toContain(cross(37, 3, 7.5));
    expect(text('tarn/top.svg')).toMatch(/bridge stud a/);
  });

  test.each(svgs)('%s names every cavity, and every hole and channel of its face', (path) => {
    const [, model, face, left] = /^(.*)\/(top|back|glue-face)(-left)?\.svg$/.exec(path)!;
    const { subject, facts } = derived(model!, left ? 'left' : 'right');
    const { cavities = {}, holes = {}, channels = {} } = subject.spec;
    const said = [...text(path).matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, name]) => name);
    const titled = (rows: Record<string, { title?: unknown; setup: unknown }>, ofFace: boolean) =>
      Object.entries(rows).flatMap(([id, { title, setup }]) => {
        const read = facts.read((use) => ({
          name: title ? use(title as Parameters<typeof use<string>>[0]) : id.replaceAll('-', ' '),
          own: use(setup as Parameters<typeof use<string>>[0]) === face,
        }));
        return read.ok && (read.value.own || !ofFace) ? [read.value.name] : [];
      });
    const names = [...titled(cavities, false), ...titled(holes, true), ...titled(channels, true)];
    expect(names.length).toBeGreaterThan(0);
    for (const name of [...names, 'bridge line', 'centreline']) expect(said).toContain(name);
  });

  test.each(svgs)('%s says what it is, whose face, from where it is seen, and that it is no card', (path) => {
    const svg = text(path);
    for (const said of ['Revision ', 'handed', 'Scale 1:1', 'Seen from', 'No card', '2026-11-25', 'mm (']) {
      expect(svg).toContain(said);
    }
    if (path.includes('/back')) expect(svg).toContain('left and right change places');
    // Text is never mirrored, and turned only along an upright bar.
    expect(svg.match(/transform="(?!rotate\(-90 )[^"]*"/g)).toBeNull();
  });

  test.each(svgs)('%s has no name on another', (path) => {
    const boxes = [...text(path).matchAll(/<text x="([-\d.]+)" y="([-\d.]+)" text-anchor="middle"[^>]*>([^<]+)</g)]
      .filter(([tag]) => !tag.includes('rotate'))
      .map(([, x, y, name]) => ({ name, x: Number(x), y: Number(y), half: (name!.length * 3.5 * 0.6) / 2 }));
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1))
        if (Math.abs(a.x - b.x) < a.half + b.half)
          expect(Math.abs(a.y - b.y), `${a.name}, ${b.name}`).toBeGreaterThan(3.5);
  });
});

test('the same inputs give the same bytes', () => {
  const again = printFullSizes(memoryHost(demoFiles()), whole, '2026-11-25', {});
  expect([...again.files]).toEqual([...printed.files]);
});

test('only one hand, on other paper', () => {
  const only = (choice: Parameters<typeof printFullSizes>[3]) => printFullSizes(host, whole, '2026-11-25', choice);
  expect(only({ hand: 'left' }).sheets.map(({ name }) => name)).toEqual(['tarn/top-left.pdf', 'tarn/back-left.pdf']);
  expect(printed.sheets[0]!.paper).toBe('A4');
  const letter = only({ hand: 'left', paper: 'Letter' }).sheets[0]!;
  expect([letter.paper, letter.body.includes('size:Letter')]).toEqual(['Letter', true]);
});

describe('a grid', () => {
  const shown = shownOn({ widthPx: 738, heightPx: 1012 });
  const box = fc
    .tuple(...[-900, -900, 20, 20].map((least) => fc.double({ min: least, max: least + 900, noNaN: true })))
    .map(([left, top, width, height]) => ({ left: left!, top: top!, right: left! + width!, bottom: top! + height! }));

  test('covers what it is laid over, in cells without a gap, each tile as large as a page shows', () => {
    fc.assert(
      fc.property(box, (over) => {
        const { tiles, rows, columns, whole: all } = gridOver(over, shown);
        expect(tiles).toHaveLength(rows.length * columns.length);
        expect(all.left).toBeLessThanOrEqual(over.left + 0.01);
        expect(all.top).toBeLessThanOrEqual(over.top + 0.01);
        expect(all.right).toBeGreaterThanOrEqual(over.right - 0.01);
        expect(all.bottom).toBeGreaterThanOrEqual(over.bottom - 0.01);
        // One column fewer would not do.
        expect((columns.length - 1) * (shown.width - OVERLAP_MM) + OVERLAP_MM).toBeLessThan(
          Math.max(over.right - over.left, OVERLAP_MM + 0.01),
        );
        for (const { window, cell, joins } of tiles) {
          expect(window.right - window.left).toBeCloseTo(shown.width, 1);
          expect(window.bottom - window.top).toBeCloseTo(shown.height, 1);
          const right = tiles.find(({ name }) => name === joins.right);
          const below = tiles.find(({ name }) => name === joins.below);
          if (right) expect(right.cell.left).toBe(cell.right);
          if (below) expect(below.cell.top).toBe(cell.bottom);
          if (right) expect(cornersOf(right.cell)[0]).toEqual(cornersOf(cell)[1]);
        }
      }),
    );
  });

  test('names rows by letters and columns by numbers, and knows who lies beside whom', () => {
    const { tiles } = gridOver({ left: 0, top: 0, right: 340, bottom: 420 }, shown);
    expect(tiles.map(({ name }) => name)).toEqual(['A1', 'A2', 'B1', 'B2']);
    expect(tiles.map(({ joins }) => joins)).toEqual([
      { right: 'A2', below: 'B1' },
      { left: 'A1', below: 'B2' },
      { right: 'B2', above: 'A1' },
      { left: 'B1', above: 'A2' },
    ]);
  });

  test('cuts off the axis where there is room', () => {
    const { tiles } = gridOver({ left: -170, top: 0, right: 170, bottom: 200 }, shown);
    expect(Math.abs(tiles[0]!.cell.right)).toBeGreaterThan(8);
  });
});
