/** Every body goes on its pins: no pin thicker than its hole, and the holes never too near or too far apart for the two. */
import type { SetupId } from '../../facts/cutting-order.ts';
import { setupOrder } from '../../facts/cutting-order.ts';
import { row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { across, asked, bed, cut, cuts, pin, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'pins-do-not-go-in',
  stage: 'derived',
  severity: 'error',
  why: 'A body that is driven on its pins crushes the holes that locate it, or is laid beside them.',
  mend: 'Make the second pin a diamond, thinner, or with a narrower land; or drill the holes within closer limits.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'bridge: { kind: diamond, diameter: 7.92..7.94, land: 1.5 } }\n    pin-length: 8 ±0.2\n  tarn-back-left',
    fails: 'bridge: { fit: g6 } }\n    pin-length: 8 ±0.2\n  tarn-back-left',
  },
  sketch: section(
    bed(19.5),
    slab({ bottom: 10 }),
    cuts(cut({ from: 27, to: 33, depth: 6, back: true, at: 10 })),
    pin(30, 19.5, 11.4, 9),
    asked([27, 6.6], [33, 6.6]),
    across(16.4, 25.5, 34.5),
  ),
  run: (bench) =>
    setupOrder
      .filter((setup) => bench.subject.spec.setups[setup] !== undefined)
      .flatMap((setup) => [...tight(bench, setup), ...apart(bench, setup)]),
};
export default check;

const inThousandths = { unit: 'mm', decimals: 3 };

/** The first number of a pin in the fixture's row. */
function pinLeaf({ subject: { spec, plant }, facts }: Bench, setup: SetupId, id: string) {
  return look(facts, (use) => {
    const fixture = row(plant.fixtures, use(spec.setups[setup]!.fixture), 'plant.fixtures');
    const pin = fixture.pins && Object.hasOwn(fixture.pins, id) ? fixture.pins[id] : undefined;
    return (pin?.fit ?? pin?.diameter)?.id ?? fixture.title.id;
  });
}

function tight(bench: Bench, setup: SetupId): Fault[] {
  return (['first', 'second'] as const).flatMap((which, i) => {
    const seen = look(bench.facts, (use) => ({
      play: use.fact(`location.${setup}.${which}-play`),
      hole: use.fact(`location.${setup}.datums`)?.[i],
    }));
    const at = seen?.hole && pinLeaf(bench, setup, seen.hole.id);
    if (!seen?.play || !seen.hole || at === undefined || (seen.play.low ?? 0) > 0) return [];
    return [
      {
        at,
        what: `The pin for ${seen.hole.id} may be ${say(inThousandths, -(seen.play.low ?? 0))} thicker than its hole.`,
        mend: `Make the pin more than ${say(inThousandths, -(seen.play.low ?? 0))} thinner: of the fit g6, or measured under the smallest hole.`,
        against: [],
        hangsOn: [`location.${setup}.${which}-play`],
      },
    ];
  });
}

function apart(bench: Bench, setup: SetupId): Fault[] {
  const seen = look(bench.facts, (use) => ({
    error: use.fact(`location.${setup}.spacing-error`),
    taken: use.fact(`location.${setup}.spacing-taken`),
    datums: use.fact(`location.${setup}.datums`),
    plays: (['first', 'second'] as const).map((which) => use.fact(`location.${setup}.${which}-play`)),
  }));
  if (!seen?.error || !seen.taken || !seen.datums || seen.error.value <= seen.taken.value) return [];
  // A pin thicker than its hole is said already.
  if (seen.plays.some((play) => play && (play.low ?? 0) <= 0)) return [];
  const [first, second] = seen.datums;
  const at = pinLeaf(bench, setup, second.id);
  if (at === undefined) return [];
  return [
    {
      at,
      what: `In set-up ${setup} the holes ${first.id} and ${second.id} may be ${say(inThousandths, seen.error.value)} too near to each other or too far apart. The pins leave room for ${say(inThousandths, seen.taken.value)}.`,
      mend: 'Make the second pin a diamond, thinner, or with a narrower land; or drill the holes within closer limits.',
      against: [],
      hangsOn: [`location.${setup}.spacing-error`, `location.${setup}.spacing-taken`],
    },
  ];
}
