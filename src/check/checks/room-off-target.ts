/** The air of the store, anywhere within its limits, brings wood to a moisture that may be released. */
import { machineNumber } from '../../facts/station-machine.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { sayBetween } from '../say.ts';

const check: Check = {
  id: 'room-off-target',
  stage: 'derived',
  severity: 'error',
  why: 'Wood settles where the air puts it: boards would never come to release, or be released and then move under the glue.',
  mend: 'Hold the store at another humidity, or release the wood at another moisture.',
  example: { file: 'models/plant/plant.yaml', passes: 'humidity: 45 ±3 %', fails: 'humidity: 62 ±3 %' },
  run: ({ subject: { plant }, facts }) => {
    const seen = look(facts, (use) => {
      const humidity = machineNumber(plant, use, 'conditioning', 'humidity');
      const moisture = machineNumber(plant, use, 'conditioning', 'moisture');
      const temperature = machineNumber(plant, use, 'conditioning', 'temperature');
      return {
        ids: { humidity: humidity.id, moisture: moisture.id, temperature: temperature.id },
        band: use(moisture),
        rests: use.fact('room.equilibrium'),
        holds: use.fact('room.humidity'),
      };
    });
    if (!seen) return [];
    const { ids, band, rests, holds } = seen;
    const within = (rests.low ?? 0) >= (band.low ?? 0) && (rests.high ?? 1) <= (band.high ?? 1);
    if (within) return [];
    return [
      {
        at: ids.humidity,
        what: `At this temperature and humidity wood settles ${sayBetween(rests.low ?? rests.value, rests.high ?? rests.value)} of moisture. It is released ${sayBetween(band.low ?? band.value, band.high ?? band.value)}.`,
        mend:
          (holds.low ?? 0) <= (holds.high ?? 0)
            ? `Hold the humidity ${sayBetween(holds.low ?? 0, holds.high ?? 0, 0)}, or release at another moisture.`
            : 'The temperature swings too far for this band at any humidity: hold it closer, or widen the band.',
        against: [
          { at: ids.moisture, text: 'the moisture wood is released at' },
          { at: ids.temperature, text: 'the temperature of the store' },
        ],
      },
    ];
  },
};
export default check;
