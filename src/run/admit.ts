/**
 * Each order against what is in force on the day of the run: it is made by one release, or it is refused with the reason. Pure.
 */
import type { Finding } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import { releaseFor } from '../release/for-order.ts';
import { startText } from '../release/entries.ts';
import type { HoldAct } from '../release/entries.ts';
import type { State } from '../release/state.ts';
import { heldOf } from '../release/wall.ts';
import type { Known } from '../release/wall.ts';
import { madeBy } from './made-by.ts';
import type { MadeBy } from './made-by.ts';
import type { Order } from './orders.ts';
import { gradeRefused } from './grade.ts';
import { refused } from './refusals.ts';

export interface Admitted {
  readonly order: Order;
  readonly by: MadeBy;
  /** The lead's name, where wood better than the finish asks for may be used. */
  readonly upgradedBy?: string;
  /** Lots that must not be used for it: all else of the row may. */
  readonly lots: readonly HoldAct[];
}

/** What the day offers. */
export interface Offered {
  /** YYYY-MM-DD of the run. */
  readonly on: string;
  readonly known: readonly Known[];
  readonly state: State;
  /** Models that have a spec, released or not. */
  readonly models: readonly string[];
  /** Who may let something through; empty where the plant names nobody. */
  readonly people: readonly string[];
}

export interface Admission {
  /** In the list's own order. */
  readonly admitted: readonly Admitted[];
  readonly refused: readonly Finding[];
}

export function admit(orders: readonly Order[], offered: Offered): Admission {
  const releases = new Map<Known, ReturnType<typeof madeBy>>();
  const handOf = (of: Known, hand: Order['hand']) => {
    const made = releases.get(of) ?? madeBy(of);
    releases.set(of, made);
    return made(hand);
  };
  const heldFor = heldByKind(offered.state);
  const admitted: Admitted[] = [];
  const refusedLines: Finding[] = [];
  for (const order of orders) {
    const of = releaseFor(order.model, order.number, offered.on, offered.known);
    const one = of ? admitOne(order, of, handOf(of, order.hand), offered, heldFor) : notReleased(order, offered);
    if ('id' in one) refusedLines.push(one);
    else admitted.push(one);
  }
  return { admitted, refused: refusedLines };
}

function admitOne(
  order: Order,
  of: Known,
  by: MadeBy | undefined,
  { people }: Offered,
  heldFor: (by: MadeBy, finish: string) => readonly HoldAct[],
): Admitted | Finding {
  const { places, hand, finish, lead } = order;
  if (!by) {
    const there = Object.keys(of.record.facts).join(', ');
    const what = `${of.record.title} is not made ${hand}-handed. There is: ${there}.`;
    return refused('order-hand', { place: places.hand, what, mend: 'Order the hand there is, or release the other.' });
  }
  if (!by.finishes.includes(finish))
    return refused('order-finish', {
      place: places.finish,
      what: `${by.title} revision ${by.revision} does not come in the finish "${finish}".`,
      mend: offer(finish, by.finishes),
    });
  if (lead !== undefined && people.length > 0 && !people.includes(lead))
    return refused('order-lead', {
      place: places.lead,
      what: `"${lead}" is nobody the plant names.`,
      mend: offer(lead, people),
    });
  const wrong = gradeRefused(order, by);
  if (wrong && (wrong.id !== 'order-too-good' || lead === undefined)) return wrong;
  const holds = heldFor(by, finish);
  const whole = holds.find(({ lot }) => lot === undefined);
  if (whole) {
    const what = `${thing(whole)} is held since ${whole.on}: ${whole.reason} (${whole.name}).`;
    const mend = 'Wait until it is lifted, or order what is made without it.';
    return refused('order-held', { place: whole.table === 'finishes' ? places.finish : places.model, what, mend });
  }
  return { order, by, ...(wrong && lead !== undefined ? { upgradedBy: lead } : {}), lots: holds };
}

const thing = ({ table, held, lot }: HoldAct): string =>
  `${table === 'model' ? 'The model' : table} "${held}"${lot === undefined ? '' : `, lot ${lot}`}`;

/** Holds on what an order is made with: those on another finish of the model touch it not. */
function heldByKind(state: State): (by: MadeBy, finish: string) => readonly HoldAct[] {
  const known = new Map<MadeBy, readonly HoldAct[]>();
  return (by, finish) => {
    const holds =
      known.get(by) ??
      state.holds.filter((hold) =>
        by.cards.some((card) => heldOf(card, by.of.record, { ...state, holds: [hold] }).length > 0),
      );
    known.set(by, holds);
    return holds.filter(({ table, held }) => table !== 'finishes' || held === finish);
  };
}

/** Why no release is in force for it: the reasons are not alike to whoever must see to it. */
function notReleased({ model, number, places }: Order, { known, models, on }: Offered): Finding {
  const own = known.filter(({ released }) => released.model === model);
  const place = places.model;
  const [last] = own.slice(-1);
  if (!last) {
    if (!models.includes(model))
      return refused('order-unknown-model', {
        place,
        what: `There is no model "${model}".`,
        mend: offer(model, [...models, ...known.map(({ released }) => released.model)]),
      });
    const what = `${model} was never released: there is no card in force.`;
    return refused('order-not-released', { place, what, mend: `Release it first: platen release ${model}.` });
  }
  const { standing, revision, from } = last.released;
  const what =
    standing.is === 'withdrawn'
      ? `${model} revision ${revision} was withdrawn: ${standing.act.reason}.`
      : standing.is === 'coming'
        ? `${model} revision ${revision} is in force ${startText(from)} only, the run is on ${on}.`
        : `No release of ${model} is in force for order ${number} on ${on}: revision ${revision} is ${startText(from)}.`;
  return refused('order-not-released', {
    place,
    what,
    mend: 'See platen posted for what is in force, or release anew.',
  });
}
