/**
 * A channel is drilled along a straight line from outside: behind its start the drill runs through air, out of the cavity it
 * starts in, to that cavity's open face or through the side of the body.
 */
import { cutId, cutsOf, isNamed } from '../../facts/cuts.ts';
import type { Cut } from '../../facts/cuts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Model } from '../../facts/spec.generated.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayPoint } from '../say.ts';
import { cut, cuts, drill, ideal, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'channel-not-drillable',
  stage: 'derived',
  severity: 'error',
  why: 'The drill lies on the edge of the cavity and cannot be brought to its line: somebody bends it, and it breaks or wanders out through the top.',
  mend: 'Start it nearer to the open face and let it fall more, or start it at the edge of the body or outside it.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'depth: 3 ±0.5\n    falls: 37',
    fails: 'depth: 12 ±0.5\n    falls: 12',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 12, to: 26, depth: 12 })),
    ideal('M 26 6.6 L 50 9 M 26 9.6 L 50 12'),
    drill([2, 5.4], [30, 8.3], 2.8),
    ring(11.4, 6.4, 3.4),
  ),
  run: (bench) => namesOf(bench.subject.spec.channels).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec, hand }, facts }: Bench, id: string): Fault[] {
  const stuck = look(facts, (use) => use.fact(`channel.${id}.way-out`))?.stuck;
  if (!stuck) return [];
  const { start, depth } = spec.channels![id]!;
  return [
    {
      at: start.x.id,
      what: `The drill for the channel ${id} has to come in from outside, in line with it. Behind its start wood is in the way, at ${sayPoint(stuck, hand)}.`,
      mend: 'Start it nearer to the open face and let it fall more, or start it at the edge of the body or outside it.',
      against: [{ at: depth.id, text: 'how deep the middle of the channel lies at its start' }],
      hangsOn: [`channel.${id}.void`, ...openings(cutsOf(spec), spec.channels![id]!, facts)],
    },
  ];
}

/** What it is said to run into, and may be meant to start in. */
function openings(cuts: readonly Cut[], { into }: Model.Channel, facts: Bench['facts']): readonly string[] {
  const names = look(facts, (use) => (into ?? []).map((leaf) => use(leaf))) ?? [];
  return cuts.filter((cut) => names.some((name) => isNamed(name, cut))).map((cut) => `${cutId(cut)}.void`);
}
