/** Plans: the face being worked, as it lies there. Seen from the back, left and right change places. */
import { highestPoint } from '../../facts/parts.ts';
import { namesOf } from '../../facts/row.ts';
import { mirror } from '../../geometry/transform.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import type { Drawing, Line, LineKind, Literal, Mark } from '../card.ts';
import { cavitiesOf } from '../cutting-order.ts';
import { pocketPoints } from '../neck.ts';
import type { SetupId } from '../cutting-order.ts';
import type { Desk } from '../station.ts';
import { hundredth } from './coordinates.ts';
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
  if (wanted.pattern) marks.push(...locationHoles(desk, flip));
  if (wanted.points) marks.push(...points(desk, flip));
  return { id: 'plan', caption: wanted.caption, scale: 5, marks };
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

function cuts(desk: Desk, setup: SetupId, flip: number, outline: (line: LineKind, polygon: Polygon) => Mark): Mark[] {
  const { spec } = desk.subject;
  const line = (of: string): LineKind => (of === setup ? 'cut' : 'hidden');
  const cavities = namesOf(spec.cavities).flatMap((id) => {
    const drawn = desk.use.fact(`cavity.${id}.drawn`);
    return drawn.ok ? [outline(line(desk.use(spec.cavities![id]!.setup)), drawn.polygon)] : [];
  });
  const holes = namesOf(spec.holes).map((id): Mark => {
    const { xMm, yMm, diameterMm } = desk.use.fact(`hole.${id}.spot`);
    return {
      kind: 'circle',
      line: line(desk.use(spec.holes![id]!.setup)),
      x: hundredth(xMm * flip),
      y: hundredth(yMm),
      radius: hundredth(diameterMm / 2),
    };
  });
  return [
    ...cavities,
    ...holes,
    ...channels(desk, setup, flip),
    ...covers(desk, setup, flip),
    ...contours(desk, setup, flip),
  ];
}

const lettered = (desk: Desk, setup: SetupId, flip: number): Mark[] => [
  ...labels(desk, setup, flip),
  ...(setup === 'top' ? pocketPoints(desk, flip) : []),
];

/** Channels lie inside the wood: both their sides are hidden from any face. */
function channels(desk: Desk, setup: SetupId, flip: number): Mark[] {
  const { channels: table } = desk.subject.spec;
  return namesOf(table)
    .filter((id) => desk.use(table![id]!.setup) === setup)
    .flatMap((id) => {
      const tube = desk.use.fact(`channel.${id}.void`);
      if (tube.kind !== 'tube') return [];
      const { from, to, radiusMm } = tube;
      const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
      const [nx, ny] = [(-dy / Math.hypot(dx, dy)) * radiusMm, (dx / Math.hypot(dx, dy)) * radiusMm];
      return [1, -1].map((side): Mark => {
        const ends = [from.xMm + side * nx, from.yMm + side * ny, to.xMm + side * nx, to.yMm + side * ny];
        const points = ends.map((mm, i) => hundredth(i % 2 === 0 ? mm * flip : mm));
        return { kind: 'line', line: 'hidden', points, closed: false };
      });
    });
}

/** The line each contour of the face begins at. */
function contours(desk: Desk, setup: SetupId, flip: number): Mark[] {
  const { contours: table } = desk.subject.spec;
  const hand = desk.subject.hand === 'left' ? -1 : 1;
  return namesOf(table)
    .filter((id) => desk.use(table![id]!.face) === setup)
    .map((id): Mark => {
      const { from, to } = table![id]!;
      const mm = [from.x, from.y, to.x, to.y].map((leaf) => desk.use(leaf).value / 1e6);
      const points = mm.map((value, i) => hundredth(i % 2 === 0 ? value * flip * hand : value));
      return { kind: 'line', line: 'contour', points, closed: false };
    });
}

/** Plates on the face that is being worked. */
function covers(desk: Desk, setup: SetupId, flip: number): Mark[] {
  const { covers: table } = desk.subject.spec;
  return namesOf(table)
    .filter((id) => desk.use(table![id]!.face) === setup)
    .flatMap((id): Mark[] => {
      const drawn = desk.use.fact(`cover.${id}.drawn`);
      if (!drawn.ok) return [];
      const points = [...(flip < 0 ? mirror(drawn.polygon) : drawn.polygon)].map(hundredth);
      return [{ kind: 'line', line: 'cover', points, closed: true }];
    });
}

/** Cavities of this set-up by letter, in the order they are cut: the depth table uses the same. */
export const cavityLetters = (desk: Desk, setup: SetupId): ReadonlyMap<string, Literal> =>
  new Map(
    cavitiesOf(desk, setup).map((id, i) => [id, { kind: 'literal', of: 'point', text: String.fromCharCode(65 + i) }]),
  );

/** Letters at the middle of their cavities; of cavities that share a place, each a little below the one before. */
function labels(desk: Desk, setup: SetupId, flip: number): Mark[] {
  const placed: { x: number; y: number }[] = [];
  return [...cavityLetters(desk, setup)].map(([id, text]): Mark => {
    const { x, y } = desk.subject.spec.cavities![id]!.at;
    const hand = desk.subject.hand === 'left' ? -1 : 1;
    const at = { x: hundredth((desk.use(x).value / 1e6) * flip * hand), y: hundredth(desk.use(y).value / 1e6) };
    while (placed.some((other) => Math.hypot(other.x - at.x, other.y - at.y) < LETTER_MM)) at.y -= LETTER_MM;
    placed.push(at);
    return { kind: 'label', ...at, text, anchor: 'middle' };
  });
}

/** Room a letter takes on the body at 1:5. */
const LETTER_MM = 18;

/** Location holes of the pattern the body is pinned through. */
export function locationHoles(desk: Desk, flip: number): Extract<Mark, { kind: 'circle' }>[] {
  const { plant } = desk.subject;
  const pins = patternId(desk);
  const holes = pins === undefined ? undefined : plant.patterns?.[pins]?.holes;
  return namesOf(holes).map((id) => {
    const { at, diameter } = holes![id]!;
    return {
      kind: 'circle',
      line: 'cut',
      x: hundredth((desk.use(at.x).value / 1e6) * flip),
      y: hundredth(desk.use(at.y).value / 1e6),
      radius: hundredth(desk.use(diameter).value / 2e6),
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
