/** Vacuum zones of a model's set-ups as checks see them. */
import type { SetupId } from '../facts/cutting-order.ts';
import { setupOrder } from '../facts/cutting-order.ts';
import { namesOf, row } from '../facts/row.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';

export interface Zone {
  readonly id: string;
  /** The number that says where it lies. */
  readonly at: string;
}

export interface HeldByVacuum {
  readonly setup: SetupId;
  /** The line that says so. */
  readonly hold: string;
  readonly fixture: { readonly id: string; readonly title: string };
  readonly zones: readonly Zone[];
}

/** The set-ups that a vacuum holds, each with the zones of its fixture. */
export const heldByVacuum = ({ subject: { spec, plant }, facts }: Bench): readonly HeldByVacuum[] =>
  setupOrder.flatMap((setup) => {
    const own = spec.setups[setup];
    const seen = own && look(facts, (use) => ({ hold: use(own.hold), fixture: use(own.fixture) }));
    if (!own || seen?.hold !== 'vacuum') return [];
    const fixture = look(facts, () => row(plant.fixtures, seen.fixture, 'plant.fixtures'));
    if (!fixture) return [];
    const zones = namesOf(fixture.zones).map((id) => ({ id, at: fixture.zones![id]!.at.x.id }));
    for (const { id } of zones) facts.note(fixture.zones![id]!.at.x);
    facts.note(fixture.title);
    return [{ setup, hold: own.hold.id, fixture: { id: seen.fixture, title: fixture.title.id }, zones }];
  });

/** A step or a cut in words of the spec: `cavity.neck-pocket` as neck-pocket, `top.perimeter` as top perimeter. */
export function nameOfStep(key: string): string {
  const [kind, id] = [key.slice(0, key.indexOf('.')), key.slice(key.indexOf('.') + 1)];
  if (kind === 'location') return `the jig’s hole ${id}`;
  return ['cavity', 'hole', 'channel', 'contour'].includes(kind) ? id : key.replace('.', ' ');
}
