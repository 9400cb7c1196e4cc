/** What takes wood off a face at a place: the lines a finding points to where too little or too much is left there. */
import { namesOf } from '../facts/row.ts';
import { contourDepth } from '../geometry/solid/contour.ts';
import { furthestOf, profileAt } from '../geometry/solid/profile.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';

/** Less is no shape: it is what rounding leaves. */
const SHAPED_MM = 0.01;

export interface Shaping {
  /** The number that says so. */
  readonly at: string;
  readonly text: string;
}

/** The carve of the top and its contours at (x, y) of the body. */
export function topShapedAt({ subject: { spec }, facts }: Bench, x: number, y: number): readonly Shaping[] {
  const face = look(facts, (use) => use.fact('face.top'));
  if (!face) return [];
  const { from, profile } = face.carve;
  const { share, dropMm } = profileAt(profile, from.at(x, y, furthestOf(profile)));
  const carved = (1 - share) * face.riseMm + dropMm > SHAPED_MM;
  const { bevel, crown, recurve } = spec.carve;
  const lines = [bevel?.width ?? crown?.from, recurve?.depth].flatMap((leaf) => (leaf ? [leaf.id] : []));
  const contours = namesOf(spec.contours).filter((id) => look(facts, (use) => use(spec.contours![id]!.face)) === 'top');
  return [
    ...(carved ? lines.map((at) => ({ at, text: 'the carve, which cuts here' })) : []),
    ...face.contours.flatMap((contour, i) =>
      contourDepth(contour, x, y) > SHAPED_MM
        ? [{ at: spec.contours![contours[i]!]!.face.id, text: `contour ${contours[i]!}, which cuts here` }]
        : [],
    ),
  ];
}
