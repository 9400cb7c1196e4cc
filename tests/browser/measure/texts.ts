/// <reference lib="dom" />
/** Every text that a page shows, with its size, colours and place: gathered in the browser, judged outside it. */
import type { Page } from 'puppeteer';
import type { Quad } from './quad.ts';

/** Red, green, blue from 0 to 255, and how far it covers from 0 to 1. */
export type Colour = readonly [number, number, number, number];

/** What the reader does with a text; each has its own least size. */
export type Role = 'key number' | 'key words' | 'step' | 'check' | 'drawing' | 'other';

export interface TextRun {
  readonly text: string;
  /** The element it stands in, as a selector would name it. */
  readonly where: string;
  readonly role: Role;
  /** First family asked for. */
  readonly family: string;
  readonly weight: number;
  /** Size of the em in millimetres of paper. */
  readonly sizeMm: number;
  readonly colour: Colour;
  /** What lies behind it: backgrounds from the innermost outwards down to the paper. */
  readonly ground: readonly Colour[];
  /** A ground that a browser leaves out when it saves ink is none. */
  readonly groundKept: boolean;
  /** Boxes around the letters, from the capitals' top to under the base line; one for each line. None where `content` made it. */
  readonly quads: readonly Quad[];
}

/** In mm of the em: from above the tallest letters to the lowest. */
const INK = { up: 0.7, down: 0.2 };

export const textsOn = (page: Page): Promise<TextRun[]> => page.evaluate(gather, INK);

