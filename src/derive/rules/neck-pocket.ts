/**
 * The pocket at the two points where its depth is measured, and how it leans.
 *
 * Two readings say more than one: both may lie within the limits of the depth and yet the floor leans, and what it leans
 * by counts many times over at the bridge. So the lean has limits of its own, as the difference of the two readings; where
 * the spec gives none, it is whatever two good readings let pass.
 */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Point } from '../../geometry/axes.ts';
import { bounds } from '../../geometry/measure.ts';
import { forEachEdge } from '../../geometry/polygon.ts';
import { nominal, scaledCauses, withCauses } from '../../units/arithmetic.ts';
import type { Cause, Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

/** Ends of the pocket: its closed one, and the one the neck comes out of. */
export type PocketEnd = 'tail' | 'neck';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`neck.point.${PocketEnd}`, Point>,
      /** What the gauge must read at each, from where the pocket is measured. */
      Record<`neck.reading.${PocketEnd}`, Length> {
    /** From the bridge line to where the body ends in the middle of the pocket. */
    'neck.edge': Length;
    'neck.points-apart': Length;
    /** How much deeper at the point near the neck than at the other. */
    'neck.fall': Length;
    'neck.leans': Quantity<'angle'>;
  }
}

/** A depth gauge stands this far from the end of the floor, mm, and no nearer than its corner. */
const FOOT_MM = 10;

const rule: Rule = (subject) =>
  subject.spec.neck?.pocket === undefined
    ? []
    : [
        ...(['tail', 'neck'] as const).flatMap((end) => [
          derivation({
            id: `neck.point.${end}`,
            label: `neck pocket: where its depth is measured at the ${end} end`,
            formula:
              'on its middle line, from the end of the floor or the edge of the body by 10 mm or its corner radius, whichever is more',
            source: practice('the foot of a depth gauge needs level floor; common practice, no source'),
            value: (use) => pointAt(subject, use, end),
          }),
          derivation({
            id: `neck.reading.${end}`,
            label: `neck pocket: what the gauge must read at the ${end} end`,
            formula: 'limits of its depth, and as much deeper as the floor falls up to there',
            source: byDefinition,
            value: (use) => readingAt(subject, use, end),
          }),
        ]),
        derivation({
          id: 'neck.edge',
          label: 'bridge line to the edge of the body, in the middle of the pocket',
          formula: 'where the outline crosses the middle line of the pocket, farthest up',
          source: byDefinition,
          value: (use) => {
            const { box } = pocketOf(subject, use);
            return lengthOfMm(edgeAt(use, (box.minX + box.maxX) / 2));
          },
        }),
        derivation({
          id: 'neck.points-apart',
          label: 'neck pocket: distance of the two points its depth is measured at',
          formula: 'along the centreline',
          source: byDefinition,
          value: (use) => lengthOfMm(use.fact('neck.point.neck').y - use.fact('neck.point.tail').y),
        }),
        derivation({
          id: 'neck.fall',
          label: 'neck pocket: deeper at the point near the neck',
          formula:
            'fall of the floor × distance of the two points / its length; limits as given for the fall, in the same share; where none are given, what two readings within the limits of the depth let pass',
          source: practice('two readings and a straight line through them; no source'),
          value: (use) => fallBetween(subject, use),
        }),
        derivation({
          id: 'neck.leans',
          label: 'angle of the neck to the back of the body',
          formula: 'arctangent of what the floor falls / distance of the two points; backward is more than nothing',
          source: byDefinition,
          value: (use) => angleOf(use.fact('neck.fall'), toMm(use.fact('neck.points-apart'))),
        }),
      ];
export default rule;

/** The pocket as it is given and drawn. */
function pocketOf({ spec }: Subject, use: Use) {
  const name = use(wanted(spec.neck.pocket, 'neck.pocket'));
  const drawn = use.fact(`cavity.${name}.drawn`);
  return {
    name,
    spec: row(spec.cavities, name, 'cavities'),
    box: drawn.ok ? bounds(drawn.polygon)! : use<never>(hole(`cavities.${name}.shape`)),
  };
}

function pointAt(subject: Subject, use: Use, end: PocketEnd): Point {
  const { spec, box } = pocketOf(subject, use);
  const x = (box.minX + box.maxX) / 2;
  const inMm = Math.max(FOOT_MM, toMm(use(spec.corner)));
  return { x, y: end === 'tail' ? box.minY + inMm : Math.min(box.maxY, toMm(use.fact('neck.edge'))) - inMm };
}

/** Where the body ends towards the neck, at this x. */
function edgeAt(use: Use, x: number): number {
  let y = -Infinity;
  forEachEdge(use.fact('outline.polygon'), (x0, y0, x1, y1) => {
    if (x0 > x !== x1 > x) y = Math.max(y, y0 + ((x - x0) * (y1 - y0)) / (x1 - x0));
  });
  return y;
}

function readingAt(subject: Subject, use: Use, end: PocketEnd): Length {
  const { name, spec, box } = pocketOf(subject, use);
  const { limits, way } = use.fact(`cavity.${name}.measuring`);
  const slope = spec.falls ? toMm(use(spec.falls)) / (box.maxY - box.minY) : 0;
  if (slope === 0) return limits;
  const deeper = Math.round((use.fact(`neck.point.${end}`).y - box.minY) * slope * 1e6);
  const by = way === 'depth' ? deeper : -deeper;
  return { ...limits, value: limits.value + by, low: limits.low! + by, high: limits.high! + by };
}

function fallBetween(subject: Subject, use: Use): Length {
  const { name, spec, box } = pocketOf(subject, use);
  const share = toMm(use.fact('neck.points-apart')) / (box.maxY - box.minY);
  const fall = spec.falls && use(spec.falls);
  const value = lengthOfMm(fall ? toMm(fall) * share : 0, 2);
  if (fall?.causes && fall.causes.length > 0) return withCauses(value, scaledCauses(fall.causes, share));
  const depth = use.fact(`cavity.${name}.required`);
  const passed = (depth.high ?? depth.value) - (depth.low ?? depth.value);
  const cause: Cause = { cause: `cavity.${name}.required#lean`, sensitivity: 1, minus: -passed, plus: passed };
  return withCauses(value, [cause]);
}

/** Degrees of a rise over a distance, with the limits of the rise. */
function angleOf(rise: Length, overMm: number): Quantity<'angle'> {
  const degrees = (nm: number) => (Math.atan(nm / 1e6 / overMm) * 180) / Math.PI;
  const { value, low, high } = rise;
  return {
    ...nominal({ kind: 'angle' as const, value: degrees(value), unit: 'deg', decimals: 2 }),
    low: degrees(low ?? value),
    high: degrees(high ?? value),
  };
}
