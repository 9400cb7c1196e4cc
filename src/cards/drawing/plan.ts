/** Plans: the face being worked, as it lies there. Seen from the back, left and right change places. */
import { highestPoint } from '../../facts/parts.ts';
import { namesOf } from '../../facts/row.ts';
import { mirror } from '../../geometry/transform.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import type { Drawing, Line, LineKind, Mark } from '../card.ts';
import type { SetupId } from '../cutting-order.ts';
import type { Desk } from '../station.ts';
import { hundredth } from './coordinates.ts';
import { cuts } from './cuts.ts';
import { lettered } from './lettered.ts';
import { say } from '../station.ts';
import { tackMarks } from './tacks.ts';

export type View = 'top' | 'back';

export interface PlanWanted {
  readonly caption: Line;
  readonly view: View;
  readonly outline?: LineKind;
  readonly rough?: boolean;
  readonly trim?: boolean;
  /** Relief cuts of this saw line. */
  readonly reliefs?: 'rough' | 'trim';
  readonly blank?: boolean;
  readonly seam?: boolean;
  /** Cavities and holes of this set-up; those of the other one hidden. */
  readonly setup?: SetupId;
  /** Its cuts bear neither letters nor numbers: who draws it names them. */
  readonly bare?: true;
  /** Where a flaw of the top is cut away or covered. */
  readonly flaws?: boolean;
  readonly pattern?: boolean;
  readonly points?: boolean;
  /** Where the pair's number is written: on both halves of a matched cap. */
  readonly pairs?: boolean;
  /** Where a tack of the lamination may stand, and where each does. */
  readonly tacks?: boolean;
}

/** Numbered points on the part as it is at this station, its saw line and location holes. */
export const pointsPlan = (desk: Desk): Drawing =>
  plan(desk, {
    caption: say('caption.points'),
    view: 'top',
    outline: 'hidden',
    rough: true,
    points: true,
    pattern: true,
  });

export function plan(desk: Desk, wanted: PlanWanted): Drawing {
  const { use } = desk;
  const flip = wanted.view === 'back' ? -1 : 1;
  const outline = (line: LineKind, polygon: Polygon): Mark => ({
    kind: 'line',
    line,
    points: [...(flip < 0 ? mirror(polygon) : polygon)].map(hundredth),
    closed: true,
  });
  const marks: Mark[] = [];
  if (wanted.blank) marks.push(outline('board', blankBox(desk)));
  if (wanted.rough) marks.push(outline('saw-line', use.fact('saw.rough.line')));
  if (wanted.trim) marks.push(outline('saw-line', use.fact('saw.trim.line')));
  if (wanted.reliefs) marks.push(...reliefs(desk, wanted.reliefs, flip));
  marks.push(outline(wanted.outline ?? 'outline', use.fact('outline.polygon')));
  marks.push(...centreline(desk, wanted.seam ? 'seam' : 'centre'));
  if (wanted.tacks) marks.push(...tackMarks(desk));
  if (wanted.flaws) marks.push(...flaws(desk, flip));
  if (wanted.setup) marks.push(...cuts(desk, wanted.setup, flip, outline));
  if (wanted.setup && !wanted.bare) marks.push(...lettered(desk, wanted.setup, flip));
  if (wanted.pattern) marks.push(...pinned(desk, flip));
  if (wanted.points) marks.push(...points(desk, flip));
  if (wanted.pairs) marks.push(...pairs(desk));
  if (!wanted.bare && (wanted.setup || wanted.pattern || wanted.tacks)) marks.push(...zero);
  if (!wanted.bare) marks.push(neckEnd(marks));
  return { id: 'plan', caption: wanted.caption, scale: 2.5, marks };
}

/** The outline and the centreline alone, seen from the top. */
export const outlineMarks = (desk: Desk): readonly Mark[] => [
  {
    kind: 'line',
    line: 'outline',
    points: [...desk.use.fact('outline.polygon')].map(hundredth),
    closed: true,
  },
  ...centreline(desk, 'centre'),
];

function reliefs(desk: Desk, which: 'rough' | 'trim', flip: number): Mark[] {
  return desk.use.fact(`saw.${which}.cut`).reliefs.map(({ from, to }) => {
    const points = [from.x * flip, from.y, to.x * flip, to.y].map(hundredth);
    return { kind: 'line', line: 'relief', points, closed: false };
  });
}

