/** From the bytes of a table of text, as spreadsheets write it, to cells with places. */
import { CsvError, parse } from 'csv-parse/sync';
import type { Place } from '../findings/finding.ts';

export interface Cell {
  /** Without blanks at its ends. */
  readonly text: string;
  readonly place: Place;
}

export interface CsvTable {
  readonly heads: readonly Cell[];
  readonly rows: readonly (readonly Cell[])[];
  /** Where cells are parted by semicolons a comma is a decimal one: so write spreadsheets set to such a language. */
  readonly decimalComma: boolean;
}

export interface CsvRead {
  readonly text: string;
  /** Absent where the file cannot be read as a table. */
  readonly table?: CsvTable;
  readonly problem?: { readonly place: Place; readonly what: string; readonly mend: string };
}

export function readCsv(file: string, bytes: Uint8Array): CsvRead {
  const text = decoded(bytes);
  const separator = separatorOf(text.slice(0, /[\r\n]|$/.exec(text)!.index));
  try {
    const records = parse(text, {
      delimiter: separator,
      raw: true,
      relax_column_count: true,
      skip_empty_lines: true,
    }) as unknown as readonly { readonly raw: string; readonly record: readonly string[] }[];
    let from = 0;
    const lines = records.map(({ raw, record }) => {
      const start = text.indexOf(raw, from);
      from = start + raw.length;
      return cells(record, raw, { file, start, end: from }, separator);
    });
    const [heads = [], ...rows] = lines.filter((line) => line.some((cell) => cell.text !== ''));
    return { text, table: { heads, rows, decimalComma: separator === ';' } };
  } catch (stop) {
    if (!(stop instanceof CsvError)) throw stop;
    const line = (stop as { lines?: number }).lines ?? 1;
    const start = text.split('\n', line - 1).reduce((sum, one) => sum + one.length + 1, 0);
    const problem = {
      place: { file, start: Math.min(start, text.length), end: text.length },
      what: `From this line on the file cannot be read as a table: ${inWords(stop)}.`,
      mend: 'Look for a quotation mark without its second one, or save the sheet anew as CSV.',
    };
    return { text, problem };
  }
}

/** By its byte-order mark; else UTF-8, and what is no UTF-8 as older spreadsheets write it. */
function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** The one the heads are parted by. */
function separatorOf(firstLine: string): ',' | ';' | '\t' {
  const count = (one: string) => firstLine.split(one).length;
  return ([',', ';', '\t'] as const).reduce((most, one) => (count(one) > count(most) ? one : most));
}

/** Each with its place: the record is walked once more, as the parser keeps none. */
function cells(record: readonly string[], raw: string, line: Place, separator: string): readonly Cell[] {
  let at = 0;
  return record.map((text) => {
    const start = at;
    let quoted = false;
    for (; at < raw.length && (quoted || raw[at] !== separator); at++) if (raw[at] === '"') quoted = !quoted;
    const end = raw.slice(start, at).trimEnd().length + start;
    at += 1;
    const place = { file: line.file, start: line.start + start, end: line.start + Math.max(end, start) };
    return { text: text.trim(), place };
  });
}

const inWords = ({ code }: CsvError): string =>
  code === 'CSV_QUOTE_NOT_CLOSED' || code === 'INVALID_OPENING_QUOTE' || code === 'CSV_INVALID_CLOSING_QUOTE'
    ? 'a quotation mark is out of place'
    : 'its cells do not part';
