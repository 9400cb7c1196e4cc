/** Every gauge reaches as far as it has to read. */
import type { Check } from '../check.ts';
import { gaugesSeen, sayInstead, sayOf } from '../gauges.ts';
import { cut, cuts, depthGauge, gap, line, section, slab } from '../sketch.ts';
import { sayFact } from '../say.ts';

const check: Check = {
  id: 'gauge-reach-short',
  stage: 'card',
  severity: 'error',
  why: 'The rod ends before the floor, or the jaws do not open so far: there is no reading, or one of something else.',
  mend: 'Name a gauge that reaches, or correct its reach.',
  example: { file: 'models/plant/plant.yaml', passes: 'reach: 80', fails: 'reach: 20' },
  sketch: section(
    slab(),
    cuts(cut({ from: 16, to: 46, depth: 15 })),
    depthGauge(27, 8, 12, 50),
    line('M 29 8 H 38', 'thin'),
    gap(35, 8, 15, 'end'),
  ),
  run: (bench) =>
    gaugesSeen(bench).flatMap((one) => {
      const { reach, row, name } = one.gauge;
      if (!reach || !row.reach) return [];
      const [longest] = one.against
        .filter(({ q }) => q.kind === 'length')
        .toSorted((a, b) => (b.q.high ?? 0) - (a.q.high ?? 0));
      const most = longest?.q.high ?? 0;
      if (!longest || most <= reach.value) return [];
      return [
        {
          at: one.at,
          what: `"${name}" measures up to ${sayOf(one.gauge, reach.value)}, and ${sayFact(bench.facts, longest.reading.fact)} may read up to ${sayOf(one.gauge, most)}.`,
          mend:
            sayInstead(bench, one) ??
            `No other gauge of the plant would do: get one that reaches at least ${sayOf(one.gauge, most)}.`,
          against: [
            { at: row.reach.id, text: 'how far it reaches' },
            { at: longest.reading.fact, text: 'what it must read' },
          ],
        },
      ];
    }),
};
export default check;
