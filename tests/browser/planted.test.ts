/** A fault of each kind, planted in a sound card: the measure that is made for it tells it, and a sound card nothing. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { printAll, type PrintSheet } from '../../src/print/print.ts';
import { qrMarkup } from '../../src/print/qr.ts';
import { assets, input, name, plan, posting, richCard } from '../print/fixture.ts';
import { openTree, violations } from './measure/accessible.ts';
import { notAsMany, notOnEveryPage, notOnFirstPage } from './measure/content.ts';
import { openDesk, type Desk } from './measure/desk.ts';
import { longer, withLongNames } from './measure/long-names.ts';
import { faultsOf, look, type Measure, type Shown } from './measure/measured.ts';
import { readPaper, type PaperPage } from './measure/paper.ts';
import { unreadable } from './measure/qr.ts';

const output = printAll(input([richCard({ drawings: [{ ...plan, scale: 2 }] })]), assets());
const sound = output.sheets.find(({ name }) => name === 'models/tarn/sizing.pdf')!;

const styled = (css: string) => (body: string) => `${body}<style>${css}</style>`;
const swapped = (from: string | RegExp, to: string) => (body: string) => {
  const changed = body.replace(from, to);
  if (changed === body) throw new Error(`the card has no ${String(from)}`);
  return changed;
};
/** A text laid over the card's corner, before its end. */
const laid = (style: string, text = 'Hand on the stop') =>
  swapped('</article>', `<p style="position:absolute;top:150mm;left:40mm;${style}">${text}</p></article>`);
