/**
 * Numbered points a thickness is measured at: evenly along a line inside the rough line, the edge of a part at every station
 * that measures one all over.
 */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import { partsOf } from '../../facts/parts.ts';
import { namesOf, row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { offset } from '../../geometry/offset.ts';
import { perimeter } from '../../geometry/measure.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** x0, y0, x1, y1, … in mm. */
    [id: `points.${string}`]: readonly number[];
  }
}

const rule: Rule = (subject) =>
  namesOf(subject.plant.stations)
    .filter((station) => subject.plant.stations![station]!.points !== undefined)
    .map((station) =>
      derivation({
        id: `points.${station}`,
        label: `measuring points at ${station}`,
        formula:
          'a line that far inside the rough line, points evenly spaced along it; shifted along it to where the nearest seam or location hole is farthest',
        source: practice('away from edge, seam and holes, spread over the whole; common practice, no source'),
        value: (use) => points(subject, use, station),
      }),
    );
export default rule;

/** The points are rounded to 0.1 mm. */
const ARC_MM = 0.05;

function points(subject: Subject, use: Use, station: string): readonly number[] {
  const { points: count, inset } = row(subject.plant.stations, station, 'plant.stations');
  const awayMm = toMm(use.fact('saw.rough.distance'));
  const insetMm = toMm(use(wanted(inset, `plant.stations.${station}.inset`)));
  const line = offset([use.fact('outline.polygon')], awayMm - insetMm, ARC_MM)[0];
  if (!line) return [];
  const n = use(count!).value;
  const clear = clearance(seamsMm(subject, use), holesMm(subject, use));
  const shifted = Array.from({ length: SHIFTS }, (_, i) => along(line, n, (i + 0.5) / SHIFTS));
  return shifted.reduce((best, one) => (clear(one) > clear(best) ? one : best));
}

/** Ways the points are tried at, a share of a step apart; more of them find a place only a hair better. */
const SHIFTS = 24;

/** x of every seam of every part: a part of n pieces has them at equal steps, two of them on the centreline. */
function seamsMm({ spec }: Subject, use: Use): readonly number[] {
  const width = toMm(use.fact('blank.width'));
  return partsOf(spec).flatMap((part) => {
    const pieces = use.fact(`blank.${part}.pieces`).value;
    return Array.from({ length: pieces - 1 }, (_, i) => width * ((i + 1) / pieces - 0.5));
  });
}

/** x, y and radius of the holes of the pattern the jig drills. */
function holesMm({ spec, plant }: Subject, use: Use): readonly (readonly [number, number, number])[] {
  const jig = row(plant.jigs, use(spec.location.jig), 'plant.jigs');
  const { holes } = row(plant.patterns, use(jig.pattern), 'plant.patterns');
  return namesOf(holes).map((id) => {
    const { at, diameter } = holes[id]!;
    return [toMm(use(at.x)), toMm(use(at.y)), toMm(use(diameter)) / 2];
  });
}

/** How far the nearest seam or edge of a hole is from any of the points, mm. */
const clearance =
  (seams: readonly number[], holes: readonly (readonly [number, number, number])[]) =>
  (at: readonly number[]): number => {
    let least = Infinity;
    for (let i = 0; i < at.length; i += 2) {
      for (const x of seams) least = Math.min(least, Math.abs(at[i]! - x));
      for (const [x, y, radius] of holes) least = Math.min(least, Math.hypot(at[i]! - x, at[i + 1]! - y) - radius);
    }
    return least;
  };

/** Points at equal steps along a closed polygon, the first a share of a step after its point of greatest y. Rounded to 0.1 mm. */
function along(line: Polygon, count: number, share: number): readonly number[] {
  const step = perimeter(line) / count;
  const n = line.length / 2;
  let start = 0;
  for (let i = 1; i < n; i++) if (line[2 * i + 1]! > line[2 * start + 1]!) start = i;
  const out: number[] = [];
  let due = step * share;
  for (let k = 0; k < n && out.length < 2 * count; k++) {
    const a = (start + k) % n;
    const b = (a + 1) % n;
    const dx = line[2 * b]! - line[2 * a]!;
    const dy = line[2 * b + 1]! - line[2 * a + 1]!;
    const length = Math.hypot(dx, dy);
    while (due <= length && out.length < 2 * count) {
      const t = length === 0 ? 0 : due / length;
      out.push(tenth(line[2 * a]! + t * dx), tenth(line[2 * a + 1]! + t * dy));
      due += step;
    }
    due -= length;
  }
  return out;
}

const tenth = (mm: number): number => Math.round(mm * 10) / 10;
