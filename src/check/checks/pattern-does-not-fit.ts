/** Jig, pins and fixture of the first set-up have one pattern. */
import { placeOf } from '../../facts/placed.ts';
import { namesOf, present, row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { disc, distance, hole, outline, plan, shape } from '../sketch.ts';

const check: Check = {
  id: 'pattern-does-not-fit',
  stage: 'spec',
  severity: 'error',
  why: 'Holes drilled through one jig do not go on the pins of another pattern: the body is forced on, or laid on by eye.',
  mend: 'Name a jig and a fixture of the pattern of the pins.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: '      bridge: { at: { x: 24, y: 124 }, diameter: 8, fit: H8 }\n',
    fails: '',
  },
  sketch: plan(
    outline(),
    hole(-11, 0, 2.4),
    shape(disc(-11, 0, 1.7), 'metal', 'edge'),
    hole(13, -4.4, 2.4),
    shape(disc(13, 4.4, 1.7), 'metal', 'edge'),
    distance([13, -4.4], [13, 4.4]),
  ),
  run: (bench) => [...first(bench), ...second(bench)],
};
export default check;

function first({ subject: { spec, plant }, facts }: Bench): Fault[] {
  const { back } = spec.setups;
  const seen = look(facts, (use) => {
    const { pins, fixture } = back;
    const of = row(plant.fixtures, use(fixture), 'plant.fixtures').pattern;
    const jig = row(plant.jigs, use(spec.location.jig), 'plant.jigs').pattern;
    return {
      jig: { at: spec.location.jig.id, pattern: use(jig), row: jig.id },
      fixture: { at: fixture.id, name: use(fixture), ...(of ? { pattern: use(of), row: of.id } : {}) },
      ...(pins ? { pins: { at: pins.id, pattern: use(pins) } } : {}),
    };
  });
  if (!seen) return [];
  const { pins, fixture, jig } = seen;
  if (!pins) {
    const place = placeOf(back);
    const what = 'Nothing says through which holes the body is pinned in set-up back.';
    return [{ at: fixture.at, ...(place ? { place } : {}), what, mend: `Add "pins: ${jig.pattern}".`, against: [] }];
  }
  const holes = plant.patterns?.[pins.pattern]?.holes;
  return [
    ...(jig.pattern === pins.pattern ? [] : [misfit(jig.at, 'jig', jig.pattern, pins.pattern, [jig.row, pins.at])]),
    ...(fixture.pattern === pins.pattern
      ? []
      : [
          {
            ...misfit(fixture.at, 'fixture', fixture.pattern, pins.pattern, [
              ...(fixture.row ? [fixture.row] : []),
              pins.at,
            ]),
            hangsOn: [`plant.fixtures.${fixture.name}.pattern`],
          },
        ]),
    ...(!present(holes) || namesOf(holes).length >= 2
      ? []
      : [
          {
            at: pins.at,
            what: `Pattern ${pins.pattern} has fewer than two holes.`,
            mend: 'Give it two holes far apart.',
            against: [],
          },
        ]),
  ];
}

/** A fixture with pins is none for a set-up that locates on holes of the first. */
function second({ subject: { spec, plant }, facts }: Bench): Fault[] {
  const { top } = spec.setups;
  const seen = look(facts, (use) => {
    const of = row(plant.fixtures, use(top.fixture), 'plant.fixtures').pattern;
    return of && { name: use(top.fixture), pattern: use(of), row: of.id };
  });
  if (!seen || top.pins) return [];
  return [
    {
      at: top.fixture.id,
      what: `${seen.name} has the pins of ${seen.pattern}, and set-up top locates on holes of the body.`,
      mend: 'Name a fixture for the top.',
      against: [{ at: seen.row, text: 'its pins' }],
    },
  ];
}

const misfit = (
  at: string,
  what: string,
  has: string | undefined,
  wanted: string,
  lines: readonly string[],
): Fault => ({
  at,
  what: `The ${what} has ${has === undefined ? 'no pins' : `pattern ${has}`}, and the body is pinned through ${wanted}.`,
  mend: `Name a ${what} of pattern ${wanted}.`,
  against: lines.map((line) => ({ at: line, text: 'its pattern' })),
});
