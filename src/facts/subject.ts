/** What facts are derived from: one hand of one model, in the plant. */
import type { ModelSpec, PlantSpec } from './spec.generated.ts';

export type Hand = 'right' | 'left';

export interface Subject {
  readonly spec: ModelSpec;
  readonly plant: PlantSpec;
  readonly hand: Hand;
}
