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

const stroke = (path: string, width = 0.25): string => `<path d="${path}" stroke="#000" stroke-width="${width}"/>`;

/** Tiles of hatching. Air and metal are plain. */
const TILES: Readonly<
  Partial<Record<SketchFill, { readonly size: number; readonly turn: number; readonly in: string }>>
> = {
  wood: { size: 2.4, turn: 45, in: stroke('M0 1.2H2.4') },
  cap: { size: 1.3, turn: -45, in: stroke('M0 .65H1.3') },
  soft: { size: 0.8, turn: 45, in: stroke('M0 .4H.8M.4 0V.8') },
  bed: { size: 1.6, turn: 0, in: stroke('M0 .8H1.6') },
  removed: { size: 1.6, turn: 45, in: '<circle cx=".8" cy=".8" r=".28"/>' },
};
const PLAIN: Readonly<Partial<Record<SketchFill, string>>> = { air: '#fff', metal: '#ccc' };

const HEADS = { thin: { long: 1.8, half: 0.5 }, wrong: { long: 2.6, half: 1.2 } } as const;
const CROSS = { radius: 2, arm: 0.95 };
/** White round what is wrong: it stands out from any hatching. */
const HALO = 0.5;

/** `uid` is unique in the page; `title` says what it shows to those who cannot see it. */
export function drawSketch({ from, marks }: Sketch, uid: string, title: string): string {
  const id = (fill: SketchFill) => identifier(uid, fill);
  const fills = [...new Set(marks.flatMap((mark) => (mark.kind === 'shape' && mark.fill ? [mark.fill] : [])))];
  const tiles = fills.map((fill) => tile(fill, id(fill))).join('');
  return (
    `<svg class="sketch" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escaped(title)}" ` +
    `width="${SKETCH_MM.width}mm" height="${SKETCH_MM.height}mm" ` +
    `viewBox="${num(from[0])} ${num(from[1])} ${SKETCH_MM.width} ${SKETCH_MM.height}">` +
    `${tiles === '' ? '' : `<defs>${tiles}</defs>`}${marks.map((mark) => drawn(mark, id)).join('')}</svg>`
  );
}

function tile(fill: SketchFill, id: string): string {
  const made = TILES[fill];
  if (!made) return '';
  return (
    `<pattern id="${id}" width="${made.size}" height="${made.size}" patternUnits="userSpaceOnUse" ` +
    `patternTransform="rotate(${made.turn})"><path d="M0 0H${made.size}V${made.size}H0Z" fill="#fff"/>${made.in}</pattern>`
  );
}

function drawn(mark: SketchMark, id: (fill: SketchFill) => string): string {
  if (mark.kind === 'cross') return cross(mark.at);
  if (mark.kind === 'arrow') return arrow(mark);
  const { path, fill, line } = mark;
  const d = path.replace(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g, (digits) => num(Number(digits))).replace(/ ?([A-Z]) ?/g, '$1');
  const paint = fill ? (PLAIN[fill] ?? `url(#${id(fill)})`) : 'none';
  return `${line === 'wrong' ? halo(`<path d="${d}"`, LINES.wrong.width) : ''}<path d="${d}" fill="${paint}"${line ? pen(line) : ''}/>`;
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
