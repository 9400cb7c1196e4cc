/** Cutters of the plant that a model cuts with in a machine, each with where it is named. */
import type { Cutter } from '../facts/cutter-row.ts';
import { byHand, cutterOf } from '../facts/cutter-row.ts';
import type { SetupId, StepKey } from '../facts/cutting-order.ts';
import { machineSteps, setupOrder } from '../facts/cutting-order.ts';
import type { Leaf } from '../facts/leaf.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';

export interface UsedCutter {
  readonly cutter: Cutter;
  readonly setup: SetupId;
  /** Every step it makes in this set-up. */
  readonly steps: readonly StepKey[];
  /** Where it is named first. */
  readonly named: Leaf<string>;
}

/** Once for each set-up; drills that are driven by hand are left out. */
export function usedCutters({ subject: { spec, plant }, facts }: Bench): readonly UsedCutter[] {
  return setupOrder
    .filter((setup) => spec.setups[setup] !== undefined)
    .flatMap((setup) => {
      const steps = look(facts, (use) =>
        machineSteps(spec, use, setup).map((step) => ({
          ...step,
          cutter: cutterOf(plant, use, step.cutter),
          named: step.cutter,
        })),
      );
      const own = (steps ?? []).filter(({ key, cutter }) => !key.startsWith('channel.') || !byHand(cutter));
      const first = own.filter(({ cutter }, i) => own.findIndex((other) => other.cutter.id === cutter.id) === i);
      return first.map(({ cutter, named }) => ({
        cutter,
        setup,
        steps: own.filter((step) => step.cutter.id === cutter.id).map(({ key }) => key),
        named,
      }));
    });
}

/** Every cutter once, whichever set-ups it is used in. */
export function cuttersOnce(bench: Bench): readonly UsedCutter[] {
  const used = usedCutters(bench);
  return used.filter(({ cutter }, i) => used.findIndex((other) => other.cutter.id === cutter.id) === i);
}
