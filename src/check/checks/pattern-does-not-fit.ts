/** Jig, pins and fixture of the first set-up have one pattern. */
import { namesOf, row } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'pattern-does-not-fit',
  stage: 'spec',
  severity: 'error',
  why: 'Holes drilled through one jig do not go on the pins of another pattern: the body is forced on, or laid on by eye.',
  mend: 'Name a jig and a fixture of the pattern of the pins.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: '      bridge: { at: { x: 24, y: 124 }, diameter: 8 }\n',
    fails: '',
  },
  run: ({ subject: { spec, plant }, facts }): Fault[] => {
    const seen = look(facts, (use) => {
      const { pins, fixture } = spec.setups.back;
      const of = row(plant.fixtures, use(fixture), 'plant.fixtures').pattern;
      const jig = row(plant.jigs, use(spec.location.jig), 'plant.jigs').pattern;
      return {
        jig: { at: spec.location.jig.id, pattern: use(jig), row: jig.id },
        ...(pins ? { pins: { at: pins.id, pattern: use(pins) } } : {}),
        ...(of ? { fixture: { at: fixture.id, pattern: use(of), row: of.id } } : {}),
      };
    });
    if (!seen) return [];
    const { pins, fixture, jig } = seen;
    const wanted = pins?.pattern ?? jig.pattern;
    return [
      ...(jig.pattern === wanted ? [] : [fault(jig.at, 'jig', jig.pattern, wanted, jig.row)]),
      ...(!fixture || fixture.pattern === wanted
        ? []
        : [fault(fixture.at, 'fixture', fixture.pattern, wanted, fixture.row)]),
      ...(namesOf(plant.patterns?.[wanted]?.holes).length >= 2
        ? []
        : [
            {
              at: pins?.at ?? jig.at,
              what: `Pattern ${wanted} has fewer than two holes.`,
              mend: 'Give it two holes far apart.',
              against: [],
            },
          ]),
    ];
  },
};
export default check;

const fault = (at: string, what: string, has: string, wanted: string, row: string): Fault => ({
  at,
  what: `The ${what} has pattern ${has}, and the body is pinned through ${wanted}.`,
  mend: `Name a ${what} of pattern ${wanted}.`,
  against: [{ at: row, text: 'its pattern' }],
});
