/**
 * Readings: models/readings/<station>.csv, a line a measured value.
 *
 *     date,model,revision,hand,fact,sample,reading,unit
 *
 * `fact` is the id of what was measured, as the chart form of the station prints it. A line without a model is about the
 * plant: a machine's own error. `sample` joins pieces measured together. What is wrong in such a file is a caution: a slip of
 * the pen at a gauge stops no card. Nobody's name is asked for.
 */
import { Leaf } from '../facts/leaf.ts';
import type { Readings, ReadingsByFact } from '../facts/readings.ts';
import type { ModelSpec } from '../facts/spec.generated.ts';
import type { Hand } from '../facts/subject.ts';
import type { Finding, Place } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import { isDay } from '../units/day.ts';
import { parseQuantity } from '../units/parse.ts';
import type { Quantity } from '../units/quantity.ts';
import { findUnit } from '../units/unit.ts';
import { readCsv } from './csv.ts';
import type { Cell, CsvTable } from './csv.ts';
import { mistake } from './mistakes.ts';

const COLUMNS = ['date', 'model', 'revision', 'hand', 'fact', 'sample', 'reading', 'unit'] as const;
type Column = (typeof COLUMNS)[number];
const NEEDED: readonly Column[] = ['date', 'fact', 'reading', 'unit'];

/** One line, read. */
interface Taken {
  readonly place: Place;
  readonly station: string;
  readonly date: string;
  /** Empty: of the plant. */
  readonly model: string;
  readonly revision: string;
  readonly hand: string;
  readonly fact: string;
  readonly sample: string;
  readonly reading: Quantity;
}

export interface ReadingFiles {
  readonly taken: readonly Taken[];
  readonly findings: readonly Finding[];
  readonly texts: ReadonlyMap<string, string>;
}

export interface Known {
  readonly stations: readonly string[] | undefined;
  readonly models: readonly string[];
}

export function readReadings(
  files: readonly { readonly path: string; readonly bytes: Uint8Array }[],
  known: Known,
): ReadingFiles {
  const findings: Finding[] = [];
  const texts = new Map<string, string>();
  const taken = files.flatMap(({ path, bytes }) => {
    const { text, table, problem } = readCsv(path, bytes);
    texts.set(path, text);
    if (problem) findings.push(mistake('readings-unreadable', problem));
    return table ? readFile(path, table, known, findings) : [];
  });
  return { taken, findings, texts };
}

function readFile(path: string, table: CsvTable, known: Known, findings: Finding[]): Taken[] {
  const station = path.slice(path.lastIndexOf('/') + 1).replace(/\.csv$/i, '');
  const place = table.heads[0]?.place ?? { file: path, start: 0, end: 0 };
  if (known.stations && !known.stations.includes(station)) {
    const what = `"${station}" is no station of the plant: a file of readings is called as the station they were taken at.`;
    findings.push(mistake('readings-unreadable', { place, what, mend: offer(station, known.stations) }));
    return [];
  }
  const at = headsOf(table.heads, place, findings);
  if (!at) return [];
  return table.rows.flatMap((row) => {
    const one = readLine(row, at, { station, known, decimalComma: table.decimalComma });
    if (!('id' in one)) return [one];
    findings.push(one);
    return [];
  });
}

/** Where each column stands; undefined where one is missing or unknown. */
function headsOf(heads: readonly Cell[], place: Place, findings: Finding[]): ReadonlyMap<Column, number> | undefined {
  const names = heads.map(({ text }) => text.toLowerCase());
  const unknown = heads.find(({ text }) => !COLUMNS.some((column) => column === text.toLowerCase()));
  const missing = NEEDED.filter((column) => !names.includes(column));
  const twice = heads.find((_, i) => names.indexOf(names[i]!) !== i);
  if (!unknown && missing.length === 0 && !twice) {
    return new Map(names.map((name, i) => [name as Column, i]));
  }
  const what = unknown
    ? `"${unknown.text}" is no column of readings.`
    : twice
      ? `The column "${twice.text}" stands here twice.`
      : `The first line has no column ${missing.join(', ')}.`;
  const mend = `The columns are ${COLUMNS.join(', ')}; ${NEEDED.join(', ')} are needed.`;
  findings.push(mistake('readings-unreadable', { place: (unknown ?? twice)?.place ?? place, what, mend }));
  return undefined;
}

