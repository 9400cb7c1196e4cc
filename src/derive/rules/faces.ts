/** Top and back of the machined body as surfaces: carve, contours, and what is cut along the edge. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import type { BodyPoint } from '../../facts/parts.ts';
import { highestPoint } from '../../facts/parts.ts';
import { namesOf, wanted } from '../../facts/row.ts';
import type { Model } from '../../facts/spec.generated.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Point } from '../../geometry/axes.ts';
import { centroid } from '../../geometry/measure.ts';
import type { Contour } from '../../geometry/solid/contour.ts';
import type { EdgeLine } from '../../geometry/solid/edge-line.ts';
import { edgeLine } from '../../geometry/solid/edge-line.ts';
import type { Face } from '../../geometry/solid/face.ts';
import type { Profile } from '../../geometry/solid/profile.ts';
import { arch, bevel, FLAT } from '../../geometry/solid/profile.ts';
import { stretch } from '../../geometry/stretch.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`face.${'top' | 'back'}`, Face> {
    'outline.line': EdgeLine;
  }
}

const rule: Rule = (subject) => [
  derivation({
    id: 'outline.line',
    label: 'outline, as what heights are counted from',
    formula: 'outline as drawn',
    source: byDefinition,
    value: (use) => edgeLine(use.fact('outline.polygon'), true),
  }),
  derivation({
    id: 'face.top',
    label: 'top of the machined body',
    formula:
      'height by the distance from the edge: level over the land, in half a cosine down to the recurve and up to the crown, or straight up the bevel; less contours, rounding and ledge',
    source: byDefinition,
    value: (use) => faceOf(subject, use, 'top'),
  }),
  derivation({
    id: 'face.back',
    label: 'back of the machined body',
    formula: 'level; less contours, rounding and ledge',
    source: byDefinition,
    value: (use) => faceOf(subject, use, 'back'),
  }),
];
export default rule;

function faceOf(subject: Subject, use: Use, side: 'top' | 'back'): Face {
  const { spec } = subject;
  const own = spec.edges?.[side];
  const ledge = own?.ledge;
  const edge = use.fact('outline.line');
  return {
    ...(side === 'top' ? carveOf(subject, use) : { riseMm: 0, carve: { from: edge, profile: FLAT } }),
    contours: namesOf(spec.contours)
      .filter((id) => use(spec.contours![id]!.face) === side)
      .map((id) => contourOf(subject, use, id)),
    edge,
    roundMm: own?.round ? toMm(use(own.round)) : 0,
    ledge: ledge && { widthMm: toMm(use(ledge.width)), depthMm: toMm(use(ledge.depth)) },
  };
}

function carveOf(subject: Subject, use: Use): Pick<Face, 'riseMm' | 'carve'> {
  const { spec } = subject;
  const line = use.fact('outline.line');
  const kind = use(spec.carve.kind);
  if (kind === 'flat') return { riseMm: 0, carve: { from: line, profile: FLAT } };
  const machined = (point: BodyPoint) => toMm(use.fact(`thickness.body.machined.${point}`));
  const along = kind === 'bevelled' ? spec.carve.bevel?.along : undefined;
  const from = along ? edgeLine(stretchOf(subject, use, along), false) : line;
  return {
    riseMm: machined(highestPoint(spec)) - machined('land'),
    carve: { from, profile: kind === 'bevelled' ? bevelOf(use, spec.carve) : archOf(use, spec.carve) },
  };
}

const landOf = (use: Use, { land }: Carve): number => toMm(use(wanted(land, 'carve.land').width));

type Carve = Subject['spec']['carve'];

function bevelOf(use: Use, carve: Carve): Profile {
  return bevel(landOf(use, carve), toMm(use(wanted(carve.bevel, 'carve.bevel').width)));
}

function archOf(use: Use, carve: Carve): Profile {
  const { recurve } = carve;
  return arch({
    landMm: landOf(use, carve),
    ...(recurve ? { recurve: { atMm: toMm(use(recurve.at)), depthMm: toMm(use(recurve.depth)) } } : {}),
    crownMm: toMm(use(wanted(carve.crown, 'carve.crown').from)),
  });
}

/** Mirrored, what ran counter-clockwise runs the other way: the ends change places. */
function stretchOf(subject: Subject, use: Use, { from, to }: { from: Model.Point; to: Model.Point }): Float64Array {
  const [a, b] = [pointOf(subject, use, from), pointOf(subject, use, to)];
  const outline = use.fact('outline.polygon');
  return subject.hand === 'left' ? stretch(outline, b, a) : stretch(outline, a, b);
}

export function pointOf({ hand }: Subject, use: Use, { x, y }: Model.Point): Point {
  return { x: toMm(use(x)) * (hand === 'left' ? -1 : 1), y: toMm(use(y)) };
}

/** A contour falls away from its line on the side where the middle of the body is not. */
function contourOf(subject: Subject, use: Use, id: string): Contour {
  const contour = subject.spec.contours![id]!;
  const [a, b] = [pointOf(subject, use, contour.from), pointOf(subject, use, contour.to)];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const normal = { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
  const middle = centroid(use.fact('outline.polygon'))!;
  const side = (middle.x - a.x) * normal.x + (middle.y - a.y) * normal.y > 0 ? -1 : 1;
  const at = { xMm: a.x, yMm: a.y, towardX: side * normal.x, towardY: side * normal.y };
  if (use(contour.kind) === 'plane') {
    const slope = use(wanted(contour.slope, `contours.${id}.slope`)).value;
    return { ...at, kind: 'plane', slope: Math.tan((slope * Math.PI) / 180) };
  }
  const mm = (leaf: typeof contour.width, name: string) => toMm(use(wanted(leaf, `contours.${id}.${name}`)));
  return { ...at, kind: 'dish', widthMm: mm(contour.width, 'width'), depthMm: mm(contour.depth, 'depth') };
}