/** Runs in the browser: it may use nothing of this file. */
function gather(ink: { up: number; down: number }): TextRun[] {
  const MM = 25.4 / 96;
  const canvas = document.createElement('canvas').getContext('2d')!;
  const metrics = new Map<string, { up: number; down: number }>();
  const runs: TextRun[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT);
  for (let node: Node | null = walker.currentNode; node; node = walker.nextNode()) {
    if (node instanceof Element) ofContent(node);
    else if (node.textContent!.trim() !== '') ofNode(node);
  }
  return runs;

  function ofNode(node: Node): void {
    const element = node.parentElement!;
    if (hidden(element)) return;
    const style = getComputedStyle(element);
    const quads = element instanceof SVGElement ? quadsInDrawing(element, style) : quadsOfLines(node, style);
    if (quads.length > 0) push(element, style, node.textContent!, quads);
  }

  /** What ::before and ::after add; of a counter, all digits. Where it stands is seen on paper alone. */
  function ofContent(element: Element): void {
    if (hidden(element)) return;
    for (const which of ['::before', '::after']) {
      const style = getComputedStyle(element, which);
      const said = style.content.match(/"(?:[^"\\]|\\.)*"|counters?\([^)]*\)/g) ?? [];
      const text = said.map((part) => (part.startsWith('"') ? part.slice(1, -1) : '0123456789')).join('');
      if (style.display !== 'none' && text.trim() !== '') push(element, style, text, []);
    }
  }

  function push(element: Element, style: CSSStyleDeclaration, text: string, quads: Quad[]): void {
    const drawn = element instanceof SVGElement;
    const { colours, kept } = drawn ? groundInDrawing(element, style) : groundOf(element);
    runs.push({
      text: text.replace(/\s+/g, ' ').trim(),
      where: nameOf(element),
      role: roleOf(element),
      family: style.fontFamily.split(',')[0]!.replace(/["']/g, '').trim(),
      weight: Number(style.fontWeight),
      sizeMm: Number.parseFloat(style.fontSize) * MM * (drawn ? scaleOf(element) : 1),
      colour: seenThrough(colourOf(drawn ? style.fill : style.color), element),
      ground: colours,
      groundKept: kept,
      quads,
    });
  }

  function roleOf(element: Element): Role {
    if (element.closest('svg')) return 'drawing';
    if (element.closest('.key-value') && !element.closest('.unit'))
      return element.closest('.in-words') ? 'key words' : 'key number';
    if (element.closest('.steps')) return 'step';
    if (element.closest('.check-what, .check-limits') && !element.closest('.accept')) return 'check';
    return 'other';
  }

  function nameOf(element: Element): string {
    const names: string[] = [];
    for (let at: Element | null = element; at && names.length < 3 && at !== document.body; at = at.parentElement)
      names.unshift([at.localName, ...at.classList].join('.'));
    return names.join(' ');
  }

  /** Not shown at all, or kept for screen readers: clipped to a point. */
  function hidden(element: Element): boolean {
    if (!element.checkVisibility({ visibilityProperty: true })) return true;
    for (let at: Element | null = element; at; at = at.parentElement) {
      const { overflow, position } = getComputedStyle(at);
      if (position === 'absolute' && overflow === 'hidden' && at.clientWidth <= 1) return true;
      if (at instanceof SVGElement && ['title', 'desc', 'defs', 'style'].includes(at.localName)) return true;
    }
    return false;
  }

  /** Above and below the base line, in pixels as lines of text are laid out. */
  function metricsOf(style: CSSStyleDeclaration): { up: number; down: number } {
    const font = `${style.fontWeight} 1000px ${style.fontFamily}`;
    let of = metrics.get(font);
    if (!of) {
      canvas.font = font;
      const { fontBoundingBoxAscent, fontBoundingBoxDescent } = canvas.measureText('H');
      of = { up: fontBoundingBoxAscent / 1000, down: fontBoundingBoxDescent / 1000 };
      metrics.set(font, of);
    }
    return of;
  }

  function quadsOfLines(node: Node, style: CSSStyleDeclaration): Quad[] {
    const range = document.createRange();
    range.selectNodeContents(node);
    const size = Number.parseFloat(style.fontSize);
    const up = Math.round(metricsOf(style).up * size);
    return [...range.getClientRects()]
      .filter(({ width, height }) => width > 0 && height > 0)
      .map(({ left, right, top }) => {
        const base = top + scrollY + up;
        return quad(left, base - ink.up * size, right, base + ink.down * size);
      });
  }

  function quad(left: number, top: number, right: number, bottom: number, place?: DOMMatrix): Quad {
    const corner = (x: number, y: number) => {
      const at = place ? new DOMPoint(x, y).matrixTransform(place) : { x, y };
      return { x: at.x * MM, y: (at.y + (place ? scrollY : 0)) * MM };
    };
    return [corner(left, top), corner(right, top), corner(right, bottom), corner(left, bottom)];
  }

  function quadsInDrawing(element: SVGElement, style: CSSStyleDeclaration): Quad[] {
    if (!(element instanceof SVGGraphicsElement)) return [];
    const box = element.getBBox();
    const place = element.getScreenCTM();
    if (!place || box.width === 0) return [];
    const size = Number.parseFloat(style.fontSize);
    const { up, down } = metricsOf(style);
    // The box is as high as the font says; the base line divides it.
    const base = box.y + (box.height * up) / (up + down);
    return [quad(box.x, base - ink.up * size, box.x + box.width, base + ink.down * size, place)];
  }

  function scaleOf(element: Element): number {
    const place = element instanceof SVGGraphicsElement ? element.getScreenCTM() : null;
    return place ? Math.hypot(place.a, place.b) : 1;
  }

  function colourOf(text: string): Colour {
    const [red = 0, green = 0, blue = 0, alpha = 1] = text.match(/[\d.]+/g)?.map(Number) ?? [];
    return text.startsWith('rgb') ? [red, green, blue, alpha] : [0, 0, 0, 0];
  }

  function seenThrough([red, green, blue, alpha]: Colour, element: Element): Colour {
    let through = alpha;
    for (let at: Element | null = element; at; at = at.parentElement) through *= Number(getComputedStyle(at).opacity);
    return [red, green, blue, through];
  }

  function groundOf(from: Element): { colours: Colour[]; kept: boolean } {
    const colours: Colour[] = [];
    let kept = true;
    for (let at: Element | null = from; at && !colours.some(([, , , alpha]) => alpha >= 1); at = at.parentElement) {
      const style = getComputedStyle(at);
      const colour = colourOf(style.backgroundColor);
      if (colour[3] === 0) continue;
      colours.push(colour);
      kept &&= style.printColorAdjust === 'exact';
    }
    return { colours: [...colours, [255, 255, 255, 1]], kept };
  }

  /** A halo of half a millimetre is ground enough; else what was drawn before it and lies under the middle of the text. */
  function groundInDrawing(element: SVGElement, style: CSSStyleDeclaration): { colours: Colour[]; kept: boolean } {
    const outside = groundOf(element.closest('svg')!.parentElement ?? document.body);
    const halo = Number.parseFloat(style.strokeWidth) * MM * scaleOf(element);
    if (style.paintOrder.startsWith('stroke') && style.stroke !== 'none' && halo >= 0.9)
      return { colours: [colourOf(style.stroke), ...outside.colours], kept: true };
    const colours: Colour[] = [];
    for (const shape of element.closest('svg')!.querySelectorAll('path, rect, circle, ellipse, polygon')) {
      const after = shape.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING;
      if (!after || shape.closest('defs') || !(shape instanceof SVGGeometryElement)) continue;
      const { fill, fillOpacity } = getComputedStyle(shape);
      if (fill === 'none' || !holds(shape, element)) continue;
      const [red, green, blue, alpha] = fill.startsWith('url') ? darkestOf(fill) : colourOf(fill);
      colours.unshift([red, green, blue, alpha * Number(fillOpacity)]);
    }
    return { colours: [...colours, ...outside.colours], kept: outside.kept };
  }

  function holds(shape: SVGGeometryElement, text: SVGElement): boolean {
    const from = (text as SVGGraphicsElement).getScreenCTM();
    const to = shape.getScreenCTM();
    if (!from || !to) return false;
    const { x, y, width, height } = (text as SVGGraphicsElement).getBBox();
    const middle = new DOMPoint(x + width / 2, y + height / 2).matrixTransform(to.inverse().multiply(from));
    return shape.isPointInFill(middle);
  }

  /** Of a pattern, the line that is hardest to read across. */
  function darkestOf(fill: string): Colour {
    const id = fill.match(/#([^"')]+)/)?.[1] ?? '';
    const parts = [...(document.getElementById(id)?.querySelectorAll('*') ?? [])].flatMap((part) => {
      const { stroke, fill: own } = getComputedStyle(part);
      return [stroke, own].filter((one) => one.startsWith('rgb')).map(colourOf);
    });
    return parts.toSorted((a, b) => a[0] + a[1] + a[2] - b[0] - b[1] - b[2])[0] ?? [0, 0, 0, 0];
  }
}