interface Reading {
  readonly station: string;
  readonly known: Known;
  readonly decimalComma: boolean;
}

function readLine(
  row: readonly Cell[],
  at: ReadonlyMap<Column, number>,
  { station, known, decimalComma }: Reading,
): Taken | Finding {
  const line = { ...row[0]!.place, end: row.at(-1)!.place.end };
  const cell = (column: Column): Cell => row[at.get(column) ?? -1] ?? { text: '', place: line };
  const wrong = (column: Column, what: string, mend: string) =>
    mistake('reading-unclear', { place: cell(column).place, what, mend });
  const text = (column: Column) => cell(column).text;
  for (const column of NEEDED)
    if (text(column) === '') return wrong(column, `This line gives no ${column}.`, 'Fill it in, or take the line out.');
  if (!isDay(text('date')))
    return wrong('date', `"${text('date')}" is no day of the calendar.`, 'Write it as 2026-03-31.');
  if (text('model') !== '' && !known.models.includes(text('model')))
    return wrong('model', `There is no model "${text('model')}".`, offer(text('model'), known.models));
  if (!['', 'right', 'left'].includes(text('hand')))
    return wrong('hand', `"${text('hand')}" is no hand.`, 'Write right or left; nothing where the model has only one.');
  const unit = findUnit(text('unit'));
  if (!unit) return wrong('unit', `"${text('unit')}" is no unit.`, 'Write the unit of the gauge, such as mm or in.');
  const number = decimalComma ? text('reading').replace(',', '.') : text('reading');
  const parsed = parseQuantity(number, { kind: unit.kind, defaultUnit: unit.id });
  if (!parsed.ok) return wrong('reading', parsed.problem.text, parsed.problem.mend);
  if (parsed.quantity.low !== undefined)
    return wrong('reading', `"${number}" has limits: a reading is one number.`, 'Write what the gauge showed.');
  return {
    place: line,
    station,
    date: text('date'),
    model: text('model'),
    revision: text('revision'),
    hand: text('hand') || 'right',
    fact: text('fact'),
    sample: text('sample'),
    reading: parsed.quantity,
  };
}

/** What counts for one hand of a model: its own at this revision, and the plant's. */
export function readingsOf({ taken }: ReadingFiles, { model, revision }: ModelSpec, hand: Hand): ReadingsByFact {
  const byFact = new Map<string, Taken[]>();
  for (const one of taken) {
    const own = one.model === model.text && one.revision === revision.text && one.hand === hand;
    if (one.model !== '' && !own) continue;
    byFact.set(one.fact, [...(byFact.get(one.fact) ?? []), one]);
  }
  return new Map([...byFact].map(([fact, all]) => [fact, leafOf(fact, all)]));
}

function leafOf(fact: string, all: readonly Taken[]): Leaf<Readings> {
  const first = all[0]!;
  // A fact is measured in one place and is of one kind: what is not goes by itself to a check.
  const alike = all.filter(({ station, reading }) => station === first.station && reading.kind === first.reading.kind);
  const samples = new Map<string, number[]>();
  for (const { sample, reading } of alike)
    if (sample !== '') samples.set(sample, [...(samples.get(sample) ?? []), reading.value]);
  const dates = alike.map(({ date }) => date).toSorted();
  return new Leaf(
    `readings.${fact}`,
    '',
    { kind: 'measured', place: first.place },
    {
      fact,
      station: first.station,
      reads: first.reading.kind,
      unit: first.reading.unit,
      fineness: Math.max(...alike.map(({ reading }) => reading.decimals)),
      values: alike.map(({ reading }) => reading.value),
      samples: [...samples].map(([name, values]) => ({ name, values })),
      from: dates[0]!,
      to: dates.at(-1)!,
    },
  );
}
