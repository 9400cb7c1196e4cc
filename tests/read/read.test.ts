import { describe, expect, test } from 'vitest';
import { nearest, offer } from '../../src/findings/nearest.ts';
import { positionOf, where } from '../../src/findings/render.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { merge } from '../../src/read/merge.ts';
import type { Node } from '../../src/read/node.ts';
import { plain, valueAt } from '../../src/read/node.ts';
import { readSource } from '../../src/read/source.ts';
import { checkAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { edited, sample } from '../cases/workspace.ts';
import type { WorkspaceFiles } from '../cases/workspace.ts';

const nodeOf = (text: string, file = 'f.yaml'): Node => readSource(file, new TextEncoder().encode(text)).root!;
const data = (node: Node) => JSON.parse(JSON.stringify(plain(node))) as unknown;

function merged(base: string, own: string) {
  const findings: Finding[] = [];
  const node = merge(nodeOf(base, 'base.yaml'), nodeOf(own, 'own.yaml'), findings);
  return { node, findings, data: data(node) };
}

describe('what a model takes over', () => {
  test('maps merge key by key, its own value first', () => {
    expect(merged('a: { x: 1, y: 2 }\nb: 3', 'a: { y: 5, z: 6 }').data).toEqual({
      a: { x: '1', y: '5', z: '6' },
      b: '3',
    });
  });

  test('lists are replaced whole, unless every item has an id', () => {
    expect(merged('a: [1, 2, 3]', 'a: [4]').data).toEqual({ a: ['4'] });
    const lists = merged(
      'a: [{ id: x, v: 1, w: 2 }, { id: y, v: 3 }]',
      'a: [{ id: y, remove: yes }, { id: x, v: 9 }, { id: z }]',
    );
    expect(lists.data).toEqual({ a: [{ id: 'x', v: '9', w: '2' }, { id: 'z' }] });
    expect(merged('a: [{ id: x }]', 'a: [{ v: 1 }]').data).toEqual({ a: [{ v: '1' }] });
  });

  test('a map over a number, or a number over a map, takes its place', () => {
    expect(merged('a: 1\nb: { x: 1 }', 'a: { x: 2 }\nb: 3').data).toEqual({ a: { x: '2' }, b: '3' });
  });

  test('remove drops keys of the base; the same key may be given anew', () => {
    expect(merged('a: { x: { p: 1 }, y: 2 }', 'a: { remove: [x, y], x: { q: 3 } }').data).toEqual({
      a: { x: { q: '3' } },
    });
  });

  test('remove of what is not there is a finding, with what was meant', () => {
    const { findings } = merged('a: { stud-a: 1 }', 'a: { remove: [stud-b] }');
    expect(findings.map(({ id, mend, place }) => [id, mend, place.file])).toEqual([
      ['no-such-name', 'Did you mean "stud-a"?', 'own.yaml'],
    ]);
  });

  test('every value keeps the file and place it was written at', () => {
    const { node } = merged('a: { x: 1, y: 2 }', '# own\na: { y: 5 }');
    expect(valueAt(node, 'a', 'x')!.place).toEqual({ file: 'base.yaml', start: 8, end: 9 });
    expect(valueAt(node, 'a', 'y')!.place).toEqual({ file: 'own.yaml', start: 14, end: 15 });
  });
});

const right = (files: WorkspaceFiles) => {
  const checked = checkAll(memoryHost(files));
  return { ...checked.models[0]!.hands[0]!, texts: checked.workspace.texts };
};

test('bare numbers are in the unit of the file they stand in, also where another file takes them over', () => {
  const base = 'models/base/bolt-on.yaml';
  const files = edited([
    { file: base, find: 'units: mm', replace: 'units: in' },
    { file: base, find: 'scale: 622', replace: 'scale: 25-1/2' },
  ]);
  const { facts, subject } = right(files);
  const read = facts.read((use) => [use(subject.spec.neck.scale), use(subject.spec.bridge.travel)]);
  expect(read.ok && read.value.map(({ value, unit }) => [value, unit])).toEqual([
    [647_700_000, 'in'],
    [8_000_000, 'mm'],
  ]);
});

test('a value taken over is traced to the line of the base', () => {
  const { facts, texts } = right(sample());
  facts.all();
  const { origin } = facts.fact('neck.scale')!;
  expect('place' in origin && where(origin.place, texts)).toBe('models/base/bolt-on.yaml:6:10');
});

test('the left hand has what is laid over it, and the rest of the right', () => {
  const [, left] = checkAll(memoryHost(sample())).models[0]!.hands;
  const read = left!.facts.read((use) => [
    use(left!.subject.spec.setups.top.program),
    use(left!.subject.spec.setups.top.flip!),
  ]);
  expect(read.ok && read.value).toEqual(['4121', 'lengthwise']);
});

describe('positions', () => {
  const at = (text: string, needle: string) => Object.values(positionOf(text, text.indexOf(needle)));

  test.each([
    ['a: 1\nb: x', 'x', [2, 4]],
    ['a: 1\r\nb: x\r\n', 'x', [2, 4]],
    ['a: ±±x', 'x', [1, 6]],
    // One character outside the basic plane is one column, though two code units.
    ['a: 🎸x', 'x', [1, 5]],
    ['x', 'x', [1, 1]],
  ])('in %j', (text, needle, expected) => expect(at(text, needle)).toEqual(expected));

  test('of values in a file with line ends of two characters', () => {
    const text = 'units: mm\r\ntitle: "Größe ±"\r\nline: arched\r\n';
    const { place } = valueAt(nodeOf(text), 'line')!;
    expect(positionOf(text, place.start)).toEqual({ line: 3, column: 7 });
    expect(text.slice(place.start, place.end)).toBe('arched');
  });

  test('a mark of byte order in front does not count', () => {
    const source = readSource('f.yaml', new TextEncoder().encode('\uFEFFline: arched\n'));
    const { place } = valueAt(source.root, 'line')!;
    expect(positionOf(source.text, place.start)).toEqual({ line: 1, column: 7 });
  });

  test('the sample reads the same with line ends of two characters', () => {
    const files = Object.fromEntries(
      Object.entries(sample()).map(([name, text]) => [name, text.replaceAll('\n', '\r\n')]),
    );
    const checked = checkAll(memoryHost(files));
    expect([...checked.findings, ...checked.models.flatMap((model) => model.findings)]).toEqual([]);
  });
});

describe('what was meant', () => {
  const cutters = ['mill-8', 'mill-12', 'ball-20', 'facing-60'];
  test.each([
    ['mil-8', 'mill-8'],
    ['mill-21', 'mill-12'],
    ['MILL-12', 'mill-12'],
    ['facing60', 'facing-60'],
    ['drill-3', undefined],
    ['', undefined],
  ])('by %j is %s', (written, meant) => expect(nearest(written, cutters)).toBe(meant));

  test('or what there is', () => {
    expect(offer('drill-3', cutters)).toBe('Take one of: ball-20, facing-60, mill-12, mill-8.');
    expect(offer('x', [])).toBe('There is none yet: add it first.');
  });
});

test('keys and values stay what was written, whatever another reader would make of them', () => {
  const node = nodeOf('a: 12.50\nb: yes\nc: 0x10\nd: null\ne: "1:30"\n12: x\n__proto__: y\n');
  expect(valueAt(node, 'a')).toMatchObject({ text: '12.50' });
  expect(valueAt(node, 'c')).toMatchObject({ text: '0x10' });
  expect(valueAt(node, 'b')).toMatchObject({ text: 'yes' });
  expect(valueAt(node, '12')).toMatchObject({ text: 'x' });
  expect(Object.keys(plain(node) as object)).toContain('__proto__');
  expect(Object.prototype).not.toHaveProperty('y');
});
