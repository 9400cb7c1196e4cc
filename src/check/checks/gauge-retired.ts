/** No card sends people to a gauge that has been taken away. */
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { gaugesSeen, sayInstead } from '../gauges.ts';

const check: Check = {
  id: 'gauge-retired',
  stage: 'card',
  severity: 'error',
  why: 'The gauge is gone or no longer trusted, and people would take the next best.',
  mend: 'Name another gauge at this station, or take the date out of the plant if it is back in use.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'resolution: 0.1 bar, uncertainty: 0.1 bar }',
    fails: 'resolution: 0.1 bar, uncertainty: 0.1 bar, retired: 2026-01-05 }',
  },
  run: (bench) =>
    gaugesSeen(bench).flatMap((one) => {
      const { retired } = one.gauge.row;
      const from = retired && look(bench.facts, (use) => use(retired));
      if (!retired || from === undefined || from > bench.on) return [];
      return [
        {
          at: one.at,
          what: `"${one.gauge.name}" has been retired since ${from}, and the card of ${one.station} names it.`,
          mend: `${sayInstead(bench, one) ?? 'No other gauge of the plant would do: get one, and name it here.'} If "${one.gauge.name}" is back in use, take the date out of the plant.`,
          against: [{ at: retired.id, text: 'the day it was retired' }],
        },
      ];
    }),
};
export default check;
