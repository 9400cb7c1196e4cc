/** Travellers of the demo catalogue say what its cards say: every station, code, check and limit, once and in order. */
import { describe, expect, test } from 'vitest';
import { travellerOf } from '../../src/cards/traveller.ts';
import type { Order } from '../../src/cards/traveller.ts';
import type { Check, MadeCard, Traveller } from '../../src/cards/card.ts';
import { compileDemo } from './demo.ts';

const compiled = compileDemo();
const { plant } = compiled.checked.workspace;
const cardsOf = (id: string): readonly MadeCard[] => compiled.models.find((model) => model.id === id)!.cards;

const order = (more: Partial<Order> = {}): Order => ({ number: '2114', hand: 'right', quantity: 1, ...more });
const asked = (id: string, more: Partial<Order> = {}) => travellerOf(cardsOf(id), plant, order(more));

function made(id: string, more: Partial<Order> = {}): Traveller {
  const traveller = asked(id, more);
  if ('refused' in traveller) throw new Error(traveller.refused);
  return traveller;
}

const onPiece = ({ often }: Check) =>
  ['common.every-piece', 'common.first-and-every', 'common.every-load'].includes(often.say);

describe.each(compiled.models.flatMap(({ id, hands }) => hands.map(({ subject }) => [id, subject.hand] as const)))(
  'the traveller of %s, %s hand',
  (id, hand) => {
    const { stations } = made(id, { hand });
    const cards = cardsOf(id).filter(({ card }) => card.key.hand === hand && card.key.station !== 'set-aside');

    test('has every station of the route once, in order, with the code of its card', () => {
      expect(stations.map((one) => [one.id, one.code])).toEqual(
        cards.map(({ card, code }) => [card.key.station, code]),
      );
    });

    test('has every check of a piece with all its boxes, and its limits as the card has them', () => {
      for (const [i, { card }] of cards.entries()) {
        const own = stations[i]!.checks;
        const expected = card.checks.filter(onPiece);
        expect(own.map(({ what, boxes }) => [what, boxes])).toEqual(expected.map(({ what, boxes }) => [what, boxes]));
        for (const [n, { limits }] of own.entries()) {
          const { second: _second, acceptance, ...same } = expected[n]!.limits ?? {};
          const { acceptance: accepted, ...shown } = limits ?? {};
          expect(shown).toEqual(same);
          expect(accepted?.low).toBe(acceptance?.low);
          expect(accepted?.high).toBe(acceptance?.high);
          // In the unit of the gauge alone: what is read there is written here.
          expect(JSON.stringify(limits ?? {})).not.toContain('second');
        }
      }
    });
  },
);

test('a number is written, what is judged is ticked', () => {
  const at = (station: string) => made('tarn').stations.find(({ id }) => id === station)!.checks;
  const how = (station: string) => Object.fromEntries(at(station).map((check) => [check.what.say, check.how]));
  expect(how('press')).toEqual({
    'press.check.gauge': 'written',
    'press.check.gauge-row': 'written',
    'press.check.blank': 'written',
    'press.check.flat': 'written',
    'press.check.line': 'ticked',
    'press.check.tacks': 'written',
  });
  expect(how('rough-sawing')['rough-sawing.check.pattern']).toBe('ticked');
  expect(how('sign-off')['sign-off.check.cavities']).toBe('ticked');
});

test('the number on the wood is written again where it is lost, in the words of the cards', () => {
  const marks = made('tarn').stations.flatMap(({ id, marks: lines }) => lines.map(({ say }) => [id, say]));
  expect(marks).toEqual([
    ['planing', 'planing.step.order'],
    ['picking', 'picking.step.write'],
    ['rough-sawing', 'rough-sawing.step.rewrite'],
    ['trim-sawing', 'trim-sawing.step.number'],
    ['machining-back', 'traveller.rewrite'],
    ['machining-top', 'traveller.rewrite'],
    ['sign-off', 'sign-off.step.number'],
  ]);
});

describe('an order', () => {
  test('is on its traveller', () => {
    const {
      model,
      hand,
      order: number,
      pair,
      finish,
      grade,
      quantity,
    } = made('tarn', {
      hand: 'left',
      finish: 'blue-clear',
      pair: 'P-118',
      grade: 'fine, clean',
      quantity: 3,
    });
    expect([model.text, hand, number, pair, finish, grade, quantity]).toEqual([
      'Tarn',
      'left',
      '2114',
      'P-118',
      'Rockpool blue, clear',
      'fine, clean',
      3,
    ]);
  });

  test('has a place for a pair only where there is one', () => {
    expect(made('tarn').pair).toBe('');
    expect(made('skerry').pair).toBeUndefined();
  });

  test.each<[string, Partial<Order>, string]>([
    ['skerry', { hand: 'left' }, 'It is not made left-handed. There is: right.'],
    [
      'tarn',
      { finish: 'mauve' },
      'It does not come in the finish "mauve". There is: amber-shaded, black-opaque, blue-clear.',
    ],
    [
      'tarn',
      { finish: 'blue-clear', grade: 'exhibition' },
      'It is not made of wood of the grade "exhibition" under the finish "blue-clear". There is: clean, paired, select, fine.',
    ],
    [
      'tarn',
      { grade: 'middling' },
      'It is not made of wood of the grade "middling". There is: clean, near, paired, fine, exhibition, sound, small-flaws, any, plain, select.',
    ],
  ])('of %s that cannot be is refused: %j', (id, more, refused) => {
    expect(asked(id, more)).toEqual({ refused });
  });
});
