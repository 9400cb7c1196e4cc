/** A hole or bore that names its part has the diameter the part needs. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import type { Part } from '../hardware.ts';
import { fittedParts } from '../hardware.ts';
import { say } from '../say.ts';
import { across, asked, bore, cuts, rect, section, shape, slab } from '../sketch.ts';

/** A drill is no truer than this to its own size: 8 mm and .315 in are one hole. */
const SAME_NM = 20_000;

const check: Check = {
  id: 'hole-of-hardware',
  stage: 'derived',
  severity: 'error',
  why: 'Too narrow, and the part is reamed in by hand and the face chips; too wide, and it turns or falls out.',
  mend: 'Drill the hole the part needs, or name the part that goes in.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'kind: bushing, hole: 11',
    fails: 'kind: bushing, hole: 12',
  },
  sketch: section(
    slab(),
    cuts(bore({ from: [30, 0], to: [30, 13], width: 7, end: 'flat' })),
    shape(rect(24, -8, 36, -1), 'metal', 'edge'),
    across(-4.5, 24, 36),
    asked([26.5, 6], [33.5, 6]),
  ),
  run: (bench) => fittedParts(bench).flatMap((part) => faults(bench, part)),
};
export default check;

function faults({ subject: { spec }, facts }: Bench, { fitted, name, row }: Part): Fault[] {
  const { kind, id } = fitted;
  const cut = kind === 'hole' ? spec.holes![id]! : kind === 'channel' ? spec.channels![id]! : undefined;
  const { hole } = row;
  const seen = cut && hole && look(facts, (use) => ({ drilled: use(cut.diameter), needed: use(hole) }));
  if (!seen || Math.abs(seen.drilled.value - seen.needed.value) <= SAME_NM) return [];
  const needed = say(seen.needed, seen.needed.value);
  return [
    {
      at: cut.diameter.id,
      what: `${name} takes a hole of ${needed}, and ${id} is ${say(seen.drilled, seen.drilled.value)} wide.`,
      mend: `Drill ${id} ${needed} wide, or name the part that goes in.`,
      // One row, and every hole that was drilled for it: where all differ, the row is what changed.
      cause: `${hole.id} ${seen.drilled.value}`,
      against: [
        { at: hole.id, text: `the hole ${name} needs` },
        { at: fitted.hardware.id, text: 'what goes in' },
      ],
    },
  ];
}
