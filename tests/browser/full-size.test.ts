/** Templates at full size on paper, read back: what a pattern maker would measure on the tiles, and put together. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import { bounds } from '../../src/geometry/measure.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { Printer } from '../../src/host/printer.ts';
import { workspaceHost } from '../../src/host/workspace.ts';
import { printFullSizes } from '../../src/printing.ts';
import { demoFiles, root } from '../cards/demo.ts';
import { meet, readPages, type Box, type PaintedPath, type ReadPage } from './read-paths.ts';

const host = memoryHost(demoFiles());
const whole = compileAll(host, '2026-11-25');
const PAPERS = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

/** Both faces, both papers; of the widest body, and of both hands of one. */
const wanted = [
  ['tarn', 'right', 'A4'],
  ['tarn', 'left', 'Letter'],
  ['carr', 'right', 'A4'],
] as const;

interface Tile extends ReadPage {
  readonly name: string;
  /** Where the origin of the body lies on the page, mm. */
  readonly origin: readonly [number, number];
  readonly outline: PaintedPath;
  /** What of the body it shows, and its registration marks: mm of the body as drawn, y downward. */
  readonly window: Box;
  readonly rings: readonly (readonly [number, number])[];
}

interface Face {
  readonly name: string;
  readonly paper: keyof typeof PAPERS;
  /** The outline's box as drawn, y downward. */
  readonly body: Box;
  readonly promised: number;
  readonly pages: readonly ReadPage[];
  readonly tiles: readonly Tile[];
}

let printer: Printer;
const faces: Face[] = [];

beforeAll(async () => {
  const opened = await workspaceHost(root).openPrinter();
  if ('missing' in opened) throw new Error(opened.missing);
  printer = opened;
  for (const [id, hand, paper] of wanted) {
    const model = whole.models.find((one) => one.id === id)!;
    const printed = printFullSizes(host, { ...whole, models: [model] }, '2026-11-25', { hand, paper });
    expect(printed.findings).toEqual([]);
    const pdfs = await printer.print(printed.shell, printed.sheets);
    if ('failed' in pdfs) throw new Error(pdfs.failed);
    const { facts } = model.hands.find(({ subject }) => subject.hand === hand)!;
    const outline = facts.read((use) => use.fact('outline.polygon'));
    if (!outline.ok) throw new Error(outline.missing.join(', '));
    const { minX, maxX, minY, maxY } = bounds(outline.value)!;
    for (const { name, body: html } of printed.sheets) {
      const [left, right] = name.includes('/back') ? [-maxX, -minX] : [minX, maxX];
      const body = { left, right, top: -maxY, bottom: -minY };
      const pages = await readPages(pdfs.get(name)!);
      const promised = html.match(/class="full-size-tile"/g)!.length;
      const tiles = pages.slice(1).map((page) => tileOf(page, body));
      faces.push({ name, paper, body, promised, pages, tiles });
    }
  }
}, 300_000);

afterAll(() => printer.close());

const width = ({ left, right }: Box) => right - left;
const height = ({ top, bottom }: Box) => bottom - top;

/** The page finds its place on the body by the outline, which it draws whole and shows in part. */
function tileOf(page: ReadPage, body: Box): Tile {
  const name = page.texts
    .map(({ text }) => text)
    .join('')
    .match(/Tile\s*([A-Z]\d)/)![1]!;
  const near = (a: number, b: number) => Math.abs(a - b) < 0.02;
  const outline = page.paths.find(({ box }) => near(width(box), width(body)) && near(height(box), height(body)));
  if (!outline) throw new Error(`tile ${name} has no outline of true size`);
  const origin = [outline.box.left - body.left, outline.box.top - body.top] as const;
  const { left, right, top, bottom } = outline.clip;
  const rings = page.paths.flatMap(({ box, curved, lineWidth }): [number, number][] =>
    curved && near(lineWidth, 0.25) && near(width(box), 8) && near(height(box), 8)
      ? [[(box.left + box.right) / 2 - origin[0], (box.top + box.bottom) / 2 - origin[1]]]
      : [],
  );
  const window = { left: left - origin[0], right: right - origin[0], top: top - origin[1], bottom: bottom - origin[1] };
  return { ...page, name, origin, outline, window, rings };
}

const eachTile = (check: (tile: Tile, face: Face) => void) => {
  expect(faces.map(({ name }) => name)).toEqual([
    'tarn/top.pdf',
    'tarn/back.pdf',
    'tarn/top-left.pdf',
    'tarn/back-left.pdf',
    'carr/top.pdf',
    'carr/back.pdf',
  ]);
  for (const face of faces) for (const tile of face.tiles) check(tile, face);
};

