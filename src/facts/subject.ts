/** What facts are derived from: one hand of one model, in the plant, and what was measured of it. */
import type { Pictures } from './pictures.ts';
import type { ReadingsByFact } from './readings.ts';
import type { ModelSpec, PlantSpec } from './spec.generated.ts';

export type Hand = 'right' | 'left';

export interface Subject {
  readonly spec: ModelSpec;
  readonly plant: PlantSpec;
  readonly hand: Hand;
  /** What stations measured of it. No card reads them: a reading more changes no card. */
  readonly readings: ReadingsByFact;
  /** Files that it, the plant or another model shows as pictures. */
  readonly pictures: Pictures;
}
