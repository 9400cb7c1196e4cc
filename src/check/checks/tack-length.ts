/** A tack is long enough to hold in both parts, and its point stays in the wood. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { ring, section, slab, tack } from '../sketch.ts';
import type { Tack } from '../tacks.ts';
import { against, kindNamed, nameOf, rowOf, tacksToLookAt } from '../tacks.ts';

const check: Check = {
  id: 'tack-length',
  stage: 'derived',
  severity: 'error',
  why: 'One that is too short lets the cap slide under the press. The point of one that is too long comes out on the other side: into a hand, or the board of the next body.',
  mend: 'Take a tack of another length.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'length: 14, diameter: 1.2, bite: 6',
    fails: 'length: 50, diameter: 1.2, bite: 6',
    also: ['tack-met-by-cutter'],
  },
  sketch: section(
    slab({ glue: 8 }),
    tack(16, 0, 7.2, true),
    tack(42, 0, 20.4, true),
    ring(16, 8, 3.4, 'lower-right'),
    ring(42, 18, 3.6, 'lower-right'),
  ),
  run: (bench) => {
    const faults = tacksToLookAt(bench).map((tack) => fault(bench, tack));
    // Tacks of one kind fail alike: said once.
    const whats = faults.flatMap((one) => one.map(({ what }) => what.replace(/^Tack \S+/, '')));
    return faults.flat().filter((_, i) => whats.indexOf(whats[i]!) === i);
  },
};
export default check;

function fault(bench: Bench, tack: Tack): Fault[] {
  const seen = look(bench.facts, (use) => {
    const row = rowOf(bench, use, tack);
    return {
      holds: use.fact(`tack.${tack.id}.holds`),
      before: use.fact(`tack.${tack.id}.before-point`),
      pin: use(row.face) === 'glue-face',
      through: use(row.face) === 'cap-face' ? 'cap' : 'back',
      length: use(row.length),
      edge: use(row.edge),
      bite: use(row.bite),
      at: row.length.id,
      hangsOn: [row.bite.id, row.edge.id],
      kind: kindNamed(bench, use, tack),
    };
  });
  if (!seen) return [];
  const { holds, before, pin, through, length, edge, bite } = seen;
  const [deep, wood] = [bite.high ?? bite.value, edge.high ?? edge.value];
  const at = { at: seen.at, against: against(seen.kind, seen.at, 'how long it is'), hangsOn: seen.hangsOn };
  if (holds.value < deep) {
    const there = holds.value > 0 ? say(length, holds.value) : 'nothing';
    const lack = say(length, (length.low ?? length.value) + deep - holds.value);
    return [
      {
        ...at,
        what: pin
          ? `${nameOf(tack)} is ${say(length, length.value)} long and stands ${say(length, deep)} out of the back: ${there} of it is in the back. As much must be in there as stands out.`
          : `${nameOf(tack)} is ${say(length, length.value)} long: behind the ${through} at its thickest and the glue, ${there} of it holds. At least ${say(length, deep)} must hold.`,
        mend: `Take one at least ${lack} long.`,
      },
    ];
  }
  if (before.value >= wood) return [];
  const most = (length.high ?? length.value) - (wood - before.value);
  const left = before.value > 0 ? `${say(length, before.value)} of wood are` : 'no wood is';
  return [
    {
      ...at,
      what: `${nameOf(tack)} is ${say(length, length.value)} long. With the parts at their thinnest ${left} left in front of its point, and at least ${say(length, wood)} must be.`,
      mend: most > 0 ? `Take one at most ${say(length, most)} long.` : 'Take a shorter one.',
    },
  ];
}
