/**
 * Numbered points a thickness is measured at: evenly along a line inside the rough line, the edge of a part at every station
 * that measures one all over.
 */
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
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
          'a line that far inside the rough line, points evenly spaced along it, the first half a step from the neck end of the centreline',
        source: practice('away from the edge, spread over the whole; common practice, no source'),
        value: (use) => points(subject, use, station),
      }),
    );
export default rule;

/** The points are rounded to 0.1 mm. */
const ARC_MM = 0.05;

function points({ plant }: Subject, use: Use, station: string): readonly number[] {
  const { points: count, inset } = row(plant.stations, station, 'plant.stations');
  const awayMm = toMm(use.fact('saw.rough.distance'));
  const insetMm = toMm(use(wanted(inset, `plant.stations.${station}.inset`)));
  const line = offset([use.fact('outline.polygon')], awayMm - insetMm, ARC_MM)[0];
  return line ? along(line, use(count!).value) : [];
}

/** Points at equal steps along a closed polygon, from its point of greatest y on. Rounded to 0.1 mm. */
function along(line: Polygon, count: number): readonly number[] {
  const step = perimeter(line) / count;
  const n = line.length / 2;
  let start = 0;
  for (let i = 1; i < n; i++) if (line[2 * i + 1]! > line[2 * start + 1]!) start = i;
  const out: number[] = [];
  // Half a step off the centreline: the seam runs there, and at the neck end the pocket.
  let due = step / 2;
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
