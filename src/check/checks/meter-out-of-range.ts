/** The moisture wood is released at lies where the store's meter reads reliably. */
import { gaugeAt, machineNumber } from '../../facts/station-machine.ts';
import { METER_SOURCE, meterRanges } from '../../reference/meters.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { sayBetween, sayShare } from '../say.ts';
import { dial, plan, ring } from '../sketch.ts';

const check: Check = {
  id: 'meter-out-of-range',
  stage: 'derived',
  severity: 'error',
  why: 'Below its range a meter shows a number all the same, and the wood is released on it.',
  mend: 'Take a meter that reads there, or dry samples in an oven.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'humidity: 45 ±3 %\n    moisture: 8.5 ±1.0 %',
    fails: 'humidity: 28 ±3 %\n    moisture: 5.9 ±1.0 %',
  },
  sketch: plan(dial(0.02, 0.18, 0.92), ring(-10.6, 5.4, 3.4, 'lower-left')),
  run: ({ subject: { plant }, facts }) => {
    const seen = look(facts, (use) => {
      const { title, method } = gaugeAt(plant, use, 'conditioning', 'moisture');
      const moisture = machineNumber(plant, use, 'conditioning', 'moisture');
      return method
        ? { title: use(title), method: use(method), id: moisture.id, band: use(moisture), methodId: method.id }
        : undefined;
    });
    if (!seen) return [];
    const { low, high } = meterRanges[seen.method];
    const least = seen.band.low ?? seen.band.value;
    const most = seen.band.high ?? seen.band.value;
    if (least >= low && most <= high) return [];
    return [
      {
        at: seen.id,
        what: `Wood is released ${sayBetween(least, most)}; a ${seen.method} meter reads reliably from ${sayShare(low, 0)} to ${sayShare(high, 0)} (${METER_SOURCE}).`,
        mend: 'Take a meter that reads there, or prove the moisture by drying samples in an oven.',
        against: [{ at: seen.methodId, text: `what ${seen.title} measures` }],
      },
    ];
  },
};
export default check;
