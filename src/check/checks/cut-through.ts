/** Every cut goes into the wood, and none goes through it into the fixture. */
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { bed, cut, cuts, cutter, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'cut-through',
  stage: 'derived',
  severity: 'error',
  why: 'A cut that goes through takes the fixture with it, opens the hold, and throws what comes loose.',
  mend: 'Cut less deep, or leave more wood.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'depth: 19.0 ±0.2',
    fails: 'depth: 56.0 ±0.2',
    also: ['cutter-too-short'],
  },
  sketch: section(
    bed(),
    slab(),
    cuts(cut({ from: 16, to: 38, depth: 19.5 })),
    cutter({ x: 34, tip: 19.5, width: 8, flutes: 17 }),
    ring(34, 18.5, 4, 'upper-right'),
  ),
  run: (bench) => {
    const { cavities, holes } = bench.subject.spec;
    return [
      ...namesOf(cavities).flatMap((id) =>
        fault(bench, 'cavity', id, cavities![id]!.floor?.id ?? cavities![id]!.depth?.id),
      ),
      ...namesOf(holes).flatMap((id) => fault(bench, 'hole', id, holes![id]!.depth.id)),
    ];
  },
};
export default check;

function fault({ facts }: Bench, kind: 'cavity' | 'hole', id: string, given: string | undefined): Fault[] {
  const seen = look(facts, (use) => ({
    deep: use.fact(`${kind}.${id}.deep`),
    through: use.fact(`${kind}.${id}.through`),
  }));
  if (!seen) return [];
  const { deep, through } = seen;
  const at = given ?? `${kind}.${id}.required`;
  const most = deep.high ?? deep.value;
  const wood = say(deep, through.value);
  const against = [{ at: `${kind}.${id}.through`, text: 'how thick the wood is there' }];
  const hangsOn = [`${kind}.${id}.deep`];
  if ((deep.low ?? deep.value) <= 0) {
    return [
      {
        at,
        what: `There is nothing to cut: the floor of the ${kind} ${id} would lie ${say(deep, -(deep.low ?? deep.value))} above the face the tool comes from.`,
        mend: `Leave less than ${wood} of wood, or count from another surface.`,
        against,
        hangsOn,
      },
    ];
  }
  // A hole may end at the fixture: it goes through. A cavity may not.
  if (kind === 'hole' ? most <= through.value : most < through.value) return [];
  return [
    {
      at,
      what: `The ${kind} ${id} may come out ${say(deep, most)} deep, and the wood is only ${wood} thick there.`,
      mend: `Cut it less than ${wood} deep, its limits counted.`,
      against,
      hangsOn,
    },
  ];
}
