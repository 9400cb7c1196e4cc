/** The second set-up locates on two holes of the first, far apart. */
import { placeOf } from '../../facts/placed.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { across, disc, hole, ideal, outline, outlinePath, plan, shape } from '../sketch.ts';

/** Nearer than this, what the pins leave open turns the far end of a body by more than a saw line; common practice, no source. */
const LEAST_NM = 100_000_000;

const check: Check = {
  id: 'location-poor',
  stage: 'derived',
  severity: 'error',
  why: 'A body on one pin turns, and on two pins close together nearly so: pockets and pickups come out askew.',
  mend: 'Locate on two holes of the first set-up that lie far apart.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'locates-on: [tooling-hole-a, tooling-hole-b]',
    fails: 'locates-on: [tooling-hole-a, tooling-hole-a]',
  },
  sketch: plan(
    outline(),
    ideal(outlinePath(0, 9)),
    hole(-3, 0, 2),
    hole(3, 0, 2),
    shape(disc(-3, 0, 1.3), 'metal', 'edge'),
    shape(disc(3, 0, 1.3), 'metal', 'edge'),
    across(0, -3, 3),
  ),
  run: ({ subject: { spec }, facts }): Fault[] => {
    const { 'locates-on': holes, 'rests-on': rests } = spec.setups.top;
    if (!holes) {
      if (look(facts, (use) => use(rests)) === undefined) return [];
      const what = 'Nothing locates the body in set-up top.';
      const place = placeOf(spec.setups.top);
      const mend = 'Add locates-on with two holes of the first set-up.';
      return [{ at: rests.id, ...(place ? { place } : {}), what, mend, against: [] }];
    }
    const seen = look(facts, (use) =>
      holes.map((leaf) => {
        const name = use(leaf);
        const { setup } = spec.holes![name]!;
        return { at: leaf.id, name, setup: use(setup), by: setup.id, spot: use.fact(`hole.${name}.spot`) };
      }),
    );
    if (!seen) return [];
    const late = seen.filter(({ setup }) => setup === 'top');
    if (late.length > 0) {
      return late.map(({ at, name, by }) => ({
        at,
        what: `${name} is drilled in set-up top itself: it is not there to locate on.`,
        mend: 'Locate on holes of the first set-up.',
        against: [{ at: by, text: 'drilled here' }],
      }));
    }
    const twice = seen.filter(({ name }, i) => seen.findIndex((other) => other.name === name) < i);
    if (twice.length > 0) {
      return twice.map(({ at, name }) => ({
        at,
        what: `${name} is named twice: set-up top would locate on one hole.`,
        mend: 'Name two different holes, far apart.',
        against: [],
      }));
    }
    const [first] = seen;
    const apart =
      Math.max(...seen.flatMap((a) => seen.map((b) => Math.hypot(a.spot.xMm - b.spot.xMm, a.spot.yMm - b.spot.yMm)))) *
      1e6;
    if (!first || apart >= LEAST_NM) return [];
    const mm = { unit: 'mm', decimals: 0 };
    return [
      {
        at: first.at,
        what: `The holes that set-up top locates on lie ${say(mm, apart)} apart, and they must lie at least ${say(mm, LEAST_NM)} apart.`,
        mend: `Locate on two holes at least ${say(mm, LEAST_NM)} apart.`,
        against: [],
      },
    ];
  },
};
export default check;
