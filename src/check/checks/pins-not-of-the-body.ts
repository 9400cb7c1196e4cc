/** A fixture that says what pins it has, has one for each hole the set-up locates on, and none for another. */
import type { SetupId } from '../../facts/cutting-order.ts';
import { setupOrder } from '../../facts/cutting-order.ts';
import { placeOf } from '../../facts/placed.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { bed, bore, cuts, pin, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'pins-not-of-the-body',
  stage: 'derived',
  severity: 'error',
  why: 'A hole without a pin does not locate, and a pin without a hole stands in the way of the body.',
  mend: 'Give the fixture one pin for each hole the set-up locates on, by the name of the hole.',
  example: {
    file: 'models/plant/plant.yaml',
    passes:
      'pins: { neck: { fit: g6 }, bridge: { kind: diamond, diameter: 7.92..7.94, land: 1.5 } }\n    pin-length: 8 ±0.2\n  tarn-back-left',
    fails: 'pins: { neck: { fit: g6 } }\n    pin-length: 8 ±0.2\n  tarn-back-left',
  },
  sketch: section(
    bed(19.5),
    slab({ bottom: 15 }),
    cuts(bore({ from: [16, 15], to: [16, 6], width: 5.4 })),
    pin(42, 19.5, 15.2),
    ring(16, 12, 4.6),
    ring(42, 16, 4),
  ),
  run: (bench) =>
    setupOrder
      .filter((setup) => bench.subject.spec.setups[setup] !== undefined)
      .flatMap((setup) => faults(bench, setup)),
};
export default check;

function faults({ subject: { spec, plant }, facts }: Bench, setup: SetupId): Fault[] {
  const seen = look(facts, (use) => {
    const { pins: pattern, 'locates-on': located, fixture } = spec.setups[setup]!;
    const name = use(fixture);
    const { pins, title } = row(plant.fixtures, name, 'plant.fixtures');
    const holes = pattern
      ? namesOf(row(plant.patterns, use(pattern), 'plant.patterns').holes)
      : (located ?? []).map((leaf) => use(leaf));
    return pins && { name, title: title.id, pins, holes, by: (pattern ?? located?.[0] ?? fixture).id };
  });
  // One hole named twice is another check's.
  if (!seen || new Set(seen.holes).size < seen.holes.length) return [];
  const { name, title, pins, holes, by } = seen;
  const own = namesOf(pins);
  const place = placeOf(pins);
  const stand = { at: title, ...(place ? { place } : {}), against: [{ at: by, text: 'what the set-up locates on' }] };
  const hangsOn = [`plant.fixtures.${name}.pins`];
  return [
    ...holes
      .filter((hole) => !own.includes(hole))
      .map((hole) => ({
        ...stand,
        hangsOn,
        what: `Fixture ${name} has no pin for ${hole}, which set-up ${setup} locates on.`,
        mend: `Give it a pin for ${hole}, or leave its pins out where they are not known.`,
      })),
    ...own
      .filter((pin) => !holes.includes(pin))
      .map((pin) => ({
        ...stand,
        hangsOn,
        what: `Fixture ${name} has a pin for ${pin}, and set-up ${setup} does not locate on that.`,
        mend: `Take the pin out, or name the hole it goes into: ${holes.join(', ')}.`,
      })),
  ];
}
