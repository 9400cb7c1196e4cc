/** Where the left hand has a pattern of its own, that is the mirror image of the right hand's. */
import type { Use } from '../../facts/facts.ts';
import { Leaf } from '../../facts/leaf.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Length } from '../../units/quantity.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { centreline, disc, distance, hole, ideal, outline, plan } from '../sketch.ts';

const check: Check = {
  id: 'pattern-not-mirrored',
  stage: 'spec',
  // A pattern of another design can be sound: where its holes lie on the body is checked on its own.
  severity: 'caution',
  why: 'The left body is the mirror image of the right one. Holes copied from the right hand lie on the other side of its centreline: the body goes on, and everything is cut beside where it should be.',
  mend: 'Give each hole of the left pattern the x of the right one with the other sign.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: '    title: Jig P2 left\n    pattern: p2\n',
    fails: '    title: Jig P2 left\n    pattern: p2-left\n',
    beside: {
      file: 'models/plant/plant.yaml',
      find: 'patterns:\n',
      replace:
        'patterns:\n  p2-left:\n    title: P2 left\n    holes:\n      neck: { at: { x: 0, y: 200 }, diameter: 10, fit: H8 }\n      bridge: { at: { x: 24, y: 124 }, diameter: 8, fit: H8 }\n',
    },
    also: ['pattern-does-not-fit'],
  },
  sketch: plan(
    outline(),
    centreline(),
    hole(16, 0, 1.6),
    hole(-10, 5.4, 1.6),
    ideal(disc(-10, -5.4, 1.6)),
    distance([-10, -5.4], [-10, 5.4], 'end'),
  ),
  run: (bench) => {
    const { subject, others, facts } = bench;
    if (subject.hand !== 'left') return [];
    const right = others.find((other) => other.hand === 'right' && idOf(other) === idOf(subject));
    if (!right) return [];
    const seen = look(facts, (use) => ({ left: patternOf(subject, use), right: patternOf(right, use) }));
    if (!seen || seen.left.name === seen.right.name) return [];
    const { left } = seen;
    return left.holes.flatMap((hole) => {
      const twin = seen.right.holes.find(({ id }) => id === hole.id);
      if (!twin || (hole.x.value === -twin.x.value && hole.y.value === twin.y.value)) return [];
      return [fault(left, hole, twin)];
    });
  },
};
export default check;

const idOf = ({ spec }: Subject): string => (spec.model instanceof Leaf ? spec.model.text : '');

interface Hole {
  readonly id: string;
  readonly x: Length;
  readonly y: Length;
  readonly at: string;
}

interface Pattern {
  readonly name: string;
  readonly from: string;
  readonly holes: readonly Hole[];
}

function patternOf({ spec, plant }: Subject, use: Use): Pattern {
  const jig = row(plant.jigs, use(spec.location.jig), 'plant.jigs');
  const name = use(jig.pattern);
  const { holes } = row(plant.patterns, name, 'plant.patterns');
  return {
    name,
    from: jig.pattern.id,
    holes: namesOf(holes).map((id) => {
      const { x, y } = holes[id]!.at;
      return { id, x: use(x), y: use(y), at: x.id };
    }),
  };
}

function fault({ name, from }: Pattern, hole: Hole, twin: Hole): Fault {
  const { x, y } = twin;
  return {
    at: hole.at,
    what: `Hole ${hole.id} of the left pattern ${name} lies at x ${say(x, hole.x.value)}, y ${say(y, hole.y.value)}; the mirror image of the right one is x ${say(x, -x.value)}, y ${say(y, y.value)}.`,
    mend: `Give it x ${say(x, -x.value)} and y ${say(y, y.value)}.`,
    against: [
      { at: twin.at, text: 'the same hole of the right hand' },
      { at: from, text: 'the jig of the left hand names the pattern' },
    ],
    cause: `pattern ${name}`,
  };
}
