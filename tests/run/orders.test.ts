/** Lists of orders as spreadsheets write them: what is read of them, and what stops a line or the list. */
import { describe, expect, test } from 'vitest';
import { bodyNumbers } from '../../src/run/body-numbers.ts';
import { readOrders } from '../../src/run/orders.ts';

const HEAD = 'order,model,finish,grade,hand,quantity,due,lead';
const bytes = (text: string) => new TextEncoder().encode(text);
const read = (text: string) => readOrders('orders.csv', bytes(text));
const line = (text: string) => read(`${HEAD}\n${text}\n`);
/** What of a finding is at fault, as it stands in the file. */
const found = (text: string) => {
  const list = line(text);
  return list.findings.map(({ id, place, what }) => ({ id, at: list.text.slice(place.start, place.end), what }));
};

describe('a line', () => {
  test('is read, with what it leaves out', () => {
    const { orders, findings } = line('1001,tarn,amber-shaded,"fine, clean",left,12,2026-12-04,T. Vael');
    expect(findings).toEqual([]);
    expect(orders).toMatchObject([
      {
        number: '1001',
        model: 'tarn',
        finish: 'amber-shaded',
        grade: ['fine', 'clean'],
        hand: 'left',
        quantity: 12,
        due: '2026-12-04',
        lead: 'T. Vael',
      },
    ]);
    const [bare] = read('order,model,finish,quantity\nA-7,tarn,black-opaque,1\n').orders;
    expect(bare).toMatchObject({ number: 'A-7', grade: [], hand: 'right', quantity: 1 });
    expect(bare).not.toHaveProperty('due');
    expect(bare).not.toHaveProperty('lead');
  });

  test.each([
    ['no number', ',tarn,black-opaque,,,1,,', '', /no order/],
    ['no model', '1,,black-opaque,,,1,,', '', /no model/],
    ['a number with a blank', '10 01,tarn,black-opaque,,,1,,', '10 01', /written on wood/],
    ['a number that climbs', '../1,tarn,black-opaque,,,1,,', '../1', /written on wood/],
    ['a number too long for a label', `${'9'.repeat(33)},tarn,x,,,1,,`, '9'.repeat(33), /written on wood/],
    ['no quantity', '1,tarn,black-opaque,,,,,', '', /no quantity/],
    ['a quantity of nothing', '1,tarn,black-opaque,,,0,,', '0', /no number of bodies/],
    ['half a body', '1,tarn,black-opaque,,,1.5,,', '1.5', /no number of bodies/],
    ['more bodies than a day has', '1,tarn,black-opaque,,,10000,,', '10000', /no number of bodies/],
    ['a quantity with its unit', '1,tarn,black-opaque,,,3 pcs,,', '3 pcs', /no number of bodies/],
    ['a day that is none', '1,tarn,black-opaque,,,1,2026-02-30,', '2026-02-30', /no day/],
    ['a day as another land writes it', '1,tarn,black-opaque,,,1,30.11.2026,', '30.11.2026', /no day/],
    ['a hand that is none', '1,tarn,black-opaque,,both,1,,', 'both', /no hand/],
    ['a formula', '1,tarn,black-opaque,,,=2+1,,', '=2+1', /formula/],
    ['a formula in quotes', '1,tarn,"=HYPERLINK(""x"",""y"")",,,1,,', '"=HYPERLINK(""x"",""y"")"', /formula/],
    ['a call by at', '1,@tarn,black-opaque,,,1,,', '@tarn', /formula/],
    ['a cell too many', '1,tarn,black-opaque,,,1,,,T. Vael', 'T. Vael', /9 cells under 8 heads/],
  ])('%s stops it', (_, text, at, what) => {
    expect(found(text)).toEqual([{ id: 'order-unclear', at, what: expect.stringMatching(what) as string }]);
    expect(line(text).orders).toEqual([]);
  });

  test('stops no other line', () => {
    const { orders, findings } = line('1,tarn,x,,,1,,\n2,tarn,x,,,no,,\n1,tarn,x,,,1,,\n3,tarn,x,,,1,,');
    expect(orders.map(({ number }) => number)).toEqual(['1', '3']);
    expect(findings.map(({ what }) => what)).toEqual([
      '"no" is no number of bodies.',
      'Order 1 stands in this list already.',
    ]);
  });
});

