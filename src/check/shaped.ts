/** What takes wood off a face at a place: the lines a finding points to where too little or too much is left there. */
import { namesOf } from '../facts/row.ts';
import type { ModelSpec } from '../facts/spec.generated.ts';
import { awayFrom, contourDepth } from '../geometry/solid/contour.ts';
import { furthestOf, profileAt } from '../geometry/solid/profile.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';

/** Less is no shape: it is what rounding leaves. */
const SHAPED_MM = 0.01;

export interface Shaping {
  /** The number that says so. */
  readonly at: string;
  readonly text: string;
  readonly by: 'carve' | 'contour' | 'edge';
  /** How far inside its line the place lies, in plan; a carve has none. */
  readonly overMm?: number;
}

/** The carve of the top, contours of a face, and what is cut along its edge, at (x, y) of the body. */
export function shapedAt(bench: Bench, side: 'top' | 'back', x: number, y: number): readonly Shaping[] {
  const { spec } = bench.subject;
  const face = look(bench.facts, (use) => use.fact(`face.${side}`));
  if (!face) return [];
  const { from, profile } = face.carve;
  const { share, dropMm } = profileAt(profile, from.at(x, y, furthestOf(profile)));
  const carved = (1 - share) * face.riseMm + dropMm > SHAPED_MM;
  const { bevel, crown, recurve } = spec.carve;
  const lines = [
    bevel ? { leaf: bevel.width, of: 'how wide its bevel is' } : { leaf: crown?.from, of: 'where its crown begins' },
    { leaf: recurve?.depth, of: 'how deep its recurve is' },
  ].flatMap(({ leaf, of }) => (leaf ? [{ at: leaf.id, text: `the carve takes wood off here: ${of}` }] : []));
  const contours = namesOf(spec.contours).filter(
    (id) => look(bench.facts, (use) => use(spec.contours![id]!.face)) === side,
  );
  return [
    ...(carved ? lines.map((line) => ({ ...line, by: 'carve' as const })) : []),
    ...face.contours.flatMap((contour, i): Shaping[] =>
      contourDepth(contour, x, y) > SHAPED_MM
        ? [
            {
              at: sizeOf(spec.contours![contours[i]!]!).id,
              text: `contour ${contours[i]!}, which takes wood off here`,
              by: 'contour',
              overMm: awayFrom(contour, x, y),
            },
          ]
        : [],
    ),
    ...edgeAt(bench, side, x, y),
  ];
}

/** What makes a contour go as deep as it does. */
const sizeOf = ({ slope, depth, face }: NonNullable<ModelSpec['contours']>[string]) => slope ?? depth ?? face;

function edgeAt({ subject: { spec }, facts }: Bench, side: 'top' | 'back', x: number, y: number): readonly Shaping[] {
  const own = spec.edges?.[side];
  const face = look(facts, (use) => use.fact(`face.${side}`));
  if (!own || !face) return [];
  const { roundMm, ledge } = face;
  const away = face.edge.at(x, y, Math.max(roundMm, ledge?.widthMm ?? 0) + SHAPED_MM);
  const by = 'edge' as const;
  return [
    ...(own.round && away < roundMm
      ? [{ at: own.round.id, text: `the round of the ${side}`, by, overMm: roundMm - away }]
      : []),
    // The lowest place may be the very line the ledge ends at.
    ...(own.ledge && ledge && away < ledge.widthMm + SHAPED_MM
      ? [{ at: own.ledge.width.id, text: `the ledge of the ${side}`, by, overMm: ledge.widthMm - away }]
      : []),
  ];
}
