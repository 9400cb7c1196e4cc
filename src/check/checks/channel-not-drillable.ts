/**
 * A channel is drilled along a straight line from outside: behind its start the drill runs through air, out of the cavity it
 * starts in, to that cavity's open face or through the side of the body.
 */
import { cutId, cutsOf, isNamed } from '../../facts/cuts.ts';
import type { Cut } from '../../facts/cuts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Model } from '../../facts/spec.generated.ts';
import type { Banded } from '../../geometry/banded.ts';
import { banded } from '../../geometry/banded.ts';
import { contains } from '../../geometry/nearness.ts';
import type { Polygon, Region } from '../../geometry/polygon.ts';
import { intersection, union } from '../../geometry/offset.ts';
import { shapePolygon } from '../../geometry/shape.ts';
import type { Pocket, Tube } from '../../geometry/solid/solid.ts';
import { floorAt } from '../../geometry/solid/solid.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { liesInside } from '../inside.ts';
import { sayPoint } from '../say.ts';

const check: Check = {
  id: 'channel-not-drillable',
  stage: 'derived',
  severity: 'error',
  why: 'The drill lies on the edge of the cavity and cannot be brought to its line: somebody bends it, and it breaks or wanders out through the top.',
  mend: 'Start it higher and let it fall more, or start it at or outside the edge.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'depth: 3 ±0.5\n    falls: 37',
    fails: 'depth: 12 ±0.5\n    falls: 12',
  },
  run: (bench) => namesOf(bench.subject.spec.channels).flatMap((id) => fault(bench, id)),
};
export default check;

/** Looks along the shank, mm. */
const STEP_MM = 1;

function fault({ subject: { spec, hand }, facts }: Bench, id: string): Fault[] {
  const seen = look(facts, (use) => ({
    tube: use.fact(`channel.${id}.void`),
    outline: use.fact('outline.polygon'),
    topMm: use.fact('body.shaped').heightMm,
    cuts: cutsOf(spec).flatMap((cut) => {
      const own = use.fact(`${cutId(cut)}.void`);
      return own.kind === 'pocket' ? [own] : [];
    }),
  }));
  if (seen?.tube.kind !== 'tube') return [];
  const stuck = blockedAt(seen.tube, seen.outline, seen.cuts, seen.topMm);
  if (!stuck) return [];
  const { start, depth } = spec.channels![id]!;
  return [
    {
      at: start.x.id,
      what: `Behind its start ${id} runs into wood at ${sayPoint(stuck, hand)}: the drill cannot lie in its line.`,
      mend: 'Start it higher and let it fall more, or start it at or outside the edge.',
      against: [{ at: depth.id, text: 'how deep its axis lies there' }],
      hangsOn: [`channel.${id}.void`, ...openings(cutsOf(spec), spec.channels![id]!, facts)],
    },
  ];
}

/** What it is said to run into, and may be meant to start in. */
function openings(cuts: readonly Cut[], { into }: Model.Channel, facts: Bench['facts']): readonly string[] {
  const names = look(facts, (use) => (into ?? []).map((leaf) => use(leaf))) ?? [];
  return cuts.filter((cut) => names.some((name) => isNamed(name, cut))).map((cut) => `${cutId(cut)}.void`);
}

/** Where the shank would meet wood, on its way back from the start to the open. */
function blockedAt(tube: Tube, outline: Polygon, cuts: readonly Pocket[], topMm: number) {
  const { from, to, radiusMm } = tube;
  const [dx, dy, dz] = [from.xMm - to.xMm, from.yMm - to.yMm, from.zMm - to.zMm];
  const length = Math.hypot(dx, dy, dz);
  // Along the way the same cuts lie open over long stretches.
  const airs = new Map<string, Air>();
  for (let way = 0; ; way += STEP_MM) {
    const x = from.xMm + (way * dx) / length;
    const y = from.yMm + (way * dy) / length;
    const z = from.zMm + (way * dz) / length;
    // In the open: beside the body, over its highest plane or under its back. A hair of the drill may still touch.
    if (!contains(outline, x, y) || z >= topMm + radiusMm || z <= -radiusMm) return undefined;
    const open = cuts.flatMap((cut, index) => (isOpenAt(cut, y, z, radiusMm) ? [index] : []));
    const key = open.join(' ');
    const air = airs.get(key) ?? airOf(open.flatMap((index) => cuts[index]!.region));
    airs.set(key, air);
    if (air.near.contains(x, y) && !air.near.edgeIsNearer(x, y, radiusMm)) continue;
    const disc = shapePolygon({ kind: 'circle', radiusMm }, { xMm: x, yMm: y }, 0.1);
    if (disc.ok && !liesInside(intersection([disc.polygon], [outline]), air.region)) return { x, y };
  }
}

/** What lies open at a place of the way: most of them are in the midst of it. */
interface Air {
  readonly region: Region;
  readonly near: Banded;
}

function airOf(open: Region): Air {
  const region = union(open, []);
  return { region, near: banded(region) };
}

/** Whether a pocket is empty from below the drill to above it, as far as it lies in the body. */
const isOpenAt = ({ opens, floor }: Pocket, y: number, z: number, radiusMm: number): boolean =>
  opens === 'top' ? floorAt(floor, y) <= z - radiusMm : opens === 'back' && floorAt(floor, y) >= z + radiusMm;
