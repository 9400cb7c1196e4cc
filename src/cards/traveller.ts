/**
 * Travellers: what goes with a body, or with the parts of one, through the stations. At each of them the one who works there
 * compares the code with the card that hangs, writes down what was read, and signs.
 */
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Arg, Card, Line, MadeCard, Traveller, TravellerStation } from './card.ts';
import { pieceChecks, rowIn } from './form-checks.ts';
import { say } from './station.ts';
import { all } from './stations/all.generated.ts';

/** What is made, for one order. What is left empty is written in by hand. */
export interface Order {
  readonly number: string;
  readonly hand: 'right' | 'left';
  /** Id of a finish. */
  readonly finish?: string;
  readonly pair?: string;
  /** Steps of the scales it is graded by, with commas between them. */
  readonly grade?: string;
  /** Bodies, one or more. */
  readonly quantity: number;
  /** Which of several bodies it goes with, as it is written on the wood. */
  readonly body?: string;
}

/** `cards`: of one model. What the model does not come in is refused, in a sentence that says what there is. */
export function travellerOf(
  cards: readonly MadeCard[],
  plant: PlantSpec,
  { number, hand, finish, pair, grade, quantity, body }: Order,
): Traveller | { readonly refused: string } {
  const own = cards.filter(({ card }) => card.key.hand === hand);
  const first = own[0]?.card;
  if (!first) {
    const hands = new Set(cards.map(({ card }) => card.key.hand));
    return { refused: `It is not made ${hand}-handed. There is: ${[...hands].join(', ')}.` };
  }
  const refused = finishRefused(first, finish) ?? gradeRefused(own, finish, grade);
  if (refused !== undefined) return { refused };
  const onRoute = own.filter(({ card }) => !aside(card.key.station));
  return {
    model: first.model,
    hand,
    order: number,
    ...(pair !== undefined || onRoute.some(({ card }) => card.key.station === MEET) ? { pair: pair ?? '' } : {}),
    finish: first.finishNames.find((name) => rowIn('finishes', name) === finish)?.text ?? '',
    grade: grade ?? '',
    quantity,
    ...(body === undefined ? {} : { body }),
    stations: onRoute.map((made) => stationOf(made, plant)),
  };
}

/** Where a cap and its back become one. */
const MEET = 'lamination';

function finishRefused({ key }: Card, finish: string | undefined): string | undefined {
  if (finish === undefined || key.finishes.includes(finish)) return undefined;
  return `It does not come in the finish "${finish}". There is: ${key.finishes.join(', ')}.`;
}

/** Grades that the picking card lists under a finish, or under any where none is ordered. */
function gradeRefused(cards: readonly MadeCard[], finish: string | undefined, grade = ''): string | undefined {
  const steps = cards.flatMap(({ card }) =>
    card.keyNumbers.flatMap(({ label, value }) => {
      const { finish: under } = label.with;
      if (label.say !== 'picking.key.band' || under?.kind !== 'name') return [];
      return finish === undefined || rowIn('finishes', under) === finish ? stepsIn(value) : [];
    }),
  );
  const graded = grade.split(',').map((step) => step.trim());
  const unknown = graded.find((step) => step !== '' && !steps.includes(step));
  if (unknown === undefined) return undefined;
  const under = finish === undefined ? '' : ` under the finish "${finish}"`;
  return `It is not made of wood of the grade "${unknown}"${under}. There is: ${[...new Set(steps)].join(', ')}.`;
}

/** The steps of every scale of a band. */
function stepsIn(arg: Arg): readonly string[] {
  if (arg.kind === 'series') return arg.items.flatMap(stepsIn);
  if (arg.kind === 'name') return [arg.text];
  return arg.kind === 'line' && arg.with['steps'] ? stepsIn(arg.with['steps']) : [];
}

/** Stations that stand aside: no body passes them on its way. */
const aside = (id: string): boolean => all.some((station) => station.id === id && station.aside);

function stationOf({ card, code }: MadeCard, plant: PlantSpec): TravellerStation {
  const checks = pieceChecks(card, plant);
  const often = mostOften(checks.map((check) => check.often));
  return { id: card.key.station, name: card.station, code, ...(often ? { often } : {}), checks, marks: marksOf(card) };
}

function mostOften(lines: readonly Line[]): Line | undefined {
  const count = (line: Line) => lines.filter(({ say: id }) => id === line.say).length;
  return lines.toSorted((a, b) => count(b) - count(a))[0];
}

/** Steps of cards at which the order number is put on the wood, or put there again. */
const MARKS: ReadonlySet<string> = new Set([
  'planing.step.order',
  'picking.step.write',
  'rough-sawing.step.rewrite',
  'trim-sawing.step.number',
  'sign-off.step.number',
]);

/** Steps that cut the end grain away, and whatever stands on the face that lies up. */
const EATS = /^machining\.step\.perimeter-/;

function marksOf({ steps }: Card): readonly Line[] {
  const eaten = steps.some(({ say: id }) => EATS.test(id)) ? [say('traveller.rewrite')] : [];
  return [...eaten, ...steps.filter(({ say: id }) => MARKS.has(id))];
}
