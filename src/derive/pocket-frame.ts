/** The neck pocket as the neck sees it: turned back so that its middle line lies along y, however it was drawn. */
import type { Use } from '../facts/facts.ts';
import { hole } from '../facts/leaf.ts';
import { row, wanted } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import { direction } from '../geometry/axes.ts';
import type { Point } from '../geometry/axes.ts';
import type { Bounds } from '../geometry/measure.ts';
import { bounds } from '../geometry/measure.ts';
import type { Polygon } from '../geometry/polygon.ts';
import { rotate } from '../geometry/transform.ts';

export interface PocketFrame {
  readonly name: string;
  readonly drawn: Polygon;
  readonly box: Bounds;
  readonly polygon: (of: Polygon) => Polygon;
  readonly point: (of: Point) => Point;
  readonly back: (of: Point) => Point;
}

export function pocketFrame(subject: Subject, use: Use): PocketFrame {
  const { spec, hand } = subject;
  const name = use(wanted(spec.neck.pocket, 'neck.pocket'));
  const { angle } = row(spec.cavities, name, 'cavities');
  const cut = use.fact(`cavity.${name}.drawn`);
  if (!cut.ok) return use(hole(`cavities.${name}.shape`));
  const turned = angle ? use(angle).value * (hand === 'left' ? -1 : 1) : 0;
  // A pocket drawn across and turned by a right angle lies along the neck as well.
  const turn = turned - 90 * Math.round(turned / 90);
  const polygon = (of: Polygon) => rotate(of, -turn);
  const drawn = polygon(cut.polygon);
  return { name, drawn, box: bounds(drawn)!, polygon, point: turner(-turn), back: turner(turn) };
}

function turner(degrees: number): (of: Point) => Point {
  const { x: cos, y: sin } = direction(degrees);
  return ({ x, y }) => ({ x: cos * x - sin * y, y: sin * x + cos * y });
}
