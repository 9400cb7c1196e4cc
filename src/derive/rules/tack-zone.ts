/**
 * Where a tack may stand between the two saw cuts. The wood ends at the rough line, less as far as the rough saw strayed
 * inward. The trim line stays on the wood, so the kerf lies outside it, and the saw strays further out.
 */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Point } from '../../geometry/axes.ts';
import { evenOffset } from '../../geometry/even-offset.ts';
import { bounds } from '../../geometry/measure.ts';
import { difference, offset, union } from '../../geometry/offset.ts';
import type { Region } from '../../geometry/polygon.ts';
import { stadium } from '../../geometry/stadium.ts';
import { add, most, scale, subtract } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { sawOf } from '../../facts/saw.ts';
import { hasJoint } from '../tacks.ts';

/** What stands between the outline and the edge of the wood, from the inside out. */
export interface TackBand {
  readonly trim: Length;
  readonly kerf: Length;
  readonly trimWander: Length;
  readonly edge: Length;
  readonly diameter: Length;
  readonly offMark: Length;
  readonly roughWander: Length;
}

/** What a tack keeps away from, whatever its own edge distance: a blade strayed as far as it may, a seam, a hole. */
export interface Closed {
  readonly of: 'trim-cut' | 'trim-relief' | 'rough-relief' | 'seam' | 'location-hole';
  readonly region: Region;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** By the name of a kind in the plant. */
    [id: `tacks.band.${string}`]: TackBand;
    [id: `tacks.rough-needed.${string}`]: Length;
    [id: `tacks.${'from' | 'to'}.${string}`]: Length;
    [id: `tacks.zone.${string}`]: Region;
    /** The joint as far as there is wood on it at worst. */
    'tacks.wood': Region;
    'tacks.closed': readonly Closed[];
  }
}

const kerfOutside = practice('the line stays on the wood, the kerf lies outside it; common practice, no source');

const inTheWaste = practice('tacks stand in the waste, clear of both saws; common practice, no source');

const rule: Rule = (subject) =>
  !hasJoint(subject)
    ? []
    : [
        ...namesOf(subject.plant.tacks).flatMap((kind) => ofKind(subject, kind)),
        derivation({
          id: 'tacks.wood',
          label: 'wood of cap and back at the joint, at worst',
          formula: 'inside the rough line by as much as the rough saw strays',
          source: kerfOutside,
          value: (use) => evenOffset([use.fact('saw.rough.line')], -toMm(sawOf(subject, use, 'rough').wander)),
        }),
        derivation({
          id: 'tacks.closed',
          label: 'what a tack keeps clear of at the joint',
          formula:
            'trim line + kerf + how far the saw strays; relief cuts half a kerf and how far the saw strays to both sides; seams; holes of the drilling jig',
          source: kerfOutside,
          value: (use) => closed(subject, use),
        }),
      ];
export default rule;

function ofKind(subject: Subject, kind: string) {
  return [
    derivation({
      id: `tacks.band.${kind}`,
      label: `${kind} in the waste: what stands between the outline and the edge of the wood`,
      formula: 'sizes of the saws and of the tack, each at its greatest',
      source: byDefinition,
      value: (use) => band(subject, use, kind),
    }),
    derivation({
      id: `tacks.rough-needed.${kind}`,
      label: `${kind} in the waste: how far outside the outline the rough line must be`,
      formula:
        'trim line + its kerf + how far the trim saw strays + edge + tack + twice how far off its mark it may stand + edge + how far the rough saw strays',
      source: inTheWaste,
      value: (use) => {
        const of = use.fact(`tacks.band.${kind}`);
        const wood = scale(of.edge, 2);
        return add(of.trim, of.kerf, of.trimWander, wood, of.diameter, scale(of.offMark, 2), of.roughWander);
      },
    }),
    derivation({
      id: `tacks.from.${kind}`,
      label: `${kind} in the waste: no nearer to the outline than`,
      formula: 'trim line + its kerf + how far the trim saw strays + edge',
      source: kerfOutside,
      value: (use) => {
        const of = use.fact(`tacks.band.${kind}`);
        return add(of.trim, of.kerf, of.trimWander, of.edge);
      },
    }),
    derivation({
      id: `tacks.to.${kind}`,
      label: `${kind} in the waste: no further from the outline than`,
      formula: 'rough line − how far the rough saw strays − edge',
      source: kerfOutside,
      value: (use) => {
        const of = use.fact(`tacks.band.${kind}`);
        return subtract(use.fact('saw.rough.distance'), of.roughWander, of.edge);
      },
    }),
    derivation({
      id: `tacks.zone.${kind}`,
      label: `${kind} in the waste: where it may stand, all of it`,
      formula: 'the wood at worst less all it keeps clear of, each with the least wood to an edge',
      source: inTheWaste,
      value: (use) => zone(use, kind),
    }),
  ];
}

