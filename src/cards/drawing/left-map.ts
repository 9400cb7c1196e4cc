/** The thickness map: how much wood is left over each place, in steps that a print in black keeps apart. */
import { bounds } from '../../geometry/measure.ts';
import { thinnerThan } from '../../geometry/solid/bands.ts';
import type { Region } from '../../geometry/polygon.ts';
import type { Drawing, Hatch, Mark, Table } from '../card.ts';
import type { Desk } from '../station.ts';
import { tenth } from './coordinates.ts';
import { say } from '../station.ts';
import { outlineMarks } from './plan.ts';

/** The thickest first: each is drawn over the one before. */
const STEPS = [
  [4, 'left-thick'],
  [3, 'left-thinner'],
  [2, 'left-thin'],
  [1, 'left-thinnest'],
] as const;

/** Less than this is nothing: what rounding leaves, mm. */
const NOTHING_MM = 0.01;

/** Seen from the top; the thinnest place is marked. */
export function leftMap(desk: Desk): Drawing {
  const field = desk.use.fact('body.field');
  const area = (hatch: Hatch, rings: Region): readonly Mark[] =>
    rings.length === 0 ? [] : [{ kind: 'region', hatch, rings: rings.map((ring) => [...ring].map(tenth)) }];
  return {
    id: 'thickness-map',
    caption: say('caption.left-map'),
    scale: 2.5,
    marks: [
      ...STEPS.flatMap(([step, hatch]) =>
        area(hatch, thinnerThan(field, desk.use.fact(`map.step.${step}`).value / 1e6)),
      ),
      ...area('nothing', thinnerThan(field, NOTHING_MM)),
      ...outlineMarks(desk),
      ...thinnestMark(desk),
    ],
  };
}

/** A ring round the place; its word stands outside the body, where no hatching runs through it. */
function thinnestMark(desk: Desk): readonly Mark[] {
  const thinnest = desk.use.fact('body.thinnest');
  if (!thinnest) return [];
  const [x, y] = [tenth(thinnest.left.xMm), tenth(thinnest.left.yMm)];
  const { minX, maxX } = bounds(desk.use.fact('outline.polygon'))!;
  const right = x > (minX + maxX) / 2;
  const [from, to] = right ? [x + RING_MM, tenth(maxX + 8)] : [x - RING_MM, tenth(minX - 8)];
  return [
    { kind: 'circle', line: 'leader', x, y, radius: RING_MM },
    { kind: 'line', line: 'leader', points: [from, y, to, y], closed: false },
    { kind: 'label', x: to, y, text: say('drawing.thinnest'), anchor: right ? 'start' : 'end' },
  ];
}

const RING_MM = 6;

/** What the hatchings of the map stand for. */
export const mapTable = (desk: Desk): Table => ({
  title: say('map.steps'),
  columns: [say('column.hatch'), say('column.less-than')],
  rows: STEPS.map(([step, hatch]) => [say(`map.${hatch}`), desk.figure(`map.step.${step}`)]),
});
