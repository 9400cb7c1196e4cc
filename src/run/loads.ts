/**
 * The loads of the body press for a list of orders, pure arithmetic in SI base units: which bodies go in together, how they
 * are stacked, and what the press is set to.
 *
 * Bodies go in as they come: a load takes the next ones of the list. So a list is cut at places, and the cuts are chosen to
 * give the fewest loads; of equally many, those the gauge is best read for; of these, those that fill the early loads first.
 */
import type { Band, Rams } from '../derive/press-load.ts';
import type { Body } from './one-load.ts';
import { bestLoad, neverTogether, pressed, readWell } from './one-load.ts';

export interface PressJob {
  readonly order: string;
  readonly model: string;
  readonly hand: 'right' | 'left';
  readonly bodies: number;
  /** m². */
  readonly jointArea: number;
  /** Pa on the joint. */
  readonly pressure: Band;
  /** m, least and most of the blank. */
  readonly blank: Band;
  /** m, extent of a part as it lies: its width along the length of the plate, its length across. */
  readonly length: number;
  readonly width: number;
  readonly adhesive: string;
  /** s. */
  readonly openTime: number;
  readonly closedTime?: number;
  /** s to spread one body. */
  readonly spread: number;
  /** s under pressure. */
  readonly pressTime: number;
  /** s until machining. */
  readonly rest: number;
  /** m, from the part’s middle line and bridge line to the middle of its glue: what is laid under the middle of the plate. */
  readonly centre: { readonly x: number; readonly y: number };
}

export interface Press {
  readonly rams: Rams;
  /** Pa. */
  readonly gaugeMost: number;
  /** Pa, the end of the scale. */
  readonly gaugeFull: number;
  /** N. */
  readonly capacity: number;
  /** m. */
  readonly daylight: number;
  /** m, the least height that the plate comes down to. */
  readonly closedHeight: number;
  readonly plate: { readonly length: number; readonly width: number };
  readonly sideBySide: number;
  /** m, levelling board. */
  readonly board: number;
  /** s to lay one body. */
  readonly layTime: number;
  readonly closeTime: number;
}

export interface Load {
  readonly adhesive: string;
  /** Each stack from the bottom up, one entry a body. */
  readonly stacks: readonly (readonly Pick<PressJob, 'order' | 'model' | 'hand'>[])[];
  /** Boards over those between and at both ends, to reach what the plate needs, per stack. */
  readonly filling: number;
  /** m. */
  readonly height: Band;
  /** N, of the whole. */
  readonly force: Band;
  /** Pa. */
  readonly gauge: Band;
  /** Share of the gauge’s full scale. */
  readonly scale: Band;
  /** s from first glue to full pressure. */
  readonly assembly: number;
  /** s from the first cap laid to full pressure. */
  readonly closed: number;
  readonly pressTime: number;
  readonly rest: number;
}

/** A limit, and what goes over it: m of the part or the stack, N of the least force, s of the assembly. */
export interface Over {
  readonly why: 'too-high' | 'too-strong' | 'too-slow' | 'too-large';
  readonly is: number;
  readonly most: number;
}

/** An order of which no body can be pressed, not even alone. */
export interface NotPressed extends Over {
  readonly order: string;
}

export function loadsOf(
  jobs: readonly PressJob[],
  press: Press,
): { readonly loads: readonly Load[]; readonly refused: readonly NotPressed[] } {
  if (!(press.board > 0)) throw new RangeError(`a levelling board of ${press.board}`);
  if (!(press.sideBySide >= 1)) throw new RangeError(`${press.sideBySide} stacks side by side`);
  const kinds = new Map<string, number>();
  const refused: NotPressed[] = [];
  const bodies: Body[] = [];
  for (const job of jobs.filter(({ bodies }) => bodies > 0)) {
    const body = { job, kind: kindOf(job, kinds) };
    const alone = pressed([[body]], [body], press);
    if ('why' in alone) refused.push({ order: job.order, ...alone });
    else for (let n = 0; n < job.bodies; n += 1) bodies.push(body);
  }
  return { loads: fewest(bodies, press), refused };
}

/** Stacks share the force evenly and carry the plate level only if their bodies are alike in all that makes either. */
function kindOf({ model, hand, jointArea, pressure, blank }: PressJob, kinds: Map<string, number>): number {
  const key = JSON.stringify([model, hand, jointArea, pressure.low, pressure.high, blank.low, blank.high]);
  const kind = kinds.get(key) ?? kinds.size;
  kinds.set(key, kind);
  return kind;
}

/** How the rest of the list is best pressed from a place on. */
interface Plan {
  readonly loads: number;
  /** Of them, those whose gauge is read near an end of its scale. */
  readonly readBadly: number;
  readonly first?: { readonly load: Load; readonly bodies: number };
}

function fewest(bodies: readonly Body[], press: Press): Load[] {
  const plans: Plan[] = [];
  plans[bodies.length] = { loads: 0, readBadly: 0 };
  for (let at = bodies.length - 1; at >= 0; at -= 1) {
    let best: Plan | undefined;
    for (let count = 1; count <= bodies.length - at; count += 1) {
      const row = bodies.slice(at, at + count);
      if (neverTogether(row, press)) break;
      const load = bestLoad(row, press);
      if (!load) continue;
      const then = plans[at + count]!;
      const readBadly = then.readBadly + (readWell(load) ? 0 : 1);
      const plan: Plan = { loads: then.loads + 1, readBadly, first: { load, bodies: count } };
      // Of equals the later in this loop, which is the one with the fuller first load.
      if (!best || (plan.loads - best.loads || plan.readBadly - best.readBadly) <= 0) best = plan;
    }
    plans[at] = best!;
  }
  const loads: Load[] = [];
  for (let at = 0; at < bodies.length; at += plans[at]!.first!.bodies) loads.push(plans[at]!.first!.load);
  return loads;
}
