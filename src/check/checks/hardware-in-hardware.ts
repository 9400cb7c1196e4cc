/** Parts keep clear of each other: bodies in one cavity, and washers, rings and plates on one face. */
import type { Beside } from '../../facts/fitted.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import type { Part } from '../hardware.ts';
import { fittedParts, lowOf, sizesOf } from '../hardware.ts';
import { drawnAndWorst, say } from '../say.ts';
import { disc, field, line, plan, pocket, rect, ring, shape } from '../sketch.ts';

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
  sketch: plan(
    field(),
    pocket(-22, -10, 22, 10, 3),
    shape(rect(-19, -7, 4, 7, 1), 'metal', 'edge'),
    shape(disc(7, 0, 7), 'metal', 'edge'),
    line('M 4 -7 V 7', 'hidden'),
    ring(2, 0, 4.4),
  ),
  run: (bench) => {
    const parts = fittedParts(bench);
    return (['body', 'on-face'] as const).flatMap((what) =>
      (look(bench.facts, (use) => use.fact(`hardware.beside.${what}`)) ?? []).flatMap((beside) => {
        const [a, b] = [beside.a, beside.b].map((id) => parts.find((part) => part.id === id));
        return a && b ? faults(bench, { a, b, beside }, what) : [];
      }),
    );
  },
};
export default check;

interface Two {
  readonly a: Part;
  readonly b: Part;
  readonly beside: Beside;
}

function faults(bench: Bench, { a, b, beside }: Two, what: 'body' | 'on-face'): Fault[] {
  const room = Math.max(roomOf(bench, a, what), roomOf(bench, b, what));
  if (lowOf(beside.apart) >= room) return [];
  return [
    {
      at: a.fitted.place.id,
      what: `${a.name} of ${a.fitted.id} and ${b.name} of ${b.fitted.id} ${apart(beside)}. ${room > 0 ? `They need ${say(beside.apart, room)} between them` : 'Neither may lie over the other'}.`,
      mend: `Move one of them ${say(beside.apart, room - lowOf(beside.apart))} away.`,
      against: [
        { at: b.fitted.place.id, text: `where ${b.fitted.id} lies` },
        { at: a.fitted.hardware.id, text: `what is fitted at ${a.fitted.id}` },
        { at: b.fitted.hardware.id, text: `what is fitted at ${b.fitted.id}` },
        ...[a, b].flatMap(({ name, row: { body, flange, washer } }) => [
          ...sizesOf(what === 'on-face' ? (flange ?? body) : body, name),
          ...(what === 'on-face' && washer ? [{ at: washer.id, text: `the washer of ${name}` }] : []),
        ]),
      ],
      hangsOn: [a, b].map(({ id }) => `fitted.${id}.${what}`),
    },
  ];
}

const apart = ({ apart: q }: Beside): string =>
  `lie ${drawnAndWorst(q, (size, past) => `${size} ${past ? 'over each other' : 'apart'}`)}`;

/** Room round a body counts between bodies too; on a face it is enough that nothing lies over another. */
function roomOf({ facts }: Bench, { row: { room } }: Part, what: 'body' | 'on-face'): number {
  return what === 'on-face' || !room ? 0 : (look(facts, (use) => use(room))?.value ?? 0);
}
