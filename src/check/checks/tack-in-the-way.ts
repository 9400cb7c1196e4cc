/** A tack the model places keeps clear of both saws, the edge of the wood, seams and the holes of the drilling jig. */
import type { DerivedFacts } from '../../facts/facts.ts';
import { nearestOnRegion } from '../../geometry/apart.ts';
import { regionContains } from '../../geometry/nearness.ts';
import type { Region } from '../../geometry/polygon.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint } from '../say.ts';
import { line, outlinePath, plan, ring, shape, tackHead } from '../sketch.ts';
import type { Tack } from '../tacks.ts';
import { kindNamed, nameOf, rowOf, tacksToLookAt } from '../tacks.ts';

const check: Check = {
  id: 'tack-in-the-way',
  stage: 'derived',
  severity: 'error',
  why: 'A blade that meets a tack throws its teeth. A tack too near an edge or a hole splits the wood, and one in a seam opens it.',
  mend: 'Move it into the waste between the saw cuts, or into the body where nothing is cut.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'pin-a: { at: { x: -80, y: 150 }, kind: pin-14 }',
    fails: 'pin-a: { at: { x: 1, y: -150 }, kind: pin-14 }',
  },
  sketch: plan(
    shape(outlinePath(4.4), 'wood', 'thin'),
    line(outlinePath()),
    line(outlinePath(2.2), 'saw'),
    tackHead(-9, 14.2),
    ring(-9, 14.2, 2.2, 'upper-right'),
    tackHead(20, -12.6),
  ),
  run: (bench) =>
    tacksToLookAt(bench)
      .filter(({ own }) => own)
      .flatMap((tack) => fault(bench, tack)),
};
export default check;

const NM_PER_MM = 1e6;

/** What is too near, in words; of a tack in the body the saws are no concern. */
const WHAT = {
  'trim-cut': 'the way of the trim saw, strayed out as far as it may',
  'trim-relief': 'the way of a relief cut of the trim saw',
  'rough-relief': 'a relief cut of the rough saw',
  seam: 'a seam',
  'location-hole': 'a hole of the drilling jig',
} as const;

function fault(bench: Bench, tack: Tack): Fault[] {
  const { subject, facts } = bench;
  const seen = look(facts, (use) => {
    const row = rowOf(bench, use, tack);
    return {
      spot: use.fact(`tack.${tack.id}.spot`),
      closed: use.fact('tacks.closed'),
      wood: use.fact('tacks.wood'),
      edge: use(row.edge),
      edgeId: row.edge.id,
      rough: use.fact('saw.rough.distance'),
      roughNeeded: use.fact(`tacks.rough-needed.${use.fact(`tack.${tack.id}.spot`).kind}`),
      radiusNm: use.fact(`tack.${tack.id}.bar`).radiusMm * NM_PER_MM,
      offMark: row['off-mark'].id,
      kind: kindNamed(bench, use, tack),
    };
  });
  if (!seen) return [];
  const { spot, edge, radiusNm } = seen;
  // Waste too narrow for any tack: moving this one mends nothing, and another check says what does.
  if (!spot.inBody && seen.rough.value < seen.roughNeeded.value) return [];
  const worst = nearest(seen);
  const needed = edge.high ?? edge.value;
  const leftNm = Math.round(worst.mm * NM_PER_MM - radiusNm);
  if (leftNm >= needed) return [];
  const place = sayPoint({ x: spot.xMm, y: spot.yMm }, subject.hand);
  const left =
    leftNm > 0 ? `has ${say(edge, leftNm)} of wood to ${worst.what}` : `runs ${say(edge, -leftNm)} into ${worst.what}`;
  return [
    {
      at: tack.at,
      what: `${nameOf(tack)}, at ${place}, ${left} when it stands as far off its mark as it may. At least ${say(edge, needed)} of wood must be left.`,
      mend: `Move it ${say(edge, needed - leftNm)} away from there.`,
      against: [
        { at: seen.edgeId, text: 'the least wood between a tack and an edge' },
        { at: seen.offMark, text: 'how far off its mark it may stand' },
        { at: seen.kind, text: 'which kind of tack it is' },
      ],
      hangsOn: ['tacks.closed', 'tacks.wood'],
    },
  ];
}

interface Seen {
  readonly spot: DerivedFacts[`tack.${string}.spot`];
  readonly closed: DerivedFacts['tacks.closed'];
  readonly wood: Region;
}

/** The nearest thing it keeps clear of, and how far its middle is from it; below nothing inside it. */
function nearest({ spot, closed, wood }: Seen): { readonly what: string; readonly mm: number } {
  const { xMm: x, yMm: y, inBody } = spot;
  const apart = (region: Region): number => nearestOnRegion(region, x, y).distanceMm;
  const others = closed
    .filter(({ of }) => !inBody || of === 'seam' || of === 'location-hole')
    .map(({ of, region }) => ({ what: WHAT[of], mm: regionContains(region, x, y) ? -apart(region) : apart(region) }));
  const edge = { what: 'the edge of the wood', mm: regionContains(wood, x, y) ? apart(wood) : -apart(wood) };
  return [edge, ...others].toSorted((a, b) => a.mm - b.mm)[0]!;
}
