/**
 * An upright section through a body along a straight line of the plan: areas of wood over the way along the line (first
 * coordinate) and the height (second), mm.
 */
import { difference, intersection } from '../offset.ts';
import type { Polygon, Region } from '../polygon.ts';
import { forEachEdge } from '../polygon.ts';
import type { Pocket, Point3, Solid, Tube } from './solid.ts';
import { backAt, floorAt, topAt, tubeSpan } from './solid.ts';

/** Along x or y, at a place of the other. */
export interface SectionLine {
  readonly along: 'x' | 'y';
  readonly atMm: number;
}

/** Steps along the line: a curve between two of them is drawn straight. */
const STEP_MM = 0.5;
/** Above and below every body. */
const FAR_MM = 1000;

/** Rings of wood; holes are rings too, walked the other way. */
export function sectionOf(solid: Solid, line: SectionLine): readonly Polygon[] {
  const own = sections.get(solid) ?? new Map<string, readonly Polygon[]>();
  sections.set(solid, own);
  const key = `${line.along} ${line.atMm}`;
  const section = own.get(key) ?? cutThrough(solid, line);
  own.set(key, section);
  return section;
}

/** Two cards show one section of one body, which is never written to. */
const sections = new WeakMap<Solid, Map<string, readonly Polygon[]>>();

function cutThrough(solid: Solid, line: SectionLine): readonly Polygon[] {
  const wood = crossings([solid.outline], line).flatMap(([from, to]) => profile(solid, line, from, to));
  const cut = solid.voids.flatMap((one) => (one.kind === 'pocket' ? pocketSection(one, line) : tubeSection(one, line)));
  return cut.reduce((left, one) => difference(left, [one]), wood);
}

/** The part of a section between two heights. */
export const sectionBetween = (wood: Region, lowMm: number, highMm: number): Polygon[] =>
  intersection(wood, [box(-FAR_MM, FAR_MM, lowMm, highMm)]);

/** A place of the line in the plan. */
const placeAt = ({ along, atMm }: SectionLine, way: number): readonly [x: number, y: number] =>
  along === 'x' ? [way, atMm] : [atMm, way];

function profile(solid: Solid, line: SectionLine, from: number, to: number): Polygon[] {
  const steps = Math.max(1, Math.ceil((to - from) / STEP_MM));
  const ways = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
  const up = ways.flatMap((way) => [way, backAt(solid, ...placeAt(line, way))]);
  const down = ways.toReversed().flatMap((way) => [way, topAt(solid, ...placeAt(line, way))]);
  return [Float64Array.from([...up, ...down])];
}

function pocketSection(pocket: Pocket, line: SectionLine): Polygon[] {
  return crossings(pocket.region, line).map(([from, to]) => {
    const floor = (way: number) => floorAt(pocket.floor, placeAt(line, way)[1]);
    const end = pocket.opens === 'back' ? -FAR_MM : pocket.opens === 'top' ? FAR_MM : pocket.roofMm!;
    const corners = [from, end, to, end, to, floor(to), from, floor(from)];
    // Counter-clockwise whichever way it opens.
    return pocket.opens === 'back' ? Float64Array.from(corners) : Float64Array.from(reversedPairs(corners));
  });
}

const reversedPairs = (flat: readonly number[]): number[] =>
  flat.flatMap((_, i) => (i % 2 === 0 ? [flat[flat.length - 2 - i]!, flat[flat.length - 1 - i]!] : []));

function tubeSection(tube: Tube, line: SectionLine): Polygon[] {
  const ends = [tube.from, tube.to].map((point: Point3) => (line.along === 'x' ? point.xMm : point.yMm));
  const from = Math.min(...ends) - tube.radiusMm;
  const steps = Math.ceil((Math.max(...ends) + tube.radiusMm - from) / STEP_MM);
  const spans = Array.from({ length: steps + 1 }, (_, i) => from + i * STEP_MM).flatMap((way) => {
    const span = tubeSpan(tube, ...placeAt(line, way));
    return span ? [{ way, ...span }] : [];
  });
  if (spans.length < 2) return [];
  const low = spans.flatMap(({ way, low: z }) => [way, z]);
  const high = spans.toReversed().flatMap(({ way, high: z }) => [way, z]);
  return [Float64Array.from([...low, ...high])];
}

/** Where the line runs inside a region: pairs from … to. */
function crossings(region: Region, { along, atMm }: SectionLine): [number, number][] {
  const ways: number[] = [];
  for (const ring of region) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      const [a, b] = along === 'x' ? [y0, y1] : [x0, x1];
      if (a > atMm === b > atMm) return;
      const t = (atMm - a) / (b - a);
      ways.push(along === 'x' ? x0 + t * (x1 - x0) : y0 + t * (y1 - y0));
    });
  }
  ways.sort((a, b) => a - b);
  return Array.from({ length: Math.floor(ways.length / 2) }, (_, i) => [ways[2 * i]!, ways[2 * i + 1]!]);
}

const box = (left: number, right: number, low: number, high: number): Polygon =>
  Float64Array.of(left, low, right, low, right, high, left, high);
