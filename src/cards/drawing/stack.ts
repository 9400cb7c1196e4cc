/** The stack of thicknesses, full size: what lies on what, from the blank to the body as it leaves the machine. */
import { facesBack, highestPoint } from '../../facts/parts.ts';
import type { Length } from '../../units/quantity.ts';
import type { Drawing, Mark } from '../card.ts';
import { figure } from '../figures.ts';
import type { Ref } from '../figures.ts';
import type { Desk } from '../station.ts';
import { say } from '../station.ts';

const WIDTH_MM = 60;
const mm = (q: Length): number => Math.round(q.value / 10_000) / 100;

export function stack(desk: Desk): Drawing {
  const { use } = desk;
  const cap = desk.route.parts.includes('cap');
  const back = cap ? mm(use.fact('thickness.part.back.sized')) : 0;
  const blank = mm(use.fact('thickness.blank'));
  const box = (hatch: Extract<Mark, { kind: 'area' }>['hatch'], low: number, high: number): Mark => ({
    kind: 'area',
    hatch,
    points: [0, low, WIDTH_MM, low, WIDTH_MM, high, 0, high],
  });
  const glueTop = cap ? blank - mm(use.fact('thickness.part.cap.sized')) : 0;
  const layers = cap
    ? [box('back', 0, back), box('glue', back, glueTop), box('cap', glueTop, blank)]
    : [box('slab', 0, blank)];
  return {
    id: 'stack',
    caption: say(cap ? 'caption.stack' : 'caption.stack-slab'),
    scale: 1,
    marks: [...layers, ...level(desk, blank), ...dimensions(desk, cap, back, glueTop, blank)],
  };
}

/** Where the back is after facing and the top after carving, as lines through the blank. */
function level(desk: Desk, blank: number): Mark[] {
  const { use, subject } = desk;
  const faced = facesBack(subject.spec) ? mm(use.fact('thickness.body.back-faced')) : blank;
  const top = mm(use.fact(`thickness.body.machined.${highestPoint(subject.spec)}`));
  const line = (y: number): Mark => ({ kind: 'line', line: 'cut', points: [-4, y, WIDTH_MM + 4, y], closed: false });
  const skim = Math.round((blank - faced) * 100) / 100;
  return [...(skim > 0 ? [line(skim)] : []), line(Math.round((skim + top) * 100) / 100)];
}

function dimensions(desk: Desk, cap: boolean, back: number, glueTop: number, blank: number): Mark[] {
  const dimension = (ref: Ref, low: number, high: number, offset: number): Mark => ({
    kind: 'dimension',
    from: [WIDTH_MM, low],
    to: [WIDTH_MM, high],
    offset: -offset,
    text: figure(desk.use, ref, { single: true }),
  });
  return [
    dimension('thickness.blank', 0, blank, cap ? 26 : 12),
    ...(cap
      ? [dimension('thickness.part.back.sized', 0, back, 12), dimension('thickness.part.cap.sized', glueTop, blank, 12)]
      : []),
  ];
}
