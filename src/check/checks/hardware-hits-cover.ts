/** Between the end of what hangs behind a panel and the cover there is the room its row asks for. */
import { against, fittedParts, lowOf } from '../hardware.ts';
import { namesOf } from '../../facts/row.ts';
import { regionArea } from '../../geometry/measure.ts';
import { intersection } from '../../geometry/offset.ts';
import type { Bench, Check } from '../check.ts';
import { look } from '../check.ts';
import { drawnAndWorst, say } from '../say.ts';
import { cut, cuts, plate, rect, ring, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'hardware-hits-cover',
  stage: 'derived',
  severity: 'error',
  why: 'The cover does not close, or presses on the terminals and shorts them.',
  mend: 'Cut the cavity deeper into the top or the seat less deep, or fit a flatter part.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'reach: 22',
    fails: 'reach: 42',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 10, to: 50, depth: 12 })),
    plate(6, 54),
    shape(rect(22, -3.4, 38, 11.7, 0.6), 'metal', 'edge'),
    ring(30, -1.4, 4.4, 'lower-right'),
  ),
  run: (bench) =>
    fittedParts(bench).flatMap(({ fitted, name, row }) => {
      if (fitted.kind !== 'hole') return [];
      const room = `fitted.hole.${fitted.id}.to-cover` as const;
      const seen = against(bench, room, row['cover-clearance']);
      if (!seen || lowOf(seen.found) >= seen.asked.value) return [];
      const { found, asked, at } = seen;
      return [
        {
          at: fitted.hardware.id,
          what: `${name} in ${fitted.id} ends ${drawnAndWorst(found, (size, past) => `${size} ${past ? 'past' : 'short of'} the cover`)}. It needs ${say(asked, asked.value)} of room there.`,
          mend: `Fit a flatter part, or make the cavity ${say(asked, asked.value - lowOf(found))} deeper if enough wood is left beyond its floor.`,
          against: [
            { at, text: `the room ${name} needs` },
            ...around(bench, fitted.id),
            ...(row.reach ? [{ at: row.reach.id, text: `how far ${name} reaches in` }] : []),
          ],
          hangsOn: [room],
        },
      ];
    }),
};
export default check;

/** What says how deep the cavity goes, and how deep the seat of its cover. */
function around({ subject: { spec }, facts }: Bench, hole: string) {
  const cavity = look(facts, (use) => use.fact(`fitted.hole.${hole}.cavity`))?.slice('cavity.'.length);
  const seats = namesOf(spec.cavities).filter(
    (id) => look(facts, (use) => use(spec.cavities![id]!.purpose)) === 'recess' && isOver(id, cavity),
  );
  function isOver(seat: string, own: string | undefined): boolean {
    const both = look(facts, (use) => [use.fact(`cavity.${seat}.void`), use.fact(`cavity.${own}.void`)] as const);
    if (both?.[0].kind !== 'pocket' || both[1].kind !== 'pocket') return false;
    return regionArea(intersection(both[0].region, both[1].region)) > 0;
  }
  return [...(cavity === undefined ? [] : [cavity]), ...seats].flatMap((id) => {
    const { depth, floor } = spec.cavities![id]!;
    const deep = depth ?? floor;
    return deep ? [{ at: deep.id, text: `how deep ${id} goes` }] : [];
  });
}
