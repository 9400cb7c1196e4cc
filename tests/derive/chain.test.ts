import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Subject } from '../../src/facts/subject.ts';
import { factsOf, hundredths, lengthLeaf, MM, mmOf, sampleSubject, valueOf } from './subject.ts';

const base = sampleSubject();

interface Chain {
  readonly sized: number;
  readonly sizedTol: number;
  readonly planedOver: number;
  readonly planedTol: number;
  readonly roughOver: number;
  readonly roughUp: number;
}

/** All in hundredths of a millimetre. */
const chains: fc.Arbitrary<Chain> = fc.record({
  sized: fc.integer({ min: 300, max: 9000 }),
  sizedTol: fc.integer({ min: 1, max: 99 }),
  planedOver: fc.integer({ min: 1, max: 500 }),
  planedTol: fc.integer({ min: 1, max: 99 }),
  roughOver: fc.integer({ min: 1, max: 900 }),
  roughUp: fc.integer({ min: 0, max: 300 }),
});

function subjectOf(chain: Chain): Subject {
  const { spec, plant } = base;
  const arched = plant.lines!['arched']!;
  const cap = arched.cap!;
  const planed = lengthLeaf('planed.over', `${hundredths(chain.planedOver)} ±${hundredths(chain.planedTol)}`);
  const rough = lengthLeaf('rough.over', `${hundredths(chain.roughOver)} +${hundredths(chain.roughUp)}/-0`);
  const sized = lengthLeaf('sized', `${hundredths(chain.sized)} ±${hundredths(chain.sizedTol)}`);
  const line = { ...arched, cap: { rough: { ...cap.rough, over: rough }, planed: { ...cap.planed, over: planed } } };
  return {
    spec: { ...spec, stages: { ...spec.stages, cap: { sized } } },
    plant: { ...plant, lines: { arched: line } },
    hand: 'right',
    readings: new Map(),
    pictures: base.pictures,
  };
}

describe('the chain of a part', () => {
  test('closes: rough less what is taken off is what is given', () => {
    fc.assert(
      fc.property(chains, (chain) => {
        const facts = factsOf(subjectOf(chain));
        const rough = valueOf(facts, 'thickness.part.cap.rough').value;
        const planing = valueOf(facts, 'removal.part.cap.planed').value;
        const sizing = valueOf(facts, 'removal.part.cap.sized').value;
        expect(rough - planing - sizing).toBe(chain.sized * 10_000);
        expect(planing).toBe(chain.roughOver * 10_000);
        expect(sizing).toBe(chain.planedOver * 10_000);
      }),
    );
  });

  test('least and most taken off are those of all corners', () => {
    fc.assert(
      fc.property(chains, (chain) => {
        const facts = factsOf(subjectOf(chain));
        const stages = {
          sized: [chain.sized - chain.sizedTol, chain.sized + chain.sizedTol],
          planed: [-chain.planedTol, chain.planedTol].map((tol) => chain.sized + chain.planedOver + tol),
          rough: [0, chain.roughUp].map((up) => chain.sized + chain.planedOver + chain.roughOver + up),
        };
        for (const [before, after] of [
          ['rough', 'planed'],
          ['planed', 'sized'],
        ] as const) {
          const corners = stages[before].flatMap((b) => stages[after].map((a) => (b - a) * 10_000));
          const { low, high } = valueOf(facts, `removal.part.cap.${after}`);
          expect([low, high]).toEqual([Math.min(...corners), Math.max(...corners)]);
        }
      }),
    );
  });
});

test('the sample by hand', () => {
  const facts = factsOf(base);
  expect(mmOf(valueOf(facts, 'thickness.blank'))).toEqual([50.85, 50.62, 51.08]);
  // √(0.10² + 0.03² + 0.10²) = √0.0209
  expect(valueOf(facts, 'thickness.blank.rss').value / MM).toBeCloseTo(Math.sqrt(0.0209), 9);
  // 50.85 − 50.30; 50.62 − 50.40; 51.08 − 50.20
  expect(mmOf(valueOf(facts, 'removal.body.back-faced'))).toEqual([0.55, 0.22, 0.88]);
  expect(mmOf(valueOf(facts, 'removal.body.machined'))).toEqual([0.7, 0.48, 0.92]);
  expect(mmOf(valueOf(facts, 'removal.body.white.crown'))).toEqual([0.4, 0.13, 0.67]);
  expect(mmOf(valueOf(facts, 'thickness.part.cap.rough'))).toEqual([20.6, 20.6, 21.6]);
});

test('blank and pieces by hand', () => {
  const facts = factsOf(base);
  // Outline 300 × 420, 6 to the rough line and 8 beyond it on every side: 328 × 448. The saw line is drawn 0.001 mm further out, so that
  // its chords are nowhere nearer than they should be.
  const length = 420 + 2 * (6 + 8) + 0.002;
  const width = 300 + 2 * (6 + 8) + 0.002;
  expect(valueOf(facts, 'outline.length').value / MM).toBeCloseTo(420, 3);
  expect(Math.abs(valueOf(facts, 'blank.length').value / MM - length)).toBeLessThanOrEqual(0.0001);
  expect(Math.abs(valueOf(facts, 'blank.width').value / MM - width)).toBeLessThanOrEqual(0.0001);
  // Two pieces, one jointed edge each: 164 + 3.
  expect(Math.abs(valueOf(facts, 'blank.back.piece-width').value / MM - 167.001)).toBeLessThanOrEqual(0.0001);
  // 2 × 1.5 in × 167 mm × 448 mm, and of the cap 13/16 in counts as 1 in; a board foot is 144 in³.
  const square = (167 * 448) / 25.4 ** 2;
  const boardFeet = (id: 'blank.back.timber' | 'blank.cap.timber' | 'blank.back.bought') =>
    valueOf(facts, id).value / (144 * 0.0254 ** 3);
  expect(boardFeet('blank.back.timber')).toBeCloseTo((2 * 1.5 * square) / 144, 3);
  expect(boardFeet('blank.cap.timber')).toBeCloseTo((2 * 1 * square) / 144, 3);
  expect(boardFeet('blank.back.bought')).toBeCloseTo((2 * 1.5 * square) / 144 / 0.62, 3);
});
