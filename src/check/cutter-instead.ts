/** The cutter in use that would do the work of another one: its kind, no thicker than the corners ask, and long enough. */
import { cutterRow } from '../facts/cutter-row.ts';
import type { Use } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import { namesOf } from '../facts/row.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';

/** Two drills this near are one size, nm. */
const SAME_NM = 20_000;

interface Need {
  /** Thickest it may be; a drill must be just that. */
  readonly diameter: number;
  readonly reach: number;
}

/** Its name; nothing where no other would do. `named`: where the model names the one to be replaced. */
export function cutterInstead(bench: Bench, named: Leaf<string>): string | undefined {
  const { subject, facts, on } = bench;
  const { plant } = subject;
  const old = look(facts, (use) => measures(bench, use, use(named)));
  if (!old) return undefined;
  const need = look(facts, (use) => needed(bench, use, named.id)) ?? { diameter: old.diameter, reach: old.reach };
  const would = namesOf(plant.cutters)
    .filter((id) => id !== old.id)
    .flatMap((id) => look(facts, (use) => measures(bench, use, id)) ?? [])
    .filter(({ kind, retired }) => kind === old.kind && !(retired !== undefined && retired <= on))
    .filter(({ reach }) => reach >= need.reach)
    .filter(({ diameter }) =>
      old.kind === 'drill' ? Math.abs(diameter - need.diameter) <= SAME_NM : diameter <= need.diameter,
    );
  const off = ({ diameter }: { diameter: number }): number => Math.abs(diameter - old.diameter);
  return would.toSorted((a, b) => off(a) - off(b))[0]?.id;
}

function measures({ subject: { plant } }: Bench, use: Use, id: string) {
  const { row } = cutterRow(plant, id);
  return {
    id,
    kind: use(row.kind),
    diameter: use(row.diameter).value,
    reach: use(row.reach).value,
    retired: row.retired && use(row.retired),
  };
}

/** What a cavity or a hole asks of its cutter; of anything else the old one is the measure. */
function needed({ subject: { spec } }: Bench, use: Use, at: string): Need | undefined {
  const [table, id, field] = at.split('.') as [string, string, string];
  if (table === 'cavities' && field === 'cutter') {
    const deep = use.fact(`cavity.${id}.deep`);
    return { diameter: 2 * use(spec.cavities![id]!.corner).value, reach: deep.high ?? deep.value };
  }
  if (table === 'holes' && field === 'drill') {
    const deep = use.fact(`hole.${id}.deep`);
    return { diameter: use(spec.holes![id]!.diameter).value, reach: deep.high ?? deep.value };
  }
  return undefined;
}
