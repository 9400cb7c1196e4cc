/** Parts keep clear of each other: bodies in one cavity, and washers, rings and plates on one face. */
import type { Beside } from '../../facts/fitted.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import type { Part } from '../hardware.ts';
import { fittedParts, lowOf, sizesOf } from '../hardware.ts';
import { say } from '../say.ts';

const check: Check = {
  id: 'hardware-in-hardware',
  stage: 'derived',
  severity: 'error',
  why: 'Two parts want one place: the second does not go in, or its washer lies on the first.',
  mend: 'Move one of them.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'body: { length: 15, width: 90, corner: 2 }',
    fails: 'body: { length: 60, width: 90, corner: 2 }',
  },
  run: (bench) => {
    const parts = fittedParts(bench);
    return parts.flatMap((part, i) =>
      (['body', 'on-face'] as const).flatMap((what) => faults(bench, { parts, part, i }, what)),
    );
  },
};
export default check;

interface Of {
  readonly parts: readonly Part[];
  readonly part: Part;
  readonly i: number;
}

function faults(bench: Bench, { parts, part, i }: Of, what: 'body' | 'on-face'): Fault[] {
  const fact = `fitted.${part.id}.beside-${what}` as const;
  const beside = look(bench.facts, (use) => use.fact(fact));
  const other = parts.find(({ id }) => id === beside?.other);
  if (!beside || !other) return [];
  const room = Math.max(roomOf(bench, part, what), roomOf(bench, other, what));
  if (lowOf(beside.apart) >= room || saidAlready(bench, { part, other, i, j: parts.indexOf(other) }, what)) return [];
  return [
    {
      at: part.fitted.place.id,
      what: `${part.name} of ${part.fitted.id} and ${other.name} of ${other.fitted.id} ${apart(beside)}; they need ${say(beside.apart, room)} at worst.`,
      mend: `Move one of them ${say(beside.apart, room - lowOf(beside.apart))} away.`,
      against: [
        { at: other.fitted.place.id, text: 'where the other lies' },
        { at: part.fitted.hardware.id, text: 'the one' },
        { at: other.fitted.hardware.id, text: 'the other' },
        ...[part, other].flatMap(({ row: { body, flange, washer } }) => [
          ...sizesOf(what === 'on-face' ? (flange ?? body) : body),
          ...(what === 'on-face' && washer ? [{ at: washer.id, text: 'its washer' }] : []),
        ]),
      ],
      hangsOn: [fact],
    },
  ];
}

const apart = ({ apart: q }: Beside): string =>
  q.value < 0
    ? `lie ${say(q, -q.value)} over each other`
    : `are ${say(q, q.value)} apart as drawn, ${say(q, lowOf(q))} at worst`;

/** Room round a body counts between bodies too; on a face it is enough that nothing lies over another. */
function roomOf({ facts }: Bench, { row: { room } }: Part, what: 'body' | 'on-face'): number {
  return what === 'on-face' || !room ? 0 : (look(facts, (use) => use(room))?.value ?? 0);
}

/** Each of two is the nearest of the other: that is one finding. */
function saidAlready(
  { facts }: Bench,
  { part, other, i, j }: { part: Part; other: Part; i: number; j: number },
  what: 'body' | 'on-face',
): boolean {
  return j < i && look(facts, (use) => use.fact(`fitted.${other.id}.beside-${what}`))?.other === part.id;
}
