/** The head of a screw lies wholly on the cover it holds. */
import { namesOf, row } from '../../facts/row.ts';
import { contains, distanceToEdge } from '../../geometry/nearness.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import type { Bench, Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { field, head, plan, rect, ring, shape } from '../sketch.ts';
import type { Screwed } from '../screws.ts';
import { screwedHoles } from '../screws.ts';

const check: Check = {
  id: 'screw-head-off-cover',
  stage: 'derived',
  severity: 'error',
  why: 'A head over the edge of its cover pulls it askew, and its countersink breaks out.',
  mend: 'Move the pilot inward, or make the cover larger.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'at: { x: 40.8, y: -100 }',
    fails: 'at: { x: 39.5, y: -100 }',
  },
  sketch: plan(
    field(),
    shape(rect(-26, -10, 10, 15, 2), 'metal', 'edge'),
    head(9, 0, 4),
    head(-19, 0, 4),
    ring(10.4, 0, 5.6),
  ),
  run: (bench) =>
    screwedHoles(bench).flatMap((screwed) => {
      const seen = look(bench.facts, (use) => ({
        spot: use.fact(`hole.${screwed.id}.spot`),
        head: use(row(bench.subject.plant.screws, screwed.name, 'plant.screws').head),
      }));
      if (!seen) return [];
      const { spot, head } = seen;
      const [cover] = coversAt(bench, screwed).filter(({ polygon }) => contains(polygon, spot.xMm, spot.yMm));
      if (!cover) return [];
      const over = head.value / 2 - distanceToEdge(cover.polygon, spot.xMm, spot.yMm) * 1e6;
      if (over <= 0) return [];
      return [
        {
          at: screwed.hole.at.x.id,
          what: `The head of ${screwed.name}, ${say(head, head.value)} wide, reaches ${say(head, over)} over the edge of the cover ${cover.id}.`,
          mend: `Move ${screwed.id} at least ${say(head, over)} inward.`,
          against: [
            { at: screwed.hole.screw.id, text: 'the screw that goes in' },
            { at: cover.fact, text: 'the cover it holds' },
          ],
          hangsOn: [cover.fact],
        },
      ];
    }),
};
export default check;

interface Cover {
  readonly id: string;
  readonly fact: string;
  readonly polygon: Polygon;
}

/** The seat its pilot stands in, else the plates of its face. */
function coversAt({ subject: { spec }, facts }: Bench, { id, hole }: Screwed): readonly Cover[] {
  const seat = look(facts, (use) => use.fact(`screw.${id}.seat`));
  if (seat !== undefined) {
    const own = look(facts, (use) => use.fact(`${seat}.void`));
    return own?.kind === 'pocket'
      ? [{ id: seat.slice(seat.indexOf('.') + 1), fact: `${seat}.void`, polygon: own.region[0]! }]
      : [];
  }
  const up = look(facts, (use) => use(hole.setup));
  return namesOf(spec.covers).flatMap((name) => {
    const fact = `cover.${name}.drawn` as const;
    const seen = look(facts, (use) => ({ face: use(spec.covers![name]!.face), drawn: use.fact(fact) }));
    return seen?.drawn.ok && seen.face === up ? [{ id: name, fact, polygon: seen.drawn.polygon }] : [];
  });
}
