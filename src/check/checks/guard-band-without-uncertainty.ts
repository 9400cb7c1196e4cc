/** Where the plant asks for acceptance limits, every gauge has an uncertainty to draw the limits in by. */
import type { Check } from '../check.ts';
import { gaugesSeen } from '../gauges.ts';
import { sayFact } from '../say.ts';

const check: Check = {
  id: 'guard-band-without-uncertainty',
  stage: 'card',
  severity: 'error',
  why: 'The card would promise limits drawn in by the uncertainty of the gauge, and print them as wide as before.',
  mend: 'Give the gauge its uncertainty (U95, k = 2), or take the guard band off this station.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: '    gauges: { pressure: press-readout, time: clock, thickness: caliper, flatness: straightedge }',
    fails:
      '    guard-band: full\n    gauges: { pressure: press-readout, time: clock, thickness: tape, flatness: straightedge }',
    also: ['limits-no-gauge-reads'],
  },
  run: (bench) =>
    gaugesSeen(bench).flatMap(({ at, gauge: { name, row }, against }) => {
      const guarded = against.flatMap(({ reading }) => (reading.guarded ? [reading] : []));
      const [first] = guarded;
      if (!first?.guarded || row.uncertainty) return [];
      return [
        {
          at,
          what: `The limits of ${sayFact(bench.facts, first.fact)} are to be drawn in by the uncertainty of "${name}", and none is given for it.`,
          mend: `Give "${name}" its uncertainty (U95, k = 2) from its certificate, or take the guard band off this station.`,
          against: [
            { at: first.guarded, text: 'acceptance limits are asked for here' },
            { at: row.resolution.id, text: 'the row of the gauge' },
          ],
        },
      ];
    }),
};
export default check;
