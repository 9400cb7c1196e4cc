/** Words a check's sketch is told in, by drawer: wood and what is cut out of it, tools, parts, readings, what is wrong. */
import type { At, Sketch, SketchMark } from '../findings/sketch.ts';

export * from './sketch/parts.ts';
export * from './sketch/plan.ts';
export * from './sketch/readings.ts';
export * from './sketch/tools.ts';
export * from './sketch/wood.ts';
export * from './sketch/wrong.ts';

type Parts = readonly (readonly SketchMark[])[];

const seen =
  (from: At) =>
  (...parts: Parts): Sketch => ({ from, marks: parts.flat() });

/** Cut through: y is the depth below the face of the body, x runs from 0 to 60. What comes later lies on top. */
export const section = seen([0, -9.5]);

/** Seen from above: the middle of the frame is 0, 0; the neck is to the right. */
export const plan = seen([-30, -17]);
