/** All kinds of findings the checks can make, for the reference page. */
import type { Kind } from '../findings/finding.ts';
import type { Check } from './check.ts';
import { all } from './checks/all.generated.ts';
import { gapKinds } from './underived.ts';

const checks: readonly Check[] = all;

export const checkKinds: readonly Kind[] = [...checks, ...gapKinds];