function band(subject: Subject, use: Use, kind: string): TackBand {
  const { edge, diameter, 'off-mark': offMark } = row(subject.plant.tacks, kind, 'plant.tacks');
  const trim = sawOf(subject, use, 'trim');
  return {
    trim: most(use.fact('saw.trim.distance')),
    kerf: trim.kerf,
    trimWander: trim.wander,
    edge: most(use(edge)),
    diameter: most(use(diameter)),
    offMark: most(use(offMark)),
    roughWander: sawOf(subject, use, 'rough').wander,
  };
}

function zone(use: Use, kind: string): Region {
  const of = use.fact(`tacks.band.${kind}`);
  const edgeMm = toMm(of.edge);
  const wood = evenOffset([use.fact('saw.rough.line')], -toMm(of.roughWander) - edgeMm);
  const grown = use.fact('tacks.closed').flatMap(({ region }) => offset(region, edgeMm));
  return difference(wood, union(grown, []));
}

function closed(subject: Subject, use: Use): readonly Closed[] {
  const trim = sawOf(subject, use, 'trim');
  const rough = sawOf(subject, use, 'rough');
  const halfMm = ({ kerf, wander }: typeof trim): number => toMm(kerf) / 2 + toMm(wander);
  const reliefs = (which: 'rough' | 'trim') => use.fact(`saw.${which}.cut`).reliefs;
  return [
    { of: 'trim-cut', region: evenOffset([use.fact('saw.trim.line')], toMm(trim.kerf) + toMm(trim.wander)) },
    ...reliefs('trim').map(({ from, to }): Closed => {
      return { of: 'trim-relief', region: [stadium(outward(from, to), to, halfMm(trim))] };
    }),
    ...reliefs('rough').map(({ from, to }): Closed => {
      return { of: 'rough-relief', region: [stadium(from, to, halfMm(rough))] };
    }),
    ...seams(subject, use).map((xMm): Closed => ({ of: 'seam', region: [seamAt(use, xMm)] })),
    ...use.fact('location.holes').map(({ region }): Closed => ({ of: 'location-hole', region })),
  ];
}

/** The trim saw comes in through the waste: its relief cut begins at the edge of that, not at its own line. */
function outward(from: Point, to: Point): Point {
  const length = Math.hypot(from.x - to.x, from.y - to.y);
  if (length === 0) return from;
  const k = OUTWARD_MM / length;
  return { x: from.x + k * (from.x - to.x), y: from.y + k * (from.y - to.y) };
}

/** Further than any waste is wide. */
const OUTWARD_MM = 100;

/** Where seams of cap or back lie across: pieces alike, the blank even about the centreline. */
function seams({ spec }: Subject, use: Use): readonly number[] {
  const all = partsOf(spec).flatMap((part: Part) => {
    const pieces = use.fact(`blank.${part}.pieces`).value;
    const widthMm = toMm(use.fact(`blank.${part}.piece-jointed`));
    return Array.from({ length: pieces - 1 }, (_, k) => (k + 1 - pieces / 2) * widthMm);
  });
  return [...new Set(all)];
}

/** A seam is a line; it is given as much width as makes an area of it. */
const SEAM_MM = 0.001;

function seamAt(use: Use, xMm: number) {
  const { minY, maxY } = bounds(use.fact('saw.rough.line'))!;
  return stadium({ x: xMm, y: minY }, { x: xMm, y: maxY }, SEAM_MM);
}
