/** A drill turns freely in the bushing that guides it, at its thickest in the smallest bore. */
import { setupOrder } from '../../facts/cutting-order.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import { row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { bushing, cut, cuts, drill, hollow, rect, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'drill-tight-in-bushing',
  stage: 'derived',
  severity: 'error',
  why: 'It seizes in the jig: the bushing is torn out, or the drill snaps.',
  mend: 'Take a thinner drill, or a bushing with a wider bore.',
  example: {
    file: 'models/plant/plant.yaml',
    passes:
      'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 9.98..10.00 }',
    fails:
      'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 9.98..10.03 }',
  },
  sketch: section(
    slab({ top: 4, bottom: 15, fill: 'bed' }),
    cuts(cut({ from: 20, to: 40, depth: 11, at: 4 }), hollow(rect(20, 14.6, 40, 15.4))),
    bushing(30, 2, 15, 20, 8.6),
    drill([30, -9], [30, 20], 8.6),
    ring(34.4, 9, 3.6),
  ),
  run: (bench) =>
    setupOrder
      .filter((setup) => bench.subject.spec.setups[setup] !== undefined)
      .flatMap((setup) => (['first', 'second'] as const).flatMap((which, i) => faults(bench, setup, which, i))),
};
export default check;

const inThousandths = { unit: 'mm', decimals: 3 };

function faults(
  { subject: { spec, plant }, facts }: Bench,
  setup: SetupId,
  which: 'first' | 'second',
  i: number,
): Fault[] {
  const fact = `location.${setup}.${which}-drill-play` as const;
  const seen = look(facts, (use) => {
    const [play, datum] = [use.fact(fact), use.fact(`location.${setup}.datums`)?.[i]];
    const { bushings } = row(plant.jigs, use(spec.location.jig), 'plant.jigs');
    return play && datum && bushings?.[datum.id] && { play, id: datum.id, bushing: bushings[datum.id]! };
  });
  if (!seen) return [];
  const least = seen.play.low ?? seen.play.value;
  if (least >= 0) return [];
  const { fit, diameter, drill } = seen.bushing;
  return [
    {
      at: drill.id,
      what: `The drill for ${seen.id} may be ${say(inThousandths, -least)} thicker than the bore of its bushing.`,
      mend: `Take a drill at least ${say(inThousandths, -least)} thinner.`,
      against: [fit, diameter].flatMap((leaf) => (leaf ? [{ at: leaf.id, text: 'the bore of the bushing' }] : [])),
      hangsOn: [fact],
    },
  ];
}