describe('the tiles of a face', () => {
  test('are a page each, after the page that says how they lie', () => {
    for (const { name, pages, promised, paper } of faces) {
      expect(pages.length, name).toBe(promised + 1);
      const said = pages.map(({ texts }) =>
        texts
          .map(({ text }) => text)
          .join('')
          .replace(/\s+/g, ''),
      );
      pages.forEach(({ widthMm, heightMm }, i) => {
        expect(Math.abs(widthMm - PAPERS[paper][0]), name).toBeLessThan(0.2);
        expect(Math.abs(heightMm - PAPERS[paper][1]), name).toBeLessThan(0.2);
        expect(said[i], name).toContain(`page${i + 1}of${pages.length}`);
        expect(said[i], name).toContain('Nocard');
      });
      expect(said[0]).toContain('measurethebarinbothdirectionsbeforeuse');
    }
  });

  test('have a bar of 100 mm in both directions', () => {
    eachTile(({ paths, name }) => {
      const bars = paths.filter(
        ({ lineWidth, strokes }) => Math.abs(lineWidth - 0.6) < 0.01 && strokes[0]!.length === 2,
      );
      const across = bars.filter(({ box }) => height(box) < 0.01).map(({ box }) => width(box));
      const along = bars.filter(({ box }) => width(box) < 0.01).map(({ box }) => height(box));
      expect([across.length, along.length], name).toEqual([1, 1]);
      for (const length of [...across, ...along]) expect(Math.abs(length - 100), name).toBeLessThan(0.2);
    });
  });

  test('put nothing where a printer cannot print', () => {
    for (const { pages, name } of faces)
      for (const [i, { widthMm, heightMm, paths, texts }] of pages.entries()) {
        const inked = [
          ...paths.filter((path) => !isPaper(path)).map(({ box, clip }) => meet(box, clip)),
          ...texts.map(({ box }) => box),
        ].filter((box) => width(box) >= 0 && height(box) >= 0);
        expect(inked.length).toBeGreaterThan(10);
        for (const box of inked)
          expect(
            Math.min(box.left, box.top, widthMm - box.right, heightMm - box.bottom),
            `${name}, page ${i + 1}`,
          ).toBeGreaterThanOrEqual(6);
      }
  });

  test('show the marks they share at the same place of the body, each whole', () => {
    eachTile((tile, { tiles }) => {
      expect(tile.rings.length, tile.name).toBe(4);
      for (const [x, y] of tile.rings) {
        const { left, right, top, bottom } = tile.window;
        expect(Math.min(x - left, right - x, y - top, bottom - y), tile.name).toBeGreaterThan(4);
      }
      for (const other of tiles.filter((one) => beside(tile.name, one.name))) {
        const shared = tile.rings.filter((a) => other.rings.some((b) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 0.02));
        expect(shared.length, `${tile.name} and ${other.name}`).toBe(2);
        const both = meet(tile.window, other.window);
        expect(Math.min(width(both), height(both)), `${tile.name} and ${other.name}`).toBeGreaterThanOrEqual(10);
      }
    });
  });

  test('together show the whole outline, and some room round it', () => {
    for (const { body, tiles, name } of faces) {
      for (let x = body.left - 3; x <= body.right + 3; x += 2.5)
        for (let y = body.top - 3; y <= body.bottom + 3; y += 2.5) {
          const shown = tiles.some(
            ({ window }) => x >= window.left && x <= window.right && y >= window.top && y <= window.bottom,
          );
          if (!shown) expect(`${x} ${y}`, name).toBe('shown');
        }
    }
  });

  test('say who joins them, upright or along the edge, and never mirrored', () => {
    eachTile(({ name, texts }, { tiles }) => {
      const said = texts
        .map(({ text }) => text)
        .join('')
        .replace(/\s+/g, '');
      for (const other of tiles)
        expect(said.includes(`joins${other.name}`), `${name}, ${other.name}`).toBe(beside(name, other.name));
      for (const { mirrored, turn } of texts) expect([mirrored, turn === 0 || turn === 90]).toEqual([false, true]);
    });
  });
});

/** The ground of the page, white and not inked. */
const isPaper = ({ lineWidth, strokes, curved, clip, box }: PaintedPath): boolean =>
  lineWidth === 0 && !curved && strokes.length === 1 && width(meet(box, clip)) > 150 && height(meet(box, clip)) > 200;

/** Whether two names are of tiles side by side, or one above the other. */
function beside(a: string, b: string): boolean {
  const [rows, columns] = [a.charCodeAt(0) - b.charCodeAt(0), Number(a.slice(1)) - Number(b.slice(1))];
  return Math.abs(rows) + Math.abs(columns) === 1;
}