function flaws(desk: Desk, flip: number): Mark[] {
  const region = desk.use.fact('flaws.hidden');
  const rings = region.map((ring) => [...(flip < 0 ? mirror(ring) : ring)].map(hundredth));
  return rings.length === 0 ? [] : [{ kind: 'region', hatch: 'removed', rings }];
}

function blankBox({ use }: Desk): Polygon {
  const half = use.fact('blank.width').value / 2e6;
  const line = use.fact('saw.rough.line');
  const ys = line.filter((_, i) => i % 2 === 1);
  const middle = (Math.min(...ys) + Math.max(...ys)) / 2;
  const reach = use.fact('blank.length').value / 2e6;
  return Float64Array.of(-half, middle - reach, half, middle - reach, half, middle + reach, -half, middle + reach);
}

/** The centreline runs a little past the body at both ends. */
function centreline({ use }: Desk, line: LineKind): readonly Mark[] {
  const ys = use.fact('outline.polygon').filter((_, i) => i % 2 === 1);
  const [low, high] = [Math.min(...ys) - 15, Math.max(...ys) + 15];
  return [{ kind: 'line', line, points: [0, hundredth(low), 0, hundredth(high)], closed: false }];
}

/** Half of the cross that lists count from, mm of the body. */
const ZERO_MM = 6;

/** Where lists count from: the bridge line on the centreline. */
const zero: readonly Mark[] = [
  { kind: 'line', line: 'leader', points: [-ZERO_MM, 0, ZERO_MM, 0], closed: false },
  { kind: 'line', line: 'leader', points: [0, -ZERO_MM, 0, ZERO_MM], closed: false },
  { kind: 'tag', x: 0, y: 0, radius: ZERO_MM, text: say('drawing.zero') },
];

/** Which way round it lies: beyond all that is drawn. */
function neckEnd(marks: readonly Mark[]): Mark {
  const tops = marks.flatMap((mark) => (mark.kind === 'line' ? mark.points.filter((_, i) => i % 2 === 1) : []));
  return { kind: 'label', x: 0, y: hundredth(Math.max(...tops) + 6), text: say('drawing.neck-end'), anchor: 'middle' };
}

function pairs({ use }: Desk): readonly Mark[] {
  const quarter = hundredth(use.fact('blank.width').value / 4e6);
  return [-quarter, quarter].map((x) => ({
    kind: 'label',
    x,
    y: 0,
    text: say('drawing.pair'),
    anchor: 'middle',
  }));
}

/** Location holes of the pattern the body is pinned through. */
export const locationHoles = (desk: Desk, flip: number): Extract<Mark, { kind: 'circle' }>[] =>
  locationSpots(desk, flip).map(({ x, y, radius }) => ({ kind: 'circle', line: 'cut', x, y, radius }));

const pinned = (desk: Desk, flip: number): Mark[] => [
  ...locationHoles(desk, flip),
  ...locationSpots(desk, flip).map((spot): Mark => ({ kind: 'tag', ...spot })),
];

function locationSpots(desk: Desk, flip: number) {
  const pins = patternId(desk);
  const holes = pins === undefined ? undefined : desk.subject.plant.patterns?.[pins]?.holes;
  return namesOf(holes).map((id) => {
    const { at, diameter } = holes![id]!;
    return {
      x: hundredth((desk.use(at.x).value / 1e6) * flip),
      y: hundredth(desk.use(at.y).value / 1e6),
      radius: hundredth(desk.use(diameter).value / 2e6),
      text: { kind: 'name', text: id, fact: diameter.id } as const,
    };
  });
}

/** The pattern the jig of this model drills. */
export function patternId({ subject: { spec, plant }, use }: Desk): string | undefined {
  const jig = plant.jigs?.[use(spec.location.jig)];
  return jig && use(jig.pattern);
}

function points(desk: Desk, flip: number): Mark[] {
  const id = `points.${desk.station}` as const;
  const at = desk.has(id) ? desk.use.fact(id) : [];
  return Array.from({ length: at.length / 2 }, (_, i) => ({
    kind: 'point',
    x: hundredth(at[2 * i]! * flip),
    y: at[2 * i + 1]!,
    number: { kind: 'literal', of: 'point', text: String(i + 1) },
  }));
}

export const topPoint = (desk: Desk): Line => say(`point.${highestPoint(desk.subject.spec)}`);