/** A drawing as large as it says, or not. */
const drawnAt = (factor: number) => (body: string) =>
  body.replace(
    /(class="drawing" width=")([\d.]+)(mm" height=")([\d.]+)/,
    (_, a: string, width: string, b: string, height: string) =>
      a + Number(width) * factor + b + Number(height) * factor,
  );
const ofDrawing = (markup: string) => swapped('<g class="scale-bar">', `${markup}<g class="scale-bar">`);
const text = (x: number, y: number, more = '') => `<text x="${x}" y="${y}" ${more}>Neck pickup</text>`;

type Plant = readonly [what: string, change: (body: string) => string, measure: Measure, told: RegExp];

const PLANTED: readonly Plant[] = [
  ['a block wider than the card', laid('position:static;width:230mm'), 'overflow', /stands out of the card/],
  ['a page the browser made smaller', laid('position:static;width:230mm'), 'overflow', /% of their size on paper/],
  ['a word longer than its place', styled('.steps li{white-space:nowrap}'), 'overflow', /wider than its place/],
  ['a text cut off', styled('.model{overflow:hidden;height:3mm}'), 'overflow', /is cut off: .*Tarn/],
  ['a text that ends in dots', styled('h1{overflow:hidden;text-overflow:ellipsis}'), 'overflow', /is cut off/],
  ['a text left of the card', laid('left:-9mm'), 'overflow', /stands out of the card: .*Hand on the stop/],
  ['a text beside the room of paper', laid('left:-9mm'), 'overflow', /page 1: .* out of its room: .*on the stop/],
  [
    'a foot at the edge of the sheet',
    swapped('@bottom-left{', '@bottom-left{vertical-align:bottom;'),
    'overflow',
    /out of its room/,
  ],
  ['a text out of its drawing', ofDrawing(text(-400, 0)), 'overflow', /stands out of its drawing/],
  ['a text the paper lacks', laid('top:0;left:-60mm'), 'overflow', /not on the paper: Hand on the stop/],
  ['a sheet of another size', swapped('size:A4', 'size:A5'), 'overflow', /page 1 is 148/],
  ['key numbers set smaller', styled('.key-value{font-size:8.6mm}'), 'capitals', /5\.7\d mm, key number/],
  ['steps set smaller', styled('.steps{font-size:4.9mm}'), 'capitals', /3\.27 mm, step/],
  ['a number of a step set smaller', styled('.steps li::before{font-size:3mm}'), 'capitals', /2\.00 mm, step/],
  ['limits set smaller', styled('.check-limits{font-size:4.9mm}'), 'capitals', /3\.27 mm, check/],
  ['a note set smaller', styled('.code-note{font-size:2.9mm}'), 'capitals', /1\.94 mm, other/],
  ['a drawing made smaller', drawnAt(0.8), 'capitals', /1\.87 mm, drawing/],
  [
    'a foot set smaller',
    swapped('@bottom-left{', '@bottom-left{font-size:2.9mm;'),
    'capitals',
    /page 1: capitals of 1\.9\d mm/,
  ],
  ['grey on white', styled('.tools{color:#777}'), 'contrast', /contrast 4\.5:1: /],
  ['black seen through', styled('.tools{opacity:.5}'), 'contrast', /contrast 4\.0:1: /],
  ['black on red', styled('.when-out{background:#c00}'), 'contrast', /contrast 3\.6:1: /],
  ['green on black, faint in mono', styled('.status{color:#0c0}'), 'contrast', /^contrast 4\.7:1 in mono: .*DRAFT/],
  [
    'white on a ground that may be left out',
    styled('.status{print-color-adjust:economy}'),
    'contrast',
    /its ground is left out/,
  ],
  ['grey in a drawing', ofDrawing(text(0, 0, 'fill="#888"')), 'contrast', /contrast 3\.5:1: .*Neck/],
  [
    'black on black in a drawing',
    ofDrawing(`<path d="M-20 -20H40V20H-20Z" fill="#222"/>${text(0, 0)}`),
    'contrast',
    /contrast 1\.\d:1: .*Neck/,
  ],
  ['pages counted wrong', swapped('counter(pages)', '"9"'), 'pages', /page 1 of \d does not say so/],
  ['a head of a table on its first page alone', styled('thead{display:table-row-group}'), 'pages', /without its head/],
  ['a row lost', styled('tbody tr:nth-child(7){display:none}'), 'pages', /on no page whole: .*7/],
  ['two texts at one place', laid('top:20mm;left:1mm'), 'apart', /mm in each other: .*Hand on the stop/],
  ['two labels at one place', ofDrawing(text(0, 0) + text(4, 1)), 'apart', /"Neck pickup" and "Neck pickup"/],
  [
    'two labels across each other',
    ofDrawing(text(0, 0) + text(0, 0, 'transform="rotate(-90) translate(-9 9)"')),
    'apart',
    /"Neck pickup" and "Neck pickup"/,
  ],
  ['lines of one text in each other', styled('.steps{line-height:.6}'), 'apart', /mm in each other/],
  [
    'feet of a page in each other',
    swapped('@bottom-left{content:"', `@bottom-left{white-space:nowrap;content:"${'Neck pickup '.repeat(9)}`),
    'apart',
    /page 1: .*" and "Neck pickup/,
  ],
  [
    'blocks turned round to the eye',
    styled('.checks ol{display:flex;flex-direction:column-reverse}'),
    'order',
    /stands above it/,
  ],
  ['columns read across', styled('.work{direction:rtl}'), 'order', /stands above it/],
  [
    'blocks turned round to the ear',
    (body) =>
      body.replace(
        /(<section class="checks">[\s\S]*?<\/section>)\s*(<section class="sign-off">[\s\S]*?<\/section>)/,
        '$2$1',
      ),
    'order',
    /checks is read after sign-off/,
  ],
  [
    'a block nobody knows',
    swapped('</article>', '<div class="advert">Also</div></article>'),
    'order',
    /no known place: advert/,
  ],
  ['a sign the font lacks', swapped('Sizing', '≤ Sizing'), 'glyphs', /has no ≤/],
  ['such a sign on paper', swapped('Sizing', '→ Sizing'), 'glyphs', /page 1: the font .* is none of the cards/],
  ['such a sign by the style', styled('h1::after{content:"✓"}'), 'glyphs', /has no ✓/],
  [
    'such a sign in the foot',
    swapped('@bottom-left{content:"', '@bottom-left{content:"⌀ '),
    'glyphs',
    /page 1: .* has no ⌀/,
  ],
  ['another font', styled('.tools{font-family:serif}'), 'glyphs', /no font of the cards, serif/],
  ['a drawing at another scale', drawnAt(0.99), 'bar', /off by 1\.00 mm/],
  ['a bar that is not there', styled('.bar{display:none}'), 'bar', /off by/],
];

let desk: Desk;
const seen = new Map<string, { shown: Shown; pages: PaperPage[]; pdf: Uint8Array; sheet: PrintSheet }>();

beforeAll(async () => {
  desk = await openDesk();
  const sheets = [
    { ...sound, name: 'sound' },
    ...PLANTED.map(([what, change]) => ({ ...sound, name: what, body: change(sound.body) })),
  ];
  const printed = await desk.print(output.shell, sheets);
  for (const sheet of sheets) {
    const pdf = printed.get(sheet.name)!;
    seen.set(sheet.name, { pdf, sheet, shown: await look(desk, output.shell, sheet), pages: await readPaper(pdf) });
  }
}, 300_000);

afterAll(() => desk.close());

const COUNTER = 'page {page} of {pages}';
function faults(what: string) {
  const { shown, pages, sheet } = seen.get(what)!;
  return faultsOf(shown, pages, sheet, COUNTER);
}

describe('what is planted in a card', () => {
  test('nothing: nothing is told', () => {
    expect(Object.values(faults('sound')).flat()).toEqual([]);
  });

  test.each(PLANTED)('%s', (what, _, measure, told) => {
    expect(faults(what)[measure]).toContainEqual(expect.stringMatching(told));
  });
});

describe('page 1', () => {
  const on = (what: string) => seen.get(what)!;

  test('holds all one works by', () => {
    const { shown, pages } = on('sound');
    expect(notOnFirstPage(shown.content, pages)).toEqual([]);
    expect(notOnEveryPage(['Tarn', 'Sizing, wide belt', posting.code], pages)).toEqual([]);
    expect(notAsMany(shown.content, { step: 7, 'key-value': 5, 'check-what': 3, 'check-limits': 2 })).toEqual([]);
  });

  test('and what it does not hold is told', async () => {
    const body = styled('.checks{break-before:page} .when-out{display:none}')(sound.body);
    const printed = await desk.print(output.shell, [{ ...sound, body }]);
    const pages = await readPaper(printed.get(sound.name)!);
    const told = notOnFirstPage(on('sound').shown.content, pages).join('\n');
    for (const part of ['check-what: Glue face clean', 'line: Order', 'When it is out']) expect(told).toContain(part);
    expect(told).not.toContain('step: ');
    expect(notOnEveryPage(['Skerry'], pages)).toEqual(['not on every page: Skerry']);
    expect(notAsMany(on('sound').shown.content, { step: 8 })).toEqual(['8 of step in the data, 7 on the card']);
  });
});

describe('the QR code', () => {
  const read = async (body: string) => {
    const printed = await desk.print(output.shell, [{ ...sound, body }]);
    return unreadable(posting.code, printed.get(sound.name)!);
  };

  test('is read from the print and from a photo', async () => {
    expect(await read(sound.body)).toEqual([]);
  });

  test.each([
    [
      'another code',
      (body: string) => body.replace(/<svg class="qr"[\s\S]*?<\/svg>/, String(qrMarkup('0000-0000'))),
      /says 0000-0000/,
    ],
    ['none', swapped(/<svg class="qr"[\s\S]*?<\/svg>/, ''), /says nothing/],
    ['one too small', styled('.qr{width:7mm;height:7mm;margin:8mm}'), /a photo says nothing/],
    [
      'one printed over',
      swapped(
        '</header>',
        '<b style="position:absolute;right:0;top:8mm;width:16mm;height:16mm;background:#000"></b></header>',
      ),
      /says nothing/,
    ],
  ])('%s: told', async (_, change, told) => {
    expect(await read(change(sound.body))).toContainEqual(expect.stringMatching(told));
  });
});

describe('HTML pages', () => {
  test.each([
    ['a picture without words', '<img src="data:,">', 'image-alt'],
    ['a table head of no column', '<table><tr><th></th><td>9</td></tr></table>', 'empty-table-header'],
    ['a field without a name', '<input>', 'label'],
    ['faint text', '<p style="color:#999">Hand on the stop</p>', 'color-contrast'],
    ['a list of no items', '<ul><p>Step</p></ul>', 'list'],
  ])('%s: told', async (_, markup, rule) => {
    const page = await desk.browser.newPage();
    await page.setContent(
      `<!doctype html><html lang="en"><title>Card</title><main><h1>Card</h1>${markup}</main></html>`,
    );
    expect(await violations(page)).toContainEqual(expect.stringMatching(`^(?:${rule}):`));
    await page.close();
  });

  test('a link of the tree that leads nowhere: told', async () => {
    const page =
      '<!doctype html><html lang="en"><title>Card</title><link rel="stylesheet" href="gone.css"><main><h1>Card</h1></main></html>';
    const tree = await openTree(desk.browser, new Map([['a/index.html', page]]));
    expect(await tree.faultsOf('a/index.html')).toEqual(['it asks for a/gone.css, which is not in the tree']);
    await tree.close();
  });
});

test('names three times as long, codes and sentences as they are', () => {
  expect(['Neck pickup', 'Tarn', 'P3', '4710', 'Go on; size it', 'Mask on.'].map(longer)).toEqual([
    'Neck pickup Neck pickup Neck pickup',
    'Tarn Tarn Tarn',
    'P3',
    '4710',
    'Go on; size it',
    'Mask on.',
  ]);
  const data = { a: [name('Tarn')], b: { kind: 'literal', text: 'Tarn' } };
  expect(withLongNames(data)).toEqual({ a: [name('Tarn Tarn Tarn')], b: { kind: 'literal', text: 'Tarn' } });
});
