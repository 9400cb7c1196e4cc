/** A cutting time by the clock is of the size that the paths of its cutters come to. */
import type { SetupId } from '../../facts/cutting-order.ts';
import { machineSteps, setupOrder } from '../../facts/cutting-order.ts';
import { cutterOf } from '../../facts/cutter-row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';

/** Under half or over double of the estimate; common practice, no source. */
const FAR = 2;

const check: Check = {
  id: 'cycle-unlikely',
  stage: 'derived',
  severity: 'caution',
  why: 'A day is planned by this number. Either the clock was read wrongly, or a feed here is not the one in the program.',
  mend: 'Time a body once more. If the time is right, look at the feeds, step downs and step overs of its cutters.',
  example: { file: 'models/tarn.yaml', passes: 'cycle: 6 min', fails: 'cycle: 60 min' },
  run: (bench) =>
    setupOrder.filter((setup) => bench.subject.spec.setups[setup]).flatMap((setup) => fault(bench, setup)),
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, setup: SetupId): Fault[] {
  const cycle = spec.setups[setup]?.cycle;
  if (!cycle) return [];
  const seen = look(facts, (use) => {
    const steps = machineSteps(spec, use, setup).map(({ key, cutter }) => ({
      key,
      cutter: cutterOf(plant, use, cutter),
      time: use.fact(`run.${key}.time`),
    }));
    const longest = steps.toSorted((a, b) => (b.time?.value ?? 0) - (a.time?.value ?? 0))[0];
    return { given: use(cycle), estimate: use.fact(`run.${setup}.estimate`), longest };
  });
  if (!seen) return [];
  const { given, estimate, longest } = seen;
  if (given.value >= estimate.value / FAR && given.value <= estimate.value * FAR) return [];
  const most = longest?.time
    ? ` (the longest: ${longest.key.replace(/^.*\./, '')}, ${sayAs(longest.time, longest.time.value)})`
    : '';
  const feed = longest?.cutter.row.feed;
  return [
    {
      at: cycle.id,
      what: `Set-up ${setup} is said to take ${sayAs(given, given.value)} by the clock. The paths of its cutters come to about ${sayAs(estimate, estimate.value)}${most}, and half to double of that is usual.`,
      mend: 'Time a body once more. If the time is right, look at the feeds, step downs and step overs of its cutters.',
      against: feed ? [{ at: feed.id, text: 'the feed of the longest cut' }] : [],
      hangsOn: [`run.${setup}.estimate`],
    },
  ];
}
