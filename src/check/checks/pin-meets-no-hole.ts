/** The holes that a set-up is pinned through are open on the face that lies on its fixture. */
import type { SetupId } from '../../facts/cutting-order.ts';
import { setupOrder } from '../../facts/cutting-order.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { bed, bore, cuts, pin, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'pin-meets-no-hole',
  stage: 'derived',
  severity: 'error',
  why: 'The wood comes down on its pins and finds no holes: it is laid beside them, or drilled by hand from the other side.',
  mend: 'Drill the holes right through, or rest the set-up on the face they are drilled from.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'setups:\n  back:',
    fails:
      'setups:\n  glue-face: { up: glue-face, rests-on: blank-back, pins: p2, hold: clamps, z-zero: touched-off, machine: router, fixture: tarn-back-right, program: "4100", cycle: 3 min }\n  back:',
    also: ['route-out-of-order'],
  },
  sketch: section(
    bed(19.5),
    slab({ bottom: 15 }),
    cuts(bore({ from: [16, 15], to: [16, 6], width: 5.4 })),
    pin(16, 19.5, 10),
    pin(42, 19.5, 15.2),
    ring(42, 14.6, 4),
  ),
  run: (bench) =>
    setupOrder
      .filter((setup) => bench.subject.spec.setups[setup] !== undefined)
      .flatMap((setup) => fault(bench, setup)),
};
export default check;

function fault({ subject: { spec }, facts }: Bench, setup: SetupId): Fault[] {
  const { 'rests-on': rests, pins, 'locates-on': located } = spec.setups[setup]!;
  const seen = look(facts, (use) => ({
    rests: use(rests),
    // A hole that the set-up drills itself is not there yet: another check's.
    holes: use.fact(`location.${setup}.pin-holes`).filter(({ id }) => pins || use(spec.holes![id]!.setup) !== setup),
  }));
  const [shut] = seen?.holes.filter(({ open }) => !open) ?? [];
  if (!seen || !shut?.deep) return [];
  const names = seen.holes.filter(({ open }) => !open).map(({ id }) => id);
  const face = FACES[seen.rests] ?? seen.rests;
  const by = pins ?? located?.[0];
  return [
    {
      at: shut.by,
      what: `In set-up ${setup} the wood lies with ${face} on the pins, and the holes for them (${names.join(', ')}) are drilled from the other face, ${say(shut.deep, shut.deep.value)} deep and not through: the pins find no holes.`,
      mend: pins
        ? 'Drill the jig’s holes right through: give them no `depth`.'
        : 'Drill the holes in a set-up that looks up with the face the wood lies on here, or right through.',
      against: [
        { at: rests.id, text: 'the face that lies on the fixture' },
        ...(by ? [{ at: by.id, text: 'the pins it goes on' }] : []),
      ],
      hangsOn: [`location.${setup}.pin-holes`],
    },
  ];
}

/** Faces as people on the floor call them. */
const FACES: Readonly<Record<string, string>> = {
  'blank-back': 'its back',
  'back-face': 'its faced back',
  'cap-face': 'the face of its cap',
  'slab-face': 'the face of its slab',
  'glue-face': 'its glue face',
};
