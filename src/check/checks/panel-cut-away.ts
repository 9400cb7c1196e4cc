/** What is mounted through a panel has one: its cavity is not open to the face it goes through. */
import { cutsOf, isCavity, meantToMeet, pairsOf } from '../../facts/cuts.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { cut, cuts, ideal, pot, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'panel-cut-away',
  stage: 'derived',
  severity: 'error',
  why: 'The cutter takes away the wood it would be screwed to: a hole as wide as the cavity is left in the face.',
  mend: 'Cut the cavity from the other face, or fit a part that stands in an open cavity.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'controls:\n    setup: back',
    fails: 'controls:\n    setup: top',
    also: [],
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 12, to: 48, depth: 13 })),
    ideal('M 12 4 H 48'),
    pot(30, 4, 10),
    ring(20, 2, 3.4),
  ),
  run: ({ subject: { spec, plant }, facts }) =>
    namesOf(spec.holes).flatMap((id): Fault[] => {
      const { hardware, setup } = spec.holes![id]!;
      if (!hardware) return [];
      const seen = look(facts, (use) => {
        if (!row(plant.hardware, use(hardware), 'plant.hardware').panel) return undefined;
        const own = cutsOf(spec).find((cut) => cut.kind === 'hole' && cut.id === id)!;
        const under = pairsOf(spec)
          .filter(({ a, b }) => isCavity(a) && b === own)
          .find(({ a, b }) => meantToMeet(use, a, b))?.a;
        return under && { name: use(hardware), under, cavity: use(under.spec.setup), hole: use(setup) };
      });
      if (!seen || seen.cavity !== seen.hole) return [];
      return [
        {
          at: seen.under.spec.setup.id,
          what: `${seen.name} is mounted through the wood over ${seen.under.id}, and ${seen.under.id} is open to the ${seen.cavity}, where the hole ${id} is drilled: no wood is left there.`,
          mend: `Cut ${seen.under.id} from the other face, or fit a part that needs no panel.`,
          against: [{ at: hardware.id, text: `the part mounted in ${id}` }],
          cause: seen.under.spec.setup.id,
        },
      ];
    }),
};
export default check;
