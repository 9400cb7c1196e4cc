import { describe, expect, test } from 'vitest';
import { checkAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { positionOf } from '../../src/findings/render.ts';
import { readReadings } from '../../src/read/readings.ts';
import { sample } from '../cases/workspace.ts';

const HEAD = 'date,model,revision,hand,fact,sample,reading,unit';
const FACT = 'thickness.part.cap.sized';
const line = (reading: string) => `2026-09-01,tarn,C,right,${FACT},1,${reading},mm`;
const known = { stations: ['sizing', 'press'], models: ['tarn', 'brae'] };
const PATH = 'models/readings/sizing.csv';

const bytesOf = (text: string) => new TextEncoder().encode(text);
const read = (bytes: Uint8Array, path = PATH) => readReadings([{ path, bytes }], known);
const values = (bytes: Uint8Array) => read(bytes).taken.map(({ reading }) => reading.value / 1e6);

/** `id line:column` of each finding, and what it says. */
function said(text: string, path = PATH) {
  const { findings } = read(bytesOf(text), path);
  return findings.map(({ id, severity, place, what }) => {
    const at = positionOf(text, place.start);
    return { id: `${id} ${at.line}:${at.column} ${severity}`, what };
  });
}

describe('readings as spreadsheets write them', () => {
  test.each([
    ['commas', `${HEAD}\n${line('16.41')}\n`],
    ['semicolons and a decimal comma', `${HEAD}\n${line('16.41')}\n`.replaceAll(',', ';').replace('16.41', '16,41')],
    ['tabs', `${HEAD}\n${line('16.41')}\n`.replaceAll(',', '\t')],
    ['lines of another system', `${HEAD}\r\n${line('16.41')}\r\n`],
    ['no last line end', `${HEAD}\n${line('16.41')}`],
    ['quotes', `${HEAD}\n"2026-09-01","tarn","C","right","${FACT}","first, of ""five""","16.41","mm"\n`],
    ['a break inside quotes', `${HEAD}\n2026-09-01,tarn,C,right,${FACT},"a\nb",16.41,mm\n`],
    ['empty lines', `${HEAD}\n\n${line('16.41')}\n,,,,,,,\n`],
    ['capitals in the heads', `${HEAD.toUpperCase()}\n${line('16.41')}\n`],
    ['another order', `unit,reading,fact,date\nmm,16.41,${FACT},2026-09-01\n`],
  ])('%s', (_, text) => {
    expect(read(bytesOf(text)).findings).toEqual([]);
    expect(values(bytesOf(text))).toEqual([16.41]);
  });

  test('with byte-order marks and in other encodings', () => {
    const text = `${HEAD}\n${line('16.41')}\n`;
    const wide = (order: 'le' | 'be') => {
      const bytes = [...text].flatMap((one) => [one.charCodeAt(0), 0]);
      const swapped = order === 'le' ? bytes : bytes.map((_, i) => bytes[i ^ 1]!);
      return Uint8Array.from([...(order === 'le' ? [0xff, 0xfe] : [0xfe, 0xff]), ...swapped]);
    };
    expect(values(bytesOf(`\uFEFF${text}`))).toEqual([16.41]);
    expect(values(wide('le'))).toEqual([16.41]);
    expect(values(wide('be'))).toEqual([16.41]);
    const old = Uint8Array.from([
      ...bytesOf(`${HEAD}\n2026-09-01,tarn,C,right,${FACT},`),
      0xe9,
      ...bytesOf(',16.41,mm\n'),
    ]);
    expect(read(old).taken[0]!.sample).toBe('é');
  });

  test('an inch is an inch', () => {
    expect(values(bytesOf(`${HEAD}\n${line('.6457').replace(',mm', ',in')}\n`))[0]).toBeCloseTo(16.40078, 9);
  });
});

describe('a slip stands where it was made, and stops nothing', () => {
  test.each([
    ['a unit nobody knows', `${HEAD}\n${line('16.41').replace(',mm', ',mmm')}\n`, 'reading-unclear 2:58 caution'],
    ['no number', `${HEAD}\n${line('16.41')}\n${line('ok')}\n`, 'reading-unclear 3:52 caution'],
    ['a formula', `${HEAD}\n${line('=A1+1')}\n`, 'reading-unclear 2:52 caution'],
    ['limits', `${HEAD}\n${line('16.4 ±0.1')}\n`, 'reading-unclear 2:52 caution'],
    ['a decimal comma between commas', `${HEAD}\n${line('"16,41"')}\n`, 'reading-unclear 2:52 caution'],
    ['no reading', `${HEAD}\n${line('')}\n`, 'reading-unclear 2:52 caution'],
    ['a day that is none', `${HEAD}\n${line('16.41').replace('09-01', '02-30')}\n`, 'reading-unclear 2:1 caution'],
    ['a model that is none', `${HEAD}\n${line('16.41').replace('tarn', 'tern')}\n`, 'reading-unclear 2:12 caution'],
    ['a hand that is none', `${HEAD}\n${line('16.41').replace('right', 'both')}\n`, 'reading-unclear 2:19 caution'],
    ['a short line', `${HEAD}\n2026-09-01,tarn\n`, 'reading-unclear 2:1 caution'],
    ['a column too many', `${HEAD},who\n${line('16.41')},x\n`, 'readings-unreadable 1:51 caution'],
    ['a column twice', `${HEAD},unit\n${line('16.41')},mm\n`, 'readings-unreadable 1:51 caution'],
    ['a column missing', `date,fact,reading\n2026-09-01,${FACT},16.41\n`, 'readings-unreadable 1:1 caution'],
    ['an open quote', `${HEAD}\n${line('"16.41')}\n`, 'readings-unreadable 2:1 caution'],
    ['nothing at all', '', 'readings-unreadable 1:1 caution'],
  ])('%s', (_, text, expected) => {
    expect(said(text).map(({ id }) => id)).toEqual([expected]);
  });

  test('a file of no station', () => {
    const [only] = said(`${HEAD}\n${line('16.41')}\n`, 'models/readings/sizng.csv');
    expect(only!.id).toBe('readings-unreadable 1:1 caution');
    expect(only!.what).toContain('"sizng" is no station');
  });

  test('the other lines count', () => {
    expect(values(bytesOf(`${HEAD}\n${line('16.41')}\n${line('x')}\n${line('16.43')}\n`))).toEqual([16.41, 16.43]);
  });
});

describe('what counts for a body', () => {
  const files = (text: string) => ({ ...sample(), [PATH]: text });
  const countOf = (text: string, hand: 'right' | 'left') => {
    const { models } = checkAll(memoryHost(files(text)));
    const { subject } = models[0]!.hands.find((one) => one.subject.hand === hand)!;
    const leaf = subject.readings.get(FACT);
    const facts = models[0]!.hands[0]!.facts;
    const reading = leaf && facts.read((use) => use(leaf).values.length);
    return reading?.ok ? reading.value : 0;
  };
  const three = `${HEAD}\n${line('16.41')}\n${line('16.42').replace(',C,', ',B,')}\n${line('16.43').replace('right', 'left')}\n`;

  test('its own hand, at its present revision', () => {
    expect(countOf(three, 'right')).toBe(1);
    expect(countOf(three, 'left')).toBe(1);
    expect(countOf(three.replace(',C,', ',B,'), 'right')).toBe(0);
  });

  test('no reading changes a card', () => {
    const codes = (text: string) => checkAll(memoryHost(files(text))).models[0]!.cards.map(({ code }) => code);
    expect(codes(three)).toEqual(codes(`${HEAD}\n`));
    expect(codes(three).length).toBeGreaterThan(20);
  });
});
