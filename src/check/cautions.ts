/** Ids of the checks whose findings are cautions: what may be permitted. */
import type { Check } from './check.ts';
import { all } from './checks/all.generated.ts';

/** A function, for the checks themselves ask for it while they are still being loaded. */
export const cautionIds = (): readonly string[] =>
  (all as readonly Check[]).filter(({ severity }) => severity === 'caution').map(({ id }) => id);
