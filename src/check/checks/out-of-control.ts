/** Samples measured one after another stay inside the limits of their charts. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs, sayFact } from '../say.ts';
import { plan, ring, series } from '../sketch.ts';

const check: Check = {
  id: 'out-of-control',
  stage: 'derived',
  severity: 'caution',
  why: 'Something changed at the station: a tool, a stop, a lot of wood. What it holds from here on is not what was measured before.',
  mend: 'Find what changed on that day. Where it is known and mended, take that sample out of the file.',
  example: {
    file: 'models/readings/sizing.csv',
    passes: 'first,16.40',
    fails: 'first,16.60',
  },
  sketch: plan(
    series([-25, 2], [-17, -3], [-9, 1], [-1, -2], [7, 4], [15, -1], [22, -12]),
    ring(22, -12, 3, 'lower-right'),
  ),
  run: (bench) => [...bench.subject.readings.keys()].flatMap((fact) => fault(bench, fact)),
};
export default check;

function fault({ subject, facts }: Bench, fact: string): Fault[] {
  const id = `measured.${fact}` as const;
  if (!facts.has(id)) return [];
  const charts = look(facts, (use) => ({ of: use.fact(id).charts, taken: use(subject.readings.get(fact)!) }))?.of;
  if (!charts || charts.out.length === 0) return [];
  const { means, ranges, out } = charts;
  const names = (by: 'mean' | 'range') => out.filter((one) => one.by === by).map(({ sample }) => sample);
  const band = ({ low, high }: typeof means) => `${sayAs(low, low.value)} to ${sayAs(high, high.value)}`;
  const parts = [
    ...(names('mean').length > 0
      ? [`the mean of sample "${names('mean').join('", "')}" lies outside ${band(means)}`]
      : []),
    ...(names('range').length > 0
      ? [
          `the range of sample "${names('range').join('", "')}", its largest less its smallest, lies outside ${band(ranges)}`,
        ]
      : []),
  ];
  return [
    {
      at: `readings.${fact}`,
      what: `Of the readings of ${sayFact(facts, fact)}, ${parts.join(', and ')}.`,
      mend: `Find what changed with that sample. The limits are those of control charts for samples of ${sayAs(charts.size, charts.size.value)}.`,
      against: [],
    },
  ];
}
