/** The press of the demo plant and a body for it, and lists made up by chance. */
import type { Press, PressJob } from '../../src/run/loads.ts';
import type { Seeded } from '../faults/seeded.ts';

export const PRESS: Press = {
  rams: { count: 2, bore: 0.1 },
  gaugeMost: 14e6,
  gaugeFull: 18e6,
  capacity: 220e3,
  daylight: 0.4,
  closedHeight: 0.12,
  plate: { length: 0.9, width: 0.55 },
  sideBySide: 2,
  board: 0.02,
  layTime: 20,
  closeTime: 40,
};

export const JOB: PressJob = {
  order: 'O-1',
  model: 'Heron',
  hand: 'right',
  bodies: 1,
  jointArea: 0.13455,
  pressure: { low: 650e3, high: 750e3 },
  blank: { low: 0.05062, high: 0.05108 },
  length: 0.47,
  width: 0.36,
  adhesive: 'white glue',
  openTime: 480,
  closedTime: 420,
  spread: 60,
  pressTime: 2700,
  rest: 43_200,
  centre: { x: 0, y: 0.05 },
};

/** A few models, so that they meet again; some refuse each other, and now and then one goes into no press. */
export function chanceJobs(chance: Seeded, orders: number, mostBodies: number): PressJob[] {
  const hasty = chance.pick([true, false]);
  const models = Array.from({ length: 1 + chance.whole(4) }, (none, i): PressJob => {
    const mean = chance.pick([500e3, 700e3, 700e3, 700e3, 900e3, 1.3e6]);
    const blank = chance.pick([0.035, 0.05085, 0.05085, 0.062]);
    const glue = chance.pick(['white glue', 'white glue', 'white glue', 'urea glue']);
    const openTime = hasty ? 480 : chance.pick([900, 1200]);
    const { closedTime: _closed, ...rest } = JOB;
    return {
      ...rest,
      ...(chance.whole(3) > 0 && { closedTime: openTime - chance.pick([20, 60, 120]) }),
      model: `M${i}`,
      jointArea: chance.pick([0.09, 0.11, 0.125, 0.13455, 0.14]),
      pressure: { low: mean - chance.pick([30e3, 50e3, 100e3]), high: mean + 50e3 },
      blank: { low: blank - 0.0002, high: blank + 0.0003 },
      length: chance.pick([0.42, 0.47, 0.54]),
      width: chance.pick([0.32, 0.36, 0.44, 0.48]),
      adhesive: glue,
      openTime,
      spread: chance.pick([45, 60, 75]),
      pressTime: chance.pick([1800, 2700, 3600]),
      rest: chance.pick([28_800, 43_200]),
      centre: { x: chance.pick([0, 0.004]), y: chance.pick([0.03, 0.05]) },
    };
  });
  return Array.from({ length: orders }, (none, i) => {
    const model = chance.pick(models);
    const hand = chance.pick(['right', 'right', 'right', 'left'] as const);
    const job = { ...model, order: `O-${i}`, hand, bodies: chance.whole(mostBodies + 1) };
    if (chance.whole(12) > 0) return job;
    const { closedTime: _hurry, ...unhurried } = job;
    return chance.pick<PressJob>([
      { ...job, length: 0.6 },
      { ...job, width: 0.91 },
      { ...job, blank: { low: 0.36, high: 0.361 } },
      { ...job, jointArea: 0.36 },
      { ...unhurried, openTime: 100 },
      { ...job, closedTime: 50 },
    ]);
  });
}
