/** Jigs and fixtures are those of the hand being made. */
import type { Leaf } from '../../facts/leaf.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { centreline, disc, hole, ideal, outline, plan, pocket, rect, ring } from '../sketch.ts';

const check: Check = {
  id: 'wrong-hand',
  stage: 'spec',
  severity: 'error',
  why: 'On the other hand’s fixture the body lies mirrored under the cutter: it is cut through before anybody sees it.',
  mend: 'Name the jig or fixture of this hand.',
  example: {
    file: 'models/tarn.yaml',
    passes: "back: { fixture: tarn-back-left, program: '4111' }",
    fails: "back: { fixture: tarn-back-right, program: '4111' }",
  },
  sketch: plan(
    outline(),
    centreline(),
    pocket(-17, 2.4, -5, 8.6, 1),
    ideal(rect(-17, -8.6, -5, -2.4, 1)),
    hole(10, -5, 1.6),
    ideal(disc(10, 5, 1.6)),
    ring(-11, 5.4, 3.6),
  ),
  run: (bench) => {
    const { spec, plant } = bench.subject;
    const setups = namesOf(spec.setups) as readonly (keyof typeof spec.setups)[];
    return [
      ...fault(bench, 'jig', spec.location.jig, (name) => row(plant.jigs, name, 'plant.jigs').hand),
      ...setups.flatMap((id) =>
        fault(bench, 'fixture', spec.setups[id]!.fixture, (name) => row(plant.fixtures, name, 'plant.fixtures').hand),
      ),
    ];
  },
};
export default check;

type Hands = Leaf<'right' | 'left' | 'both'>;

function fault(
  { subject: { hand }, facts }: Bench,
  what: string,
  leaf: Leaf<string>,
  handOf: (name: string) => Hands,
): Fault[] {
  const seen = look(facts, (use) => {
    const of = handOf(use(leaf));
    return { at: leaf.id, name: use(leaf), of: use(of), row: of.id };
  });
  if (!seen || seen.of === 'both' || seen.of === hand) return [];
  return [
    {
      at: seen.at,
      what: `${seen.name} is the ${what} of the ${seen.of} hand, and this is the ${hand}.`,
      mend: `Name a ${what} of the ${hand} hand.`,
      against: [{ at: seen.row, text: 'the hand it serves' }],
    },
  ];
}
