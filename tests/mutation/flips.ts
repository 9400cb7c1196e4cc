/** Changes each comparison in turn, and finds what of all the suite holds would fail. */
import { setImmediate } from 'node:timers/promises';
import type { Fault } from '../../src/check/check.ts';
import type { Held } from './benches.ts';
import type { Ran, Site, Way } from './switch.ts';
import { CHANGED } from './switch.ts';

/** One comparison, changed in one way. */
export interface Mutant {
  readonly site: number;
  readonly way: Way;
  /** `file: text of the comparison`, with its column where two are alike; no line, so that it outlives edits above it. */
  readonly key: string;
}

export interface Noticed extends Mutant {
  /** What the suite holds that fails; undefined where nothing does. */
  readonly by: string | undefined;
  /** Of how many it was met, for those that nobody notices. */
  readonly met: number;
}

export function mutantsOf(sites: readonly Site[]): readonly Mutant[] {
  const plainKey = ({ file, text }: Site): string => `${file}: ${text}`;
  return sites.flatMap((one, site) => {
    const alike = sites.filter((other) => plainKey(other) === plainKey(one));
    const key = alike.length === 1 ? plainKey(one) : `${plainKey(one)} (${alike.indexOf(one) + 1})`;
    return (['flipped', 'moved'] as const).flatMap((way) =>
      CHANGED[way][one.operator] === undefined ? [] : [{ site, way, key }],
    );
  });
}

/**
 * Every workspace is held once as it is, which also says which comparisons each check meets on it. A mutant met there is tried
 * on the checks that meet it. Where their faults are others, or it is met around the checks, the whole is held again with the
 * mutant in it, from the files on: only what fails then counts as noticed.
 */
export async function tryAll(mutants: readonly Mutant[], benches: readonly Held[]): Promise<readonly Noticed[]> {
  const by = new Map<Mutant, string>();
  const met = new Map<Mutant, number>();
  const wholes = new Map<Mutant, number>();
  for (const [i, held] of benches.entries()) {
    const { name, hold } = held;
    // So that who started this hears that it goes on.
    await setImmediate();
    if (i % 50 === 0) console.log(`${i} of ${benches.length} workspaces, ${by.size} of ${mutants.length} noticed`);
    const { ran, outside } = platenSwitch.record(hold);
    for (const mutant of mutants) {
      if (by.has(mutant)) continue;
      const meets = (where: ReadonlyMap<number, boolean>): boolean =>
        mutant.way === 'moved' ? where.get(mutant.site) === true : where.has(mutant.site);
      const concerned = ran.filter((one) => meets(one.met));
      const around = held.around && meets(outside);
      if (concerned.length === 0 && !around) continue;
      met.set(mutant, (met.get(mutant) ?? 0) + 1);
      const changed = concerned.some((one) => differs(one, mutant, held.texts));
      const tries = wholes.get(mutant) ?? 0;
      if (!changed && (!around || tries >= MOST_WHOLES)) continue;
      // Where there must be no finding at all, and these checks have none as they are, one that now has any is enough.
      const none = held.sound && concerned.every(({ faults }) => faults.length === 0);
      if (!(none && changed)) wholes.set(mutant, tries + 1);
      if ((none && changed) || fails(hold, mutant)) by.set(mutant, name);
    }
  }
  return mutants.map((mutant) => ({ ...mutant, by: by.get(mutant), met: met.get(mutant) ?? 0 }));
}

/** Around the checks nothing says beforehand whether a mutant matters there: so many workspaces are held whole for it. */
const MOST_WHOLES = 12;

/** What is said, beside where it is said. */
const TEXTS = ['what', 'mend', 'text'];

const operatorOf = ({ site, way }: Mutant) => CHANGED[way][platenSwitch.sites[site]!.operator]!;

function differs({ check, bench, faults }: Ran, mutant: Mutant, texts: boolean): boolean {
  const form = (some: readonly Fault[]): string =>
    JSON.stringify(some, (key, value: unknown) => (!texts && TEXTS.includes(key) ? '' : value));
  try {
    return form(platenSwitch.with(mutant.site, operatorOf(mutant), () => check.run(bench))) !== form(faults);
  } catch {
    return true;
  }
}

function fails(hold: () => void, mutant: Mutant): boolean {
  try {
    platenSwitch.with(mutant.site, operatorOf(mutant), hold);
    return false;
  } catch {
    return true;
  }
}
