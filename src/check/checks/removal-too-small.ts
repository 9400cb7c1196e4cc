/** Every stage takes off at least what cleans up the one before. */
import { highestPoint, partsOf, pointsOf } from '../../facts/parts.ts';
import type { Facts } from '../../facts/facts.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { ideal, line, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'removal-too-small',
  stage: 'derived',
  severity: 'error',
  why: 'Where the thinnest piece meets the thickest setting the cutter or belt finds nothing to cut: bow, marks and tear-out of the stage before stay in the wood.',
  mend: 'Make the stage before thicker, the stage after thinner, or draw their limits in.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'machined: { crown: 49.60 ±0.12, land: 45.40 ±0.12 }',
    fails: 'machined: { crown: 49.40 ±0.12, land: 45.40 ±0.12 }',
  },
  sketch: section(slab({ face: 'Q 30 8 58 0' }), ideal('M 1 1.4 H 59'), line('M 2 0 H 58', 'thin'), ring(30, 2.6, 3.8)),
  run: ({ subject, facts }) => {
    const { spec } = subject;
    const parts = partsOf(spec).flatMap((part) => [
      fault(facts, `removal.part.${part}.planed`, `thickness.part.${part}.rough`, `thickness.part.${part}.planed`),
      fault(facts, `removal.part.${part}.sized`, `thickness.part.${part}.planed`, `thickness.part.${part}.sized`),
    ]);
    const faced = facts.has('removal.body.back-faced');
    const machined = `thickness.body.machined.${highestPoint(spec)}`;
    const body = [
      ...(faced ? [fault(facts, 'removal.body.back-faced', 'thickness.blank', 'thickness.body.back-faced')] : []),
      fault(facts, 'removal.body.machined', faced ? 'thickness.body.back-faced' : 'thickness.blank', machined),
      ...pointsOf(spec, 'white').map((at) =>
        fault(facts, `removal.body.white.${at}`, `thickness.body.machined.${at}`, `thickness.body.white.${at}`),
      ),
    ];
    return [...parts, ...body].flat();
  },
};
export default check;

function fault(facts: Facts, removalId: string, beforeId: string, afterId: string): Fault[] {
  if (!facts.has(removalId) || !facts.has(`least-${removalId}`) || !facts.has(beforeId) || !facts.has(afterId))
    return [];
  const leastId = `least-${removalId}` as `least-removal.body.machined`;
  const seen = look(facts, (use) => ({
    removal: use.fact(removalId as 'removal.body.machined'),
    least: use.fact(leastId),
    before: use.fact(beforeId as 'thickness.blank'),
    after: use.fact(afterId as 'thickness.blank'),
  }));
  if (!seen) return [];
  const { removal, least, before, after } = seen;
  const reaches = removal.low ?? removal.value;
  if (reaches >= least.value) return [];
  const short = least.value - reaches;
  const there =
    reaches < 0 ? `it is ${say(after, -reaches)} too thin already` : `that is ${say(after, reaches)} to take off`;
  const [thinnest, thickest] = [before.low ?? before.value, after.high ?? after.value];
  return [
    {
      at: afterId,
      what: `Too little is left to take off. At its thinnest the wood comes in at ${say(after, thinnest)}, and at its thickest it is to go out at ${say(after, thickest)}: ${there}, and at least ${say(after, least.value)} must come off.`,
      mend: `Make this stage at least ${say(after, short)} thinner (${say(after, after.value - short)} as drawn), or the one before, "${facts.fact(beforeId)!.label}", as much thicker (${say(after, before.value + short)} as drawn). Or draw the limits in.`,
      against: [
        { at: beforeId, text: `the stage before: at the thinnest ${say(before, thinnest)}` },
        {
          at: leastId,
          text: `must take off at least ${say(after, least.value)}: flatness, marks and floor of the line`,
        },
      ],
    },
  ];
}
