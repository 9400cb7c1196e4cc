/** Ridges left on the carve and the contours between the paths of their cutters: what sanding has to take out. */
import type { Cutter } from '../../facts/cutter-row.ts';
import { cutterOf } from '../../facts/cutter-row.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition, publishedIn } from '../../facts/facts.ts';
import type { Leaf } from '../../facts/leaf.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { cuspOnBend, cuspOnPlane } from '../../geometry/cusp.ts';
import type { Contour } from '../../geometry/solid/contour.ts';
import type { Steepest } from '../../geometry/solid/profile.ts';
import { steepestOf } from '../../geometry/solid/profile.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

type Shaped = 'carve' | `contour.${string}`;

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `cusp.${string}.steepest`]: Quantity<'angle'>;
    [id: `cusp.${string}.level`]: Length;
    [id: `cusp.${string}.most`]: Length;
  }
}

const ridges = publishedIn(
  'ridge between two circles of the cutter, beside each other (geometry; textbook of milling)',
);

const rule: Rule = (subject) => {
  const { spec } = subject;
  const carve = spec.setups.top?.cutters?.carve;
  return [
    ...(carve ? facts(subject, 'carve', carve, (use) => carveShape(use)) : []),
    ...namesOf(spec.contours).flatMap((id) =>
      facts(subject, `contour.${id}`, spec.contours![id]!.cutter, (use) => contourShape(contourOf(subject, use, id))),
    ),
  ];
};
export default rule;

function facts({ plant }: Subject, what: Shaped, name: Leaf<string>, shape: (use: Use) => Steepest) {
  const label = what.replace('.', ' ');
  // A drill goes over nothing: where one is named, its name is at fault, and its row lacks nothing.
  const over = (use: Use, cutter: Cutter, kind: string): Length =>
    kind === 'drill' ? use(hole(name.id)) : use(cutter.need('step-over'));
  const cut = (use: Use) => {
    const cutter = cutterOf(plant, use, name);
    const kind = use(cutter.need('kind'));
    // A form cutter leaves its own shape, in one path along the edge.
    if (kind === 'form') return undefined;
    const radiusMm = toMm(use(cutter.need('diameter'))) / 2;
    const { corner } = cutter.row;
    const cornerMm = kind === 'ball' ? radiusMm : corner ? toMm(use(corner)) : 0;
    return { end: { radiusMm, cornerMm }, stepMm: toMm(over(use, cutter, kind)), ball: kind === 'ball' };
  };
  return [
    derivation({
      id: `cusp.${what}.steepest`,
      label: `${label}: its steepest slope`,
      formula: 'from its own profile: half a cosine over w that rises by Δ is steepest in its middle, π·Δ ÷ 2w',
      source: byDefinition,
      value: (use) => ({ kind: 'angle', value: degrees(Math.atan(shape(use).slope)), unit: 'deg', decimals: 1 }),
    }),
    derivation({
      id: `cusp.${what}.level`,
      label: `${label}: cusp where it is level`,
      formula: 'R − √(R² − (step over ÷ 2)²); none behind a flat end',
      source: ridges,
      value: (use) => {
        const own = cut(use);
        return own ? cusp(cuspOnPlane(own.end, own.stepMm, 0), own.end.radiusMm) : cusp(0);
      },
    }),
    derivation({
      id: `cusp.${what}.most`,
      label: `${label}: cusp where it is highest`,
      formula:
        'the highest of: level; on the steepest slope, R − √(R² − (step over ÷ 2cos α)²), or the stair behind a flat end; where it bulges most. Paths are taken to step up the slope',
      source: ridges,
      value: (use) => {
        const own = cut(use);
        if (!own) return cusp(0);
        const { slope, bendPerMm } = shape(use);
        return cusp(
          Math.max(
            toMm(use.fact(`cusp.${what}.level`)),
            cuspOnPlane(own.end, own.stepMm, Math.atan(slope)),
            own.ball ? cuspOnBend(own.end.radiusMm, own.stepMm, bendPerMm) : 0,
          ),
          own.end.radiusMm,
        );
      },
    }),
  ];
}

function carveShape(use: Use): Steepest {
  const { riseMm, carve } = use.fact('face.top');
  return steepestOf(carve.profile, riseMm);
}

function contourOf({ spec }: Subject, use: Use, id: string): Contour {
  const face = use(spec.contours![id]!.face);
  const own = namesOf(spec.contours).filter((name) => use(spec.contours![name]!.face) === face);
  return use.fact(`face.${face}`).contours[own.indexOf(id)]!;
}

/** A dish is part of a cylinder: steepest at its rim, and hollow all over. */
function contourShape(contour: Contour): Steepest {
  if (contour.kind === 'plane') return { slope: contour.slope, bendPerMm: 0 };
  const { widthMm, depthMm } = contour;
  const radiusMm = (widthMm ** 2 / 4 + depthMm ** 2) / (2 * depthMm);
  return { slope: Math.tan(Math.asin(Math.min(1, widthMm / 2 / radiusMm))), bendPerMm: 0 };
}

const degrees = (rad: number): number => (rad * 180) / Math.PI;

/** A step wider than the cutter leaves wood standing as high as it was: said as the radius of the cutter. */
const cusp = (mm: number, radiusMm = 0): Length => lengthOfMm(Number.isFinite(mm) ? mm : radiusMm, 3);
