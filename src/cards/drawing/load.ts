/** The load between the plates, seen from the front: boards, bodies on each other, stacks beside each other, the middle of the press. */
import { machineAt } from '../../facts/press-row.ts';
import type { Length } from '../../units/quantity.ts';
import type { Drawing, Mark } from '../card.ts';
import { figure } from '../figures.ts';
import { loadings } from '../pressing.ts';
import type { Desk } from '../station.ts';
import { say } from '../station.ts';
import { hundredth } from './coordinates.ts';

/** Between the two ways of loading, and between stacks beside each other, mm of the body: for the eye, no measure. */
const BETWEEN_MM = 260;
const GAP_MM = 30;

const mm = (q: Length): number => q.value / 1e6;

/** The middle of the glue stands under the middle of the press: a body that is no mirror image of itself stands off it. */
export function loadDrawing(desk: Desk): Drawing {
  const { use } = desk;
  const xs = [...use.fact('outline.polygon')].filter((_, i) => i % 2 === 0);
  const centre = mm(use.fact('joint.centre.x'));
  const [left, right] = [Math.min(...xs) - centre, Math.max(...xs) - centre];
  const width = right - left;
  const stacks = use.fact('press.side-by-side').value;
  let at = 0;
  const marks = loadings(desk).flatMap((loading): Mark[] => {
    const count = loading === 'stack' ? 1 : stacks;
    const pitch = width + GAP_MM;
    const middle = at + ((count - 1) * pitch) / 2;
    const starts = Array.from({ length: count }, (_, i) => at + i * pitch + left);
    const height = heightMm(desk, loading);
    const ends = [starts[0]! - 40, starts.at(-1)! + width + 40] as const;
    at += count * pitch + BETWEEN_MM;
    return [
      ...starts.flatMap((x) => pile(desk, loading, x, width)),
      ...[0, height].map((y) => stroke('cut', [ends[0], y, ends[1], y])),
      stroke('centre', [middle, -60, middle, height + 60]),
      {
        kind: 'dimension',
        from: [ends[1], 0],
        to: [ends[1], hundredth(height)],
        offset: -60,
        text: figure(use, `press.${loading}.height`, { decimals: 0, single: true }),
      },
      {
        kind: 'label',
        x: hundredth(middle),
        y: -100,
        text:
          loading === 'stack'
            ? say('press.load.stack')
            : say('press.load.row', { stacks: desk.figure('press.side-by-side') }),
        anchor: 'middle',
      },
    ];
  });
  return { id: 'load', caption: say('press.load-caption'), scale: 10, marks };
}

function heightMm(desk: Desk, loading: 'stack' | 'row'): number {
  const layers = desk.use.fact(`press.${loading}.layers`).value;
  return layers * mm(desk.use.fact('thickness.blank')) + (layers + 1) * boardMm(desk);
}

const boardMm = (desk: Desk): number =>
  mm(desk.use(machineAt(desk.subject, desk.use, 'press').need('board', (machine) => machine.board)));

/** A board, then each body cap up with a board on it. */
function pile(desk: Desk, loading: 'stack' | 'row', x: number, width: number): Mark[] {
  const board = boardMm(desk);
  const blank = mm(desk.use.fact('thickness.blank'));
  const back = mm(desk.use.fact('thickness.part.back.sized'));
  const layers = desk.use.fact(`press.${loading}.layers`).value;
  const box = (hatch: 'levelling-board' | 'back' | 'cap', low: number, high: number): Mark => ({
    kind: 'area',
    hatch,
    points: [x, low, x + width, low, x + width, high, x, high].map(hundredth),
  });
  return [
    box('levelling-board', 0, board),
    ...Array.from({ length: layers }, (_, i) => board + i * (blank + board)).flatMap((low) => [
      box('back', low, low + back),
      box('cap', low + back, low + blank),
      box('levelling-board', low + blank, low + blank + board),
    ]),
  ];
}

const stroke = (line: 'cut' | 'centre', points: readonly number[]): Mark => ({
  kind: 'line',
  line,
  points: points.map(hundredth),
  closed: false,
});
