/** Every screw, stud and string of a part finds its hole: at its place, and with what goes in there. */
import type { MountPlace } from '../../facts/fitted.ts';
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import type { Part } from '../hardware.ts';
import { fittedParts } from '../hardware.ts';
import { say, sayPoint } from '../say.ts';
import { centreMark, disc, field, hole, ideal, line, plan, rect, ring } from '../sketch.ts';

/** As for the hole of a part: two units, one size. */
const SAME_NM = 20_000;

const check: Check = {
  id: 'mount-without-hole',
  stage: 'derived',
  severity: 'error',
  why: 'The bridge does not go over its studs, or its screws are drilled by eye through a painted top.',
  mend: 'Draw the hole where the part takes it, or move the part.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'at: { x: -37, y: -3 }',
    fails: 'at: { x: -37, y: -5 }',
  },
  sketch: plan(
    field(),
    hole(-4, -9, 2.2),
    hole(1, 9, 2.2),
    line(rect(-10, -14, 4, 14, 2)),
    ideal(disc(-4, 9, 2.2)),
    centreMark(-4, 9),
    centreMark(-4, -9),
    ring(-1.4, 9, 6),
  ),
  run: (bench) => fittedParts(bench).flatMap((part) => faults(bench, part)),
};
export default check;

function faults(bench: Bench, part: Part): Fault[] {
  if (part.fitted.kind !== 'fitting') return [];
  const fact = `fitted.fitting.${part.fitted.id}.mounts` as const;
  const { within } = part.row;
  const seen = look(bench.facts, (use) => ({ mounts: use.fact(fact), within: within && use(within) }));
  if (!seen?.within) return [];
  const { spec } = bench.subject;
  return seen.mounts.flatMap((mount): Fault[] => {
    const hole = mount.hole === undefined ? undefined : spec.holes![mount.hole];
    const place = part.row.mounts![mount.mount]!;
    const spot = sayPoint({ x: mount.xMm, y: mount.yMm }, bench.subject.hand);
    const wants = wantedAt(bench, place);
    const here = `${part.name} of ${part.fitted.id} takes ${wants} at ${spot}`;
    const fault = (what: string, mend: string, at: string): Fault[] => [
      {
        at,
        what: `${here}, ${what}.`,
        mend,
        against: [
          { at: part.fitted.place.id, text: 'where the part lies' },
          { at: place.x.id, text: `where ${part.name} takes that hole` },
        ],
        hangsOn: [fact],
      },
    ];
    if (!hole || !mount.off) {
      return fault('and no hole is drilled from that face', `Draw ${wants} there.`, part.fitted.hardware.id);
    }
    if (mount.off.value > seen.within!.value) {
      return fault(
        `and the nearest hole, ${mount.hole}, lies ${say(seen.within!, mount.off.value)} off. It may be off by ${say(seen.within!, seen.within!.value)} at most`,
        `Move ${mount.hole} to ${spot}, or move the part.`,
        hole.at.x.id,
      );
    }
    const wrong = otherThan(bench, mount, place);
    return wrong ? fault(wrong, `Make ${mount.hole} ${wants}.`, hole.at.x.id) : [];
  });
}

type Place = NonNullable<Part['row']['mounts']>[string];

function wantedAt({ facts }: Bench, { screw, part, hole }: Place): string {
  return (
    look(facts, (use) =>
      screw
        ? `a pilot for ${use(screw)}`
        : part
          ? `a hole for ${use(part)}`
          : hole
            ? `a hole of ${say(use(hole), use(hole).value)}`
            : 'a hole',
    ) ?? 'a hole'
  );
}

/** What is wrong with the hole that is there; nothing where it suits. */
function otherThan({ subject: { spec }, facts }: Bench, mount: MountPlace, place: Place): string | undefined {
  const id = namesOf(spec.holes).find((name) => name === mount.hole)!;
  const own = spec.holes![id]!;
  return look(facts, (use) => {
    const named = (leaf: typeof own.screw) => (leaf ? use(leaf) : 'none');
    if (place.screw) {
      return named(own.screw) === use(place.screw) ? undefined : `and ${id} is a pilot for ${named(own.screw)}`;
    }
    if (place.part) {
      return named(own.hardware) === use(place.part) ? undefined : `and ${id} is a hole for ${named(own.hardware)}`;
    }
    const [is, asked] = [use(own.diameter), place.hole && use(place.hole)];
    if (!asked || Math.abs(is.value - asked.value) <= SAME_NM) return undefined;
    return `and ${id} is ${say(is, is.value)}`;
  });
}
