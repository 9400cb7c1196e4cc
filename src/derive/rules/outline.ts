/** The outline of the machined body and the saw lines outside it, mirrored for the left hand. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice, publishedIn } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { BLADES_SOURCE, leastConcaveRadiusMm } from '../../reference/blades.ts';
import type { Point } from '../../geometry/axes.ts';
import { leastConcaveBend } from '../../geometry/concave.ts';
import { selfCrossing } from '../../geometry/crossing.ts';
import { bounds } from '../../geometry/measure.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import { parsePath } from '../../geometry/path.ts';
import type { SawLine } from '../../geometry/saw-line.ts';
import { sawLine } from '../../geometry/saw-line.ts';
import { shapePolygon } from '../../geometry/shape.ts';
import { mirror } from '../../geometry/transform.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

export type Saw = 'rough' | 'trim';

/** An outline that cannot be drawn: said by a check, at its place in the path. */
export type Drawn =
  | { readonly ok: true; readonly polygon: Polygon }
  | {
      readonly ok: false;
      readonly at: number;
      readonly what: string;
      readonly mend: string;
      /** Where it crosses itself, if that is what is wrong. */
      readonly crossing?: Point;
    };

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`saw.${Saw}.cut`, SawLine>,
      Record<`saw.${Saw}.line`, Polygon>,
      Record<`saw.${Saw}.${'distance' | 'bend' | 'blade-bend'}`, Length> {
    'outline.drawn': Drawn;
    'outline.polygon': Polygon;
    'outline.length': Length;
    'outline.width': Length;
  }
}

const rule: Rule = (subject) => [
  derivation({
    id: 'outline.drawn',
    label: 'outline as drawn',
    formula: 'path to polygon, chord error at most 0.01 mm; mirrored for the left hand',
    source: byDefinition,
    value: (use) => drawn(subject, use),
  }),
  derivation({
    id: 'outline.polygon',
    label: 'outline of the machined body',
    formula: 'outline as drawn',
    source: byDefinition,
    value: (use) => {
      const outline = use.fact('outline.drawn');
      return outline.ok ? outline.polygon : use(hole('outline.path'));
    },
  }),
  size('outline.length', 'length of the outline', (b) => b.maxY - b.minY),
  size('outline.width', 'width of the outline', (b) => b.maxX - b.minX),
  ...saw(subject, 'rough'),
  ...saw(subject, 'trim'),
];
export default rule;

/** Any blade follows a bend as wide as this. */
const STRAIGHT_MM = 10_000;

function drawn({ spec, hand }: Subject, use: Use): Drawn {
  const made = shapePolygon({ kind: 'path', d: use(spec.outline.path) });
  if (!made.ok) return { ok: false, at: made.at ?? 0, what: made.what, mend: made.mend };
  const polygon = hand === 'left' ? mirror(made.polygon) : made.polygon;
  const crossing = selfCrossing(polygon);
  if (!crossing) return { ok: true, polygon };
  return { ok: false, at: 0, what: 'it crosses itself', mend: 'draw it in one sweep round the body', crossing };
}

function size(
  id: 'outline.length' | 'outline.width',
  label: string,
  of: (b: NonNullable<ReturnType<typeof bounds>>) => number,
) {
  return derivation({
    id,
    label,
    formula: 'extent of the polygon',
    source: byDefinition,
    value: (use) => lengthOfMm(of(bounds(use.fact('outline.polygon'))!)),
  });
}

const NM_PER_INCH = 25_400_000;

/** Any blade turns no tighter than this. */
const LEAST_BEND_MM = 0.1;

/** Of the machine at the saw's station; the least where there is none to know. */
function bladeBend(plant: Subject['plant'], use: Use, which: Saw): number {
  const { machine } = row(plant.stations, `${which}-sawing`, 'plant.stations');
  const width = machine && row(plant.machines, use(machine), 'plant.machines')['blade-width'];
  return Math.max(LEAST_BEND_MM, width ? leastConcaveRadiusMm(use(width).value / NM_PER_INCH) : 0);
}

function saw({ spec, plant }: Subject, which: Saw) {
  return [
    derivation({
      id: `saw.${which}.distance`,
      label: `${which} line outside the outline`,
      formula: 'as the line gives it',
      source: byDefinition,
      value: (use) => use(row(plant.lines, use(spec.line), 'plant.lines')[`${which}-line`]),
    }),
    derivation({
      id: `saw.${which}.bend`,
      label: `${which} line: tightest inside bend`,
      formula:
        'least inside radius of the outline − distance of the line, at least nothing; a straight line where it is convex',
      source: byDefinition,
      value: (use) => {
        // A bend of an outline that cannot be drawn is no bend.
        use.fact('outline.polygon');
        const parsed = parsePath(use(spec.outline.path));
        const bend = parsed.ok ? leastConcaveBend(parsed.path) : undefined;
        return lengthOfMm(Math.max(0, (bend?.radiusMm ?? STRAIGHT_MM) - toMm(use.fact(`saw.${which}.distance`))));
      },
    }),
    derivation({
      id: `saw.${which}.blade-bend`,
      label: `${which} saw: tightest bend its blade follows`,
      formula: 'least radius by the width of the blade, published tables; nothing where the plant names no blade',
      source: publishedIn(BLADES_SOURCE),
      value: (use) => lengthOfMm(bladeBend(plant, use, which)),
    }),
    derivation({
      id: `saw.${which}.cut`,
      label: `${which} saw line, with relief cuts`,
      formula:
        'outline offset outward, corners round; bends tighter than the blade follows are left out, and a relief cut goes into each',
      source: practice('relief cuts let the waste fall away where a blade cannot turn; common practice, no source'),
      value: (use) =>
        sawLine(
          use.fact('outline.polygon'),
          toMm(use.fact(`saw.${which}.distance`)),
          toMm(use.fact(`saw.${which}.blade-bend`)),
        ),
    }),
    derivation({
      id: `saw.${which}.line`,
      label: `${which} saw line`,
      formula: 'as it is sawn',
      source: practice(
        'the first cut leaves room, the second runs close to the line and never through it; common practice, no source',
      ),
      value: (use) => use.fact(`saw.${which}.cut`).line,
    }),
  ];
}
