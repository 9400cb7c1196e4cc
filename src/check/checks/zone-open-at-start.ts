/** No zone has air before the first cut: through a hollow cut earlier that runs out beside it, at the side or the top. */
import { cutId, cutsOf } from '../../facts/cuts.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { bed, bore, cuts, gasket, push, section, slab } from '../sketch.ts';
import type { HeldByVacuum } from '../zones.ts';
import { heldByVacuum, nameOfStep } from '../zones.ts';

const check: Check = {
  id: 'zone-open-at-start',
  stage: 'derived',
  severity: 'error',
  why: 'The zone never comes to its vacuum: the interlock keeps the machine still, or somebody bypasses it.',
  mend: 'Lay the zone clear of what lets the air in, or round all of it, or cut the way to the air later.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'channels:\n',
    fails:
      'channels:\n  bore:\n    setup: back\n    start: { x: 0, y: 226 }\n    end: { x: 0, y: 183 }\n    diameter: 6\n    from: back-face\n    depth: 8 ±0.5\n    drill: d-6-long\n    use: other\n    into: [tooling-hole-a]\n',
    also: ['hold-down-poor'],
  },
  sketch: section(
    bed(19),
    slab({ left: 4, right: 56, bottom: 17 }),
    gasket(10, 17),
    gasket(50, 17),
    cuts(bore({ from: [30, 0], to: [30, 17], width: 6, end: 'open' })),
    push([30, -6], [30, 16]),
  ),
  run: (bench) => heldByVacuum(bench).flatMap((held) => faults(bench, held)),
};
export default check;

const WAYS = {
  side: 'runs out at the side of the body',
  face: 'is open at the face that looks up',
  under: 'is open under the body, beside the zones',
  gasket: '',
} as const;

function faults({ subject, facts }: Bench, { setup, zones }: HeldByVacuum): Fault[] {
  const fact = `zones.${setup}.opened` as const;
  const opened = look(facts, (use) => use.fact(fact)) ?? [];
  return opened
    .filter(({ step, way }) => step === 'start' && way !== 'gasket')
    .flatMap(({ zone, way, by }): Fault[] => {
      const names = by.map(nameOfStep);
      return zones
        .filter(({ id }) => id === zone)
        .map(({ at }) => ({
          at,
          what: `Zone ${zone} is open to the air before the first cut of set-up ${setup}: through ${names.join(', ')}, which ${WAYS[way]}.`,
          mend: `Lay the zone clear of ${names[0]}, or round the whole of what lets the air in.`,
          against: cutsOf(subject.spec)
            .filter((cut) => by.includes(cutId(cut)))
            .map((cut) => ({ at: cut.place.id, text: `where ${cut.id} lies` })),
          hangsOn: [fact],
        }));
    });
}
