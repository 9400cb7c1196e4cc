/**
 * Orders of a run, as a spreadsheet writes them: a line an order.
 *
 *     order,model,finish,grade,hand,quantity,due,lead
 *
 * `grade` names steps of the scales of the plant, one of each at most; left empty, the band of the picking card holds. `lead`:
 * who lets wood of a better grade be used than the finish asks for. What is wrong with a line stops that line alone.
 */
import type { Finding, Place } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import type { Cell, CsvTable } from '../read/csv.ts';
import { readCsv } from '../read/csv.ts';
import { isDay } from '../units/day.ts';
import { makeTaken } from './body-numbers.ts';
import { refused } from './refusals.ts';

export const COLUMNS = ['order', 'model', 'finish', 'grade', 'hand', 'quantity', 'due', 'lead'] as const;
export type Column = (typeof COLUMNS)[number];
const NEEDED: readonly Column[] = ['order', 'model', 'finish', 'quantity'];

/** A line of the list; what it names may not exist. */
export interface Order {
  readonly number: string;
  readonly model: string;
  readonly finish: string;
  /** Steps of scales, each as written. */
  readonly grade: readonly string[];
  readonly hand: 'right' | 'left';
  /** Bodies, 1 to 9999. */
  readonly quantity: number;
  /** YYYY-MM-DD. */
  readonly due?: string;
  readonly lead?: string;
  readonly places: Readonly<Record<Column, Place>>;
}

export interface OrderList {
  readonly text: string;
  readonly orders: readonly Order[];
  readonly findings: readonly Finding[];
}

export function readOrders(file: string, bytes: Uint8Array): OrderList {
  const { text, table, problem } = readCsv(file, bytes);
  if (problem) return { text, orders: [], findings: [refused('orders-unreadable', problem)] };
  const at = table && columnsOf(table, { file, start: 0, end: 0 });
  if (!table || !at) return { text, orders: [], findings: [] };
  if ('id' in at) return { text, orders: [], findings: [at] };
  const findings: Finding[] = [];
  const taken = makeTaken();
  const orders = table.rows.flatMap((row): Order[] => {
    const order = orderIn(row, at);
    const found = 'id' in order ? order : clashOf(order, taken.clash(order));
    if (found) findings.push(found);
    return found || 'id' in order ? [] : [order];
  });
  return { text, orders, findings };
}

function columnsOf({ heads }: CsvTable, nowhere: Place): ReadonlyMap<Column, number> | Finding {
  const names = heads.map(({ text }) => text.toLowerCase());
  const unknown = heads.find((_, i) => !COLUMNS.some((column) => column === names[i]));
  const twice = heads.find((_, i) => names.indexOf(names[i]!) !== i);
  const missing = NEEDED.filter((column) => !names.includes(column));
  if (!unknown && !twice && missing.length === 0) return new Map(names.map((name, i) => [name as Column, i]));
  const what = unknown
    ? `"${unknown.text}" is no column of a list of orders.`
    : twice
      ? `The column "${twice.text}" stands here twice.`
      : `The first line has no column ${missing.join(', ')}.`;
  const mend = `The columns are ${COLUMNS.join(', ')}; ${NEEDED.join(', ')} are needed.`;
  return refused('orders-unreadable', { place: (unknown ?? twice ?? heads[0])?.place ?? nowhere, what, mend });
}

/** What a spreadsheet would compute: it was saved as it was typed, or somebody sent it. */
const FORMULA = /^[=+@]|^-(?!\d)/;
const NUMBER = /^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$/;

/** What two orders would write on two bodies, one of them would be lost by. */
function clashOf({ number, places }: Order, other: string | undefined): Finding | undefined {
  if (other === undefined) return undefined;
  return refused('order-unclear', {
    place: places.order,
    what:
      other === number
        ? `Order ${number} stands in this list already.`
        : `Order ${number} would write the same number on a body as order ${other} of this list.`,
    mend: 'Give each line a number of its own; an order of several bodies numbers them after a dash.',
  });
}

function orderIn(row: readonly Cell[], at: ReadonlyMap<Column, number>): Order | Finding {
  const line = { ...row[0]!.place, end: row.at(-1)!.place.end };
  const cell = (column: Column): Cell => row[at.get(column) ?? -1] ?? { text: '', place: line };
  const text = (column: Column) => cell(column).text;
  const unclear = (column: Column, what: string, mend: string) =>
    refused('order-unclear', { place: cell(column).place, what, mend });
  if (row.length > at.size && row.slice(at.size).some((one) => one.text !== ''))
    return refused('order-unclear', {
      place: row[at.size]!.place,
      what: `This line has ${row.length} cells under ${at.size} heads.`,
      mend: 'Put a cell that holds the separator between quotation marks.',
    });
  for (const column of at.keys())
    if (FORMULA.test(text(column)))
      return unclear(column, `"${text(column)}" is a formula, not a value.`, 'Save the sheet with its values.');
  for (const column of NEEDED)
    if (text(column) === '')
      return unclear(column, `This line gives no ${column}.`, 'Fill it in, or take the line out.');
  const number = text('order');
  if (!NUMBER.test(number))
    return unclear(
      'order',
      `"${number}" cannot be written on wood as the number of an order.`,
      'Write letters, digits, dots and dashes, no more than a label holds, and no blanks.',
    );
  const hand = text('hand').toLowerCase() || 'right';
  if (hand !== 'right' && hand !== 'left')
    return unclear('hand', `"${text('hand')}" is no hand.`, offer(hand, ['right', 'left']));
  if (!/^[1-9]\d{0,3}$/.test(text('quantity')))
    return unclear('quantity', `"${text('quantity')}" is no number of bodies.`, 'Write a whole number, one or more.');
  if (text('due') !== '' && !isDay(text('due')))
    return unclear(
      'due',
      `"${text('due')}" is no day written as year, month and day.`,
      'Write four digits, a dash, two for the month, a dash, two for the day.',
    );
  return {
    number,
    model: text('model'),
    finish: text('finish'),
    grade: text('grade')
      .split(/[,;/]/)
      .map((step) => step.trim())
      .filter((step) => step !== ''),
    hand,
    quantity: Number(text('quantity')),
    ...(text('due') === '' ? {} : { due: text('due') }),
    ...(text('lead') === '' ? {} : { lead: text('lead') }),
    places: Object.fromEntries(COLUMNS.map((column) => [column, cell(column).place])) as Record<Column, Place>,
  };
}
