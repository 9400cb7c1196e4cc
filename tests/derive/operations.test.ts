/** The body after each operation: nothing is lost between the first and the last, and the last is the machined body. */
import { describe, expect, test } from 'vitest';
import { compileDemo } from '../cards/demo.ts';
import { MM, valueOf } from './subject.ts';

const { checked } = compileDemo();

describe.each(checked.models.map((model) => [model.id, model.hands[0]!.facts] as const))('%s', (_, facts) => {
  const operations = valueOf(facts, 'operations');

  test('each takes what it says, and the last leaves the machined body', () => {
    const [first] = operations;
    let left = first!.left.value + first!.removed.value;
    // The blank inside the outline: its thickness by the area.
    const blank = (valueOf(facts, 'thickness.blank').value / 1e9) * valueOf(facts, 'outline.area').value;
    expect(Math.abs(left / blank - 1)).toBeLessThan(1e-9);
    for (const operation of operations) {
      expect(operation.removed.value).toBeGreaterThanOrEqual(0);
      left -= operation.removed.value;
      expect(Math.abs(operation.left.value - left)).toBeLessThan(1e-12);
    }
    expect(Math.abs(left / valueOf(facts, 'body.volume').value - 1)).toBeLessThan(1e-6);
  });

  test('wood gets thinner with every operation, down to the thinnest of the machined body', () => {
    const worst = operations.map(({ thinnest }) => (thinnest ? (thinnest.wood.low ?? thinnest.wood.value) : Infinity));
    worst.forEach((mm, i) => expect(mm).toBeLessThanOrEqual(worst[i - 1] ?? Infinity));
    const body = valueOf(facts, 'body.thinnest')!;
    expect(worst.at(-1)).toBe(body.wood.low);
    expect(operations.at(-1)!.thinnest!.cut).toBe(body.cut);
  });
});

test('before the carve the wood over the controls of the arched model is counted to the face of the blank', () => {
  const { facts } = checked.models.find(({ id }) => id === 'tarn')!.hands[0]!;
  const carve = valueOf(facts, 'operations').findIndex(({ what }) => what === 'carve');
  const before = valueOf(facts, 'operations')[carve - 1]!;
  // Floor: 5.0 under the top where that is lowest. Blank face: 50.30 over the back.
  const over = valueOf(facts, 'thickness.over.controls').value / MM;
  expect(before.thinnest!.cut).toBe('cavity.controls');
  expect(before.thinnest!.wood.value / MM).toBeCloseTo(50.3 - (over - 5), 2);
});

test('the left hand is the mirror image: the same volume, and the same wood left everywhere', () => {
  const [right, left] = checked.models.find(({ id }) => id === 'tarn')!.hands.map((hand) => hand.facts);
  const [a, b] = [right!, left!].map((facts) => valueOf(facts, 'body.volume').value);
  expect(Math.abs(a! / b! - 1)).toBeLessThan(1e-9);
  const ids = right!.all().flatMap(({ id }) => (id.startsWith('left.') ? [id as `left.${string}`] : []));
  expect(ids.length).toBeGreaterThan(100);
  for (const id of ids) {
    const [one, other] = [right!, left!].map((facts) => valueOf(facts, id)?.left.mm);
    if (one === undefined || one === -Infinity) expect(other).toBe(one);
    // The least under an arch is searched for, in steps down to 0.0005 mm: about that place it changes by far less.
    else expect(Math.abs(one - other!), id).toBeLessThan(1e-5);
  }
});