describe('two bodies never bear one number', () => {
  const numbers = (list: string) => line(list).orders.map(({ number, quantity }) => `${number} × ${quantity}`);
  test.each([
    ['the number of a body of an order before it', '7,tarn,x,,,3,,\n7-3,tarn,x,,,1,,', ['7 × 3']],
    ['an order before it reads as one of its bodies', '7-3,tarn,x,,,1,,\n7,tarn,x,,,3,,', ['7-3 × 1']],
    ['small letters for capitals', 'wx1,tarn,x,,,1,,\nWX1,tarn,x,,,1,,', ['wx1 × 1']],
    ['bodies of bodies', '7-1,tarn,x,,,2,,\n7,tarn,x,,,1,,\n7-1-2,tarn,x,,,1,,', ['7-1 × 2', '7 × 1']],
    // No fourth body, and an order of one body has no dash.
    [
      '',
      '7,tarn,x,,,3,,\n7-4,tarn,x,,,1,,\n8,tarn,x,,,1,,\n8-1,tarn,x,,,1,,',
      ['7 × 3', '7-4 × 1', '8 × 1', '8-1 × 1'],
    ],
    ['', '7-4,tarn,x,,,1,,\n7,tarn,x,,,3,,\n7-03,tarn,x,,,1,,', ['7-4 × 1', '7 × 3', '7-03 × 1']],
  ])('%s', (why, list, left) => {
    expect(numbers(list)).toEqual(left);
    expect(line(list).findings.map(({ id }) => id)).toEqual(why === '' ? [] : ['order-unclear']);
  });

  // Every set of numbers that was let through, written out in full.
  test('whatever the list', () => {
    const parts = ['7', '7-1', '7-2', '7-10', '7-1-1', 'a', 'A', 'a-2'];
    let refusedOnes = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const rows = parts
        .map((number, i) => ({ number, rank: (seed * 7919 * (i + 3)) % 101, quantity: 1 + ((seed * (i + 5)) % 11) }))
        .toSorted((a, b) => a.rank - b.rank);
      const { orders, findings } = line(rows.map((row) => `${row.number},tarn,x,,,${row.quantity},,`).join('\n'));
      const written = orders.flatMap(bodyNumbers).map((one) => one.toUpperCase());
      expect(new Set(written).size).toBe(written.length);
      expect(orders.length + findings.length).toBe(parts.length);
      refusedOnes += findings.length;
    }
    expect(refusedOnes).toBeGreaterThan(400);
  });
});

describe('a list', () => {
  const rows = [
    ['1001', 'tarn', 'amber-shaded', 'fine; clean', 'left', '2', '2026-12-04', 'Żak Ødegård'],
    ['1002', 'tarn', 'black-opaque', '', '', '1', '', ''],
  ];
  const text = (separator: string, end: string) =>
    [HEAD.split(','), ...rows]
      .map((cells) => cells.map((one) => (one.includes(separator) ? `"${one}"` : one)).join(separator))
      .join(end) + end;
  const wide = (content: string, little: boolean) => {
    const units = [0xfeff, ...Array.from({ length: content.length }, (_, i) => content.charCodeAt(i))];
    return Uint8Array.from(units.flatMap((unit) => (little ? [unit & 255, unit >> 8] : [unit >> 8, unit & 255])));
  };
  const meant = readOrders('orders.csv', bytes(text(',', '\n'))).orders.map(({ places: _places, ...order }) => order);

  test.each([
    ['commas', bytes(text(',', '\n'))],
    ['semicolons', bytes(text(';', '\n'))],
    ['tabs', bytes(text('\t', '\n'))],
    ['lines ended by CR LF', bytes(text(',', '\r\n'))],
    ['a byte-order mark', bytes(`\ufeff${text(';', '\r\n')}`)],
    ['UTF-16, little end first', wide(text('\t', '\r\n'), true)],
    ['UTF-16, big end first', wide(text('\t', '\r\n'), false)],
    ['empty lines between', bytes(text(',', '\n').replaceAll('\n', '\n\n'))],
    ['lines of empty cells', bytes(text(',', '\n').replaceAll('\n', '\n,,,,,,,\n'))],
    ['heads in capitals', bytes(text(',', '\n').replace(HEAD, HEAD.toUpperCase()))],
  ])('with %s says the same', (_, content) => {
    const { orders, findings } = readOrders('orders.csv', content);
    expect(findings).toEqual([]);
    expect(orders.map(({ places: _places, ...order }) => order)).toEqual(meant);
    expect(meant).toHaveLength(2);
  });

  test('in an older table of characters keeps its names', () => {
    const old = Uint8Array.from([...bytes(`${HEAD}\n1,tarn,x,,,1,,Jos`), 0xe9, 0x0a]);
    expect(readOrders('orders.csv', old).orders[0]!.lead).toBe('José');
  });

  test('with a break inside quotes is one line, and the line after it stands where it stands', () => {
    const { orders, findings, text: whole } = read(`${HEAD}\n1,tarn,"black\n-opaque",,,1,,\n2,tarn,x,,,zwei,,\n`);
    expect(orders.map(({ finish }) => finish)).toEqual(['black\n-opaque']);
    const [{ place }] = findings as [(typeof findings)[0]];
    expect(whole.slice(place.start, place.end)).toBe('zwei');
  });

  test.each([
    ['no head that is needed', 'order,model,finish\n1,tarn,x\n', /no column quantity/],
    ['a head nobody knows', `${HEAD},colour\n1,tarn,x,,,1,,,red\n`, /"colour" is no column/],
    ['a head twice', `order,order,model,finish,quantity\n1,1,tarn,x,1\n`, /stands here twice/],
    ['a quote that is not closed', `${HEAD}\n1,"tarn,x,,,1,,\n`, /cannot be read as a table/],
  ])('with %s is not read', (_, content, what) => {
    const { orders, findings } = read(content);
    expect(orders).toEqual([]);
    expect(findings).toMatchObject([{ id: 'orders-unreadable', what: expect.stringMatching(what) as string }]);
  });

  test('of nothing has no orders, and says so where it is run', () => {
    expect(read('').orders).toEqual([]);
    expect(read(`${HEAD}\n`).orders).toEqual([]);
  });
});
