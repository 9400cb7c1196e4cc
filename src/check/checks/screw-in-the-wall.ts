/** A screw that runs into a cavity from the other face comes out in its floor: clear of its walls, wherever machine and pins put it. */
import { cutsOf, isNamed } from '../../facts/cuts.ts';
import { setupOrder } from '../../facts/cutting-order.ts';
import { namesOf } from '../../facts/row.ts';
import { nearestOnEdge, regionContains } from '../../geometry/nearness.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint } from '../say.ts';
import { field, hole, plan, pocket, ring } from '../sketch.ts';

const check: Check = {
  id: 'screw-in-the-wall',
  stage: 'derived',
  severity: 'error',
  why: 'Half of the hole is drilled in the wall of the cavity: the screw runs askew, splits the cheek and holds on one side.',
  mend: 'Move the hole into the cavity, clear of its walls.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: 'at: { x: 18, y: 200 },\n      diameter: 4.5',
    fails: 'at: { x: 27, y: 200 },\n      diameter: 4.5',
  },
  sketch: plan(
    field(),
    pocket(-20, -8, 20, 8, 2),
    hole(6, -8, 2.6),
    hole(-12, -3, 2.6),
    hole(-12, 3, 2.6),
    ring(6, -8, 4.4),
  ),
  run: (bench) =>
    namesOf(bench.subject.spec.holes).flatMap((id) =>
      look(bench.facts, (use) => use(bench.subject.spec.holes![id]!.use)) === 'screw' ? faults(bench, id) : [],
    ),
};
export default check;

function faults({ subject: { spec, hand }, facts }: Bench, id: string): Fault[] {
  const { at, diameter, into } = spec.holes![id]!;
  return (into ?? []).flatMap((leaf): Fault[] => {
    const seen = look(facts, (use) => {
      const name = use(leaf);
      const cavity = cutsOf(spec).find((cut) => cut.kind === 'cavity' && isNamed(name, cut));
      const own = cavity && use.fact(`cavity.${cavity.id}.void`);
      if (!cavity || own?.kind !== 'pocket') return undefined;
      const pair = use.fact('sideways.pairs').find(({ a, b }) => {
        const ids = [a, b].map((cut) => `${cut.kind}.${cut.id}`);
        return ids.includes(`hole.${id}`) && ids.includes(`cavity.${cavity.id}`);
      });
      return {
        cavity,
        region: own.region,
        spot: use.fact(`hole.${id}.spot`),
        wide: use(diameter),
        off: pair?.off.high,
      };
    });
    if (!seen) return [];
    const { cavity, region, spot, wide } = seen;
    const { xMm: x, yMm: y } = spot;
    const off = seen.off ?? 0;
    const edge = Math.min(...region.map((polygon) => nearestOnEdge(polygon, x, y).distanceMm)) * 1e6;
    const inside = regionContains(region, x, y);
    // What lies beside it altogether does not run into it: another check's.
    if (!inside && edge >= wide.value / 2) return [];
    const room = Math.round((inside ? edge : -edge) - wide.value / 2);
    if (room - off >= 0) return [];
    const wall = inside
      ? `in ${cavity.id}, ${say(wide, edge)} from its wall`
      : `${say(wide, edge)} past the wall of ${cavity.id}, in the wood`;
    const worst =
      off > 0 ? `, and ${say(wide, off - room)} where machine and pins put the two ${say(wide, off)} apart` : '';
    const drawn = room < 0 ? `${say(wide, -room)} of it is` : 'none of it is';
    return [
      {
        at: at.x.id,
        what: `The hole ${id} is ${say(wide, wide.value)} wide. Its middle, at ${sayPoint({ x, y }, hand)}, lies ${wall}. As drawn ${drawn} drilled in that wall${worst}.`,
        mend: `Move the hole ${say(wide, off - room)} further into ${cavity.id}.`,
        against: [
          { at: cavity.place.id, text: `where ${cavity.id} lies` },
          { at: diameter.id, text: 'how wide the hole is' },
        ],
        hangsOn: [
          `cavity.${cavity.id}.void`,
          // Where it is right as drawn, what puts the two apart is the mistake.
          ...(room >= 0 ? setupOrder.map((setup) => `location.${setup}.datums`) : []),
        ],
      },
    ];
  });
}
