/** Of every measuring gauge that is held against limits, the plant says how far a reading may be off. */
import type { Check } from '../check.ts';
import { gaugesSeen } from '../gauges.ts';
import { sayFact } from '../say.ts';

const check: Check = {
  id: 'gauge-uncertainty-missing',
  stage: 'card',
  severity: 'caution',
  why: 'Without it nobody knows whether the gauge is sure enough for the limits: a fine step is no proof of a true reading.',
  mend: 'Give its uncertainty (U95, k = 2) from its certificate, or from your own trials.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'resolution: 0.01 mm, uncertainty: 0.015 mm }',
    fails: 'resolution: 0.01 mm }',
  },
  run: (bench) =>
    gaugesSeen(bench).flatMap(({ at, gauge: { name, row, rule }, against }) => {
      const [first] = against;
      // Where acceptance limits are asked for, that is an error of its own.
      if (!first || rule.ratio === undefined || row.uncertainty) return [];
      if (against.some(({ reading }) => reading.guarded !== undefined)) return [];
      return [
        {
          at,
          what: `"${name}" is read against the limits of ${sayFact(bench.facts, first.reading.fact)}, and the plant does not say how far a reading may be off.`,
          mend: `Give "${name}" its uncertainty (U95, k = 2) from its certificate, or from your own trials.`,
          against: [{ at: row.resolution.id, text: 'the row of the gauge' }],
        },
      ];
    }),
};
export default check;
