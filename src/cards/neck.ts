/** The neck on the cards: its pocket measured at two points, and what neck and bridge come to. */
import type { Arg, Check, Line, Literal, Mark, Table } from './card.ts';
import { byEye, often } from './common.ts';
import { hundredth } from './drawing/coordinates.ts';
import { cutTitle } from './machining.ts';
import { surfaceName } from './surface-name.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

const label = (text: string): Literal => ({ kind: 'literal', of: 'point', text });

/** Numbers of the two points, as they stand in the drawing and at the boxes. */
const NUMBERS = { tail: '1', neck: '2' } as const;
const ENDS = ['tail', 'neck'] as const;

/** The pocket's name, where the neck has one. */
export const pocketName = ({ subject: { spec }, use }: Desk): string | undefined =>
  spec.neck.pocket && use(spec.neck.pocket);

/** Depth at both points, and what it falls between them where the spec limits that. */
export function pocketChecks(desk: Desk): readonly Check[] {
  const { spec } = desk.subject;
  const name = pocketName(desk)!;
  const { way, from } = desk.use.fact(`cavity.${name}.measuring`);
  const role = way === 'depth' ? 'depth' : 'height';
  const what = say(`machining.check.${way}`, {
    cavity: cutTitle(desk, 'cavities', name),
    from: surfaceName(from),
  });
  const at = (ends: readonly (typeof ENDS)[number][]): Check => ({
    what,
    limits: desk.limits(`neck.reading.${ends[0]!}`, role),
    gauge: desk.gauge(role).name,
    often: often(desk),
    boxes: ends.map((end) => label(NUMBERS[end])),
  });
  const { falls: given } = spec.cavities![name]!;
  const falls = given && desk.use(given);
  return [
    ...(desk.use.fact('neck.fall').value === 0 ? [at(ENDS)] : ENDS.map((end) => at([end]))),
    ...(falls?.causes
      ? [
          {
            what: say('machining.check.fall', { tail: label(NUMBERS.tail), neck: label(NUMBERS.neck) }),
            limits: desk.limits('neck.fall', 'lean'),
            gauge: desk.gauge('lean').name,
            often: often(desk),
            boxes: [label('')],
          },
        ]
      : []),
  ];
}

/** The two points, in a plan. */
export function pocketPoints(desk: Desk, flip: number): readonly Mark[] {
  if (pocketName(desk) === undefined) return [];
  return ENDS.map((end) => {
    const { x, y } = desk.use.fact(`neck.point.${end}`);
    return { kind: 'point', x: hundredth(x * flip), y: hundredth(y), number: label(NUMBERS[end]) };
  });
}

/** Go/no-go of the neck: what is tried in, and what its screws come to. */
export function neckChecks(desk: Desk, gauge: Check['gauge']): readonly Check[] {
  const { spec } = desk.subject;
  if (pocketName(desk) === undefined) return [];
  return [byEye(desk, say(spec.neck.screws ? 'sign-off.check.pocket-screws' : 'sign-off.check.pocket'), gauge)];
}

/** A column with its one cell, or nothing where the fact is not to be had. */
type Cell = readonly [string, Arg];

/** Frets, joint, saddles, strings; then the neck in its pocket. */
export function neckTables(desk: Desk): readonly Table[] {
  const { spec } = desk.subject;
  const joint = desk.use(spec.neck['joint-fret']).value;
  const has = (id: string, decimals: number, column: string): readonly Cell[] =>
    desk.has(id) ? [[column, desk.figure(id, { decimals })]] : [];
  const strings: readonly Cell[] = [
    ['frets', desk.figure(spec.neck.frets)],
    ['fret', { kind: 'literal', of: 'fret', text: String(joint) }],
    ['from-nut', desk.figure(`fret.${joint}.from-nut`, { decimals: 2 })],
    ['from-bridge', desk.figure('neck.joint-line', { decimals: 2 })],
    ['saddles', desk.figure('bridge.from-nut', { decimals: 2 })],
    ['saddle-treble', desk.figure('saddle.treble.stands', { decimals: 1 })],
    ['saddle-bass', desk.figure('saddle.bass.stands', { decimals: 1 })],
    ['travel', desk.figure(spec.bridge.travel)],
    ...has('bridge.string-height', 1, 'strings'),
  ];
  const seat: readonly Cell[] = [
    ...has('neck.leans', 2, 'angle'),
    ...has('neck.plane.joint', 1, 'plane-joint'),
    ...has('neck.plane.end', 1, 'plane-end'),
    ...has('neck.board-end', 1, 'board-end'),
    ...has('neck.board-clearance', 1, 'board-clearance'),
    ...has('neck.play', 2, 'heel-play'),
    ...has('neck.bite', 1, 'bite'),
  ];
  return [table(say('sign-off.neck'), strings), ...(seat.length > 0 ? [table(say('sign-off.neck-seat'), seat)] : [])];
}

const table = (title: Line, cells: readonly Cell[]): Table => ({
  title,
  columns: cells.map(([column]) => say(`column.${column}`)),
  rows: [cells.map(([, cell]) => cell)],
});
