/** A check's sketch as SVG: lines and fills that black ink alone tells apart, what is wrong drawn heaviest. */
import type { At, Sketch, SketchFill, SketchLine, SketchMark } from '../findings/sketch.ts';
import { SKETCH_MM } from '../findings/sketch.ts';
import { num } from './drawing/paper.ts';
import { escaped, identifier } from './markup.ts';

/** Width, and dashes where it has any, in millimetres of paper. */
const LINES: Readonly<Record<SketchLine, { readonly width: number; readonly dashes?: string }>> = {
  edge: { width: 0.5 },
  thin: { width: 0.25 },
  ideal: { width: 0.3, dashes: '1.6 0.9' },
  hidden: { width: 0.3, dashes: '0.8 0.8' },
  centre: { width: 0.25, dashes: '4 0.8 0.8 0.8' },
  saw: { width: 0.5, dashes: '2.6 0.8 0.6 0.8' },
  // Half of it stays: the air of the cut lies on the other half.
  wall: { width: 1 },
  wrong: { width: 0.9 },
};

/** Hatching: lines so far apart, at one slope or at two. Lines, no pattern: a browser prints a pattern as dots. */
interface Hatching {
  readonly apart: number;
  /** How far a line falls along the way. */
  readonly slopes: readonly (-1 | 0 | 1)[];
  readonly pen: string;
}
const HATCHED = 'stroke="#000" stroke-width="0.25"';
const HATCHINGS: Readonly<Partial<Record<SketchFill, Hatching>>> = {
  wood: { apart: 3.4, slopes: [1], pen: HATCHED },
  cap: { apart: 1.9, slopes: [-1], pen: HATCHED },
  soft: { apart: 1.1, slopes: [1, -1], pen: HATCHED },
  bed: { apart: 1.6, slopes: [0], pen: HATCHED },
  // Dashes of no length with round ends: dots.
  removed: {
    apart: 2.2,
    slopes: [1],
    pen: 'stroke="#000" stroke-width="0.56" stroke-linecap="round" stroke-dasharray="0 2"',
  },
};

const HEADS = { thin: { long: 1.8, half: 0.5 }, wrong: { long: 2.6, half: 1.2 } } as const;
const CROSS = { radius: 2, arm: 0.95 };
/** White round what is wrong: it stands out from any hatching. */
const HALO = 0.5;

/** `uid` is unique in the page; `title` says what it shows to those who cannot see it. */
export function drawSketch({ from, marks }: Sketch, uid: string, title: string): string {
  const id = (what: string) => identifier(uid, what);
  const fills = [...new Set(marks.flatMap((mark) => (mark.kind === 'shape' && mark.fill ? [mark.fill] : [])))];
  const hatchings = fills.map((fill) => hatching(fill, id(fill), from)).join('');
  const drawn = marks.map((mark, i) => {
    if (mark.kind === 'cross') return cross(mark.at);
    return mark.kind === 'arrow' ? arrow(mark) : area(mark, id, id(String(i)));
  });
  return (
    `<svg class="sketch" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escaped(title)}" ` +
    `width="${SKETCH_MM.width}mm" height="${SKETCH_MM.height}mm" ` +
    `viewBox="${num(from[0])} ${num(from[1])} ${SKETCH_MM.width} ${SKETCH_MM.height}">` +
    `${hatchings === '' ? '' : `<defs>${hatchings}</defs>`}${drawn.join('')}</svg>`
  );
}

/** Over the whole frame; each area shows its own part of it. */
function hatching(fill: SketchFill, id: string, [left, top]: At): string {
  const made = HATCHINGS[fill];
  if (!made) return '';
  const { width, height } = SKETCH_MM;
  const lines = made.slopes.flatMap((slope) => {
    const reach = slope === 0 ? 0 : width;
    const first = top - (slope === 1 ? reach : 0);
    return Array.from(
      { length: Math.ceil((height + reach) / made.apart) },
      (_, i) => `M${num(left)} ${num(first + (i + 0.5) * made.apart)}l${width} ${slope * width}`,
    );
  });
  return `<path id="${id}" d="${lines.join('')}" fill="none" ${made.pen}/>`;
}

type Area = Extract<SketchMark, { kind: 'shape' }>;

function area({ path, fill, line }: Area, id: (fill: SketchFill) => string, clip: string): string {
  const d = path.replace(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g, (digits) => num(Number(digits))).replace(/ ?([A-Z]) ?/g, '$1');
  const paint = fill === undefined ? 'none' : fill === 'metal' ? '#ccc' : '#fff';
  const under = line === 'wrong' ? halo(`<path d="${d}"`, LINES.wrong.width) : '';
  const body = `<path d="${d}" fill="${paint}"${line ? pen(line) : ''}/>`;
  if (fill === undefined || !HATCHINGS[fill]) return under + body;
  return `${under}${body}<clipPath id="${clip}"><path d="${d}"/></clipPath><use href="#${id(fill)}" clip-path="url(#${clip})"/>`;
}

function pen(line: SketchLine): string {
  const { width, dashes } = LINES[line];
  const dash = dashes ? ` stroke-dasharray="${dashes}"` : '';
  return ` stroke="#000" stroke-width="${width}"${dash} stroke-linejoin="round"`;
}

const halo = (start: string, width: number): string =>
  `${start} fill="none" stroke="#fff" stroke-width="${num(width + 2 * HALO)}" stroke-linejoin="round"/>`;

function cross([x, y]: At): string {
  const { radius, arm } = CROSS;
  return (
    `<circle cx="${num(x)}" cy="${num(y)}" r="${radius}" stroke="#fff" stroke-width="${HALO}"/>` +
    `<path d="M${num(x - arm)} ${num(y - arm)}l${2 * arm} ${2 * arm}m0 ${-2 * arm}l${-2 * arm} ${2 * arm}" ` +
    `fill="none" stroke="#fff" stroke-width="0.7"/>`
  );
}

function arrow({ from, to, line, both }: Extract<SketchMark, { kind: 'arrow' }>): string {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const along: At = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const { long, half } = HEADS[line];
  const off = ([x, y]: At, far: number, aside = 0): string =>
    `${num(x + along[0] * far - along[1] * aside)} ${num(y + along[1] * far + along[0] * aside)}`;
  const head = (tip: At, way: 1 | -1) =>
    `M${off(tip, 0)}L${off(tip, -way * long, half)}L${off(tip, -way * long, -half)}Z`;
  const heads = head(to, 1) + (both ? head(from, -1) : '');
  const shaft = `M${off(from, both ? long * 0.8 : 0)}L${off(to, -long * 0.8)}`;
  const under = line === 'wrong' ? halo(`<path d="${shaft}"`, LINES.wrong.width) + halo(`<path d="${heads}"`, 0) : '';
  return `${under}<path d="${shaft}" fill="none"${pen(line)}/><path d="${heads}"/>`;
}
