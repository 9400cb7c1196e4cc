/** No pin of a fixture is longer, at worst, than the hole it goes into is deep. */
import { setupOrder } from '../../facts/cutting-order.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import { row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { bed, cut, cuts, gap, pin, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'pin-too-long',
  stage: 'derived',
  severity: 'error',
  why: 'The body stands on the tip of the pin and not on the fixture: it rocks, and every depth of the set-up is out.',
  mend: 'Drill the hole deeper, or put a shorter pin into the fixture.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'location: { jig: jig-p2-right, depth: 12 ±1.0 }',
    fails: 'location: { jig: jig-p2-right, depth: 9.0 ±1.0 }',
  },
  sketch: section(
    bed(19.5),
    slab({ bottom: 15 }),
    cuts(
      cut({ from: 15, to: 21, depth: 3.4, back: true, at: 15 }),
      cut({ from: 39, to: 45, depth: 3.4, back: true, at: 15 }),
    ),
    pin(18, 19.5, 11.7),
    pin(42, 19.5, 11.7),
    gap(30, 15, 19.5, 'start'),
  ),
  run: (bench) => {
    const found = setupOrder
      .filter((setup) => bench.subject.spec.setups[setup] !== undefined)
      .flatMap((setup) => fault(bench, setup));
    // The jig's depth is that of its holes in every set-up: said once.
    return found.filter((one, i) => found.findIndex(({ at }) => at === one.at) === i);
  },
};
export default check;

/** All pins of a fixture are of one length: said of the shallowest hole, the others beside it. */
function fault({ subject: { spec, plant }, facts }: Bench, setup: SetupId): Fault[] {
  const seen = look(facts, (use) => {
    const {
      pins,
      title,
      'pin-length': length,
    } = row(plant.fixtures, use(spec.setups[setup]!.fixture), 'plant.fixtures');
    const holes = use.fact(`location.${setup}.pin-holes`);
    return length && { pins, title: use(title), at: length.id, length: use(length), holes };
  });
  if (!seen) return [];
  const { pins, title, length } = seen;
  const long = length.high ?? length.value;
  const met = seen.holes
    .filter(({ id, open }) => open && (!pins || Object.hasOwn(pins, id)))
    .flatMap(({ id, by, deep }) => (deep ? [{ id, by, deep, least: deep.low ?? deep.value }] : []))
    .filter(({ least }) => least < long)
    .toSorted((a, b) => a.least - b.least);
  const [worst] = met;
  if (!worst) return [];
  const { id, by, deep, least } = worst;
  const others = met.filter((one) => one.by !== by);
  return [
    {
      at: by,
      what: `The pin for ${id} on the fixture ${title} may be ${say(length, long)} long, and its hole may be no deeper than ${say(deep, least)}: in set-up ${setup} the body stands ${say(length, long - least)} off the fixture.`,
      mend: `Drill the hole ${say(deep, deep.value - least + long)} deep, or make the pin no longer than ${say(length, least)}, its limits counted.`,
      against: [
        { at: seen.at, text: 'how long its pins are' },
        ...others.map((one) => ({ at: one.by, text: `${one.id} is too shallow as well` })),
      ],
      hangsOn: [`location.${setup}.pin-holes`],
    },
  ];
}
