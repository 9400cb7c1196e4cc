import type { ByHand } from '../by-hand.ts';

/** The conditioning store. */
export const store: readonly ByHand[] = [
  {
    name: 'tarn: one-inch boards rested fourteen hours',
    floor: 'Hours for days: wood thicker than the thin row rests less than it, and moves in the press.',
    model: 'tarn',
    file: 'plant/machines',
    find: 'rest: 14 d',
    replace: 'rest: 14 h',
    expected: ['machines.store.days.one-inch.rest', 'machines.store.days'],
  },
  {
    name: 'skerry: no rest known for two-inch boards',
    floor: 'Boards of 50.7 are thicker than any row: nobody knows how long they rest.',
    model: 'skerry',
    file: 'plant/machines',
    find: 'up-to: 55',
    replace: 'up-to: 45',
    expected: [
      'machines.store.days.two-inch.up-to',
      'machines.store.days',
      'skerry: stages.slab.sized',
      'skerry: timber.slab.stock',
    ],
  },
  {
    name: 'brae: store at 54 instead of 45 % humidity',
    floor: 'Swapped digits: wood comes to rest near 10 %, and is released at 8.5.',
    model: 'brae',
    file: 'plant/machines',
    find: 'humidity: 45 ±3 %',
    replace: 'humidity: 54 ±3 %',
    expected: ['machines.store.humidity', 'machines.store.moisture'],
  },
  {
    name: 'ness: store at 70 degrees',
    floor: 'A Fahrenheit number under Celsius: the wood dries to less than the least.',
    model: 'ness',
    file: 'plant/machines',
    find: 'temperature: 21 ±1 °C',
    replace: 'temperature: 70 ±1 °C',
    expected: ['machines.store.temperature', 'machines.store.moisture'],
  },
  {
    name: 'skerry: moisture held tighter than the meter is sure',
    floor: '±0.4 with a meter that is off by 0.5: no reading proves anything.',
    model: 'skerry',
    file: 'plant/machines',
    find: 'moisture: 8.5 ±1.0 %',
    replace: 'moisture: 8.5 ±0.4 %',
    expected: ['machines.store.moisture', 'plant/gauges: gauges.moisture-meter.uncertainty', 'machines.store.humidity'],
  },
  {
    name: 'holm: cap and back may differ by 5 % of moisture',
    floor: 'Ten times: the wetter one shrinks in the finished body and bows it.',
    model: 'holm',
    file: 'plant/machines',
    find: 'pair-agree: 0.5 %',
    replace: 'pair-agree: 5 %',
    expected: ['machines.store.pair-agree', 'plant/lines: lines.arched.joint-movement'],
  },
];
