/** Pictures on cards: which station, which step, in which order; what they do to codes; how they print. */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { Card } from '../../src/cards/card.ts';
import { contentCode } from '../../src/cards/code.ts';
import { compileAll, printCompiled } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { morePictures, png } from '../cases/pictures.ts';
import { edited, sample } from '../cases/workspace.ts';
import { richCard } from '../print/fixture.ts';

const TARN = 'models/tarn.yaml';
const ON = '2026-11-25';

/** The sample with these lines among its pictures; `plant`: among those of the plant. */
function workspace(lines: string, plant = ''): Record<string, string | Uint8Array> {
  const files = edited([{ file: TARN, find: 'pictures:\n', replace: `pictures:\n${lines}` }]);
  const ofPlant = plant === '' ? {} : { 'models/plant/pictures.yaml': `units: mm\npictures:\n${plant}` };
  return { ...morePictures(), ...files, ...ofPlant };
}

function cardOf(files: Record<string, string | Uint8Array>, station: string, hand = 'right') {
  const [model] = compileAll(memoryHost(files), ON).models;
  expect(model!.findings.map(({ what }) => what)).toEqual([]);
  return model!.cards.find(({ card: { key } }) => key.station === station && key.hand === hand)!;
}

const shown = ({ pictures = [] }: Card) =>
  pictures.map(({ id, number, steps, caption }) => [
    id,
    number.text,
    steps.map(({ text }) => text).join(),
    caption.text,
  ]);

const sha = (bytes: Uint8Array | string) => createHash('sha256').update(bytes).digest('hex');

describe('a card', () => {
  test('numbers its pictures in the order of their steps, those of no step last, and steps refer to them', () => {
    const files = workspace(
      [
        '  of-none: { station: sizing, file: pictures/photo.jpg, caption: Of no step }',
        '  late: { station: sizing, at: measure, file: pictures/good.png, caption: At the end }',
        '  late-too: { station: sizing, at: measure, file: pictures/kerf.svg, caption: Beside it }',
        '',
      ].join('\n'),
      '  early: { station: sizing, at: cut, file: pictures/good.png, caption: At every cut }\n',
    );
    const { card } = cardOf(files, 'sizing');
    expect(shown(card)).toEqual([
      ['early', '1', '2,3', 'At every cut'],
      ['late', '2', '5', 'At the end'],
      ['late-too', '3', '5', 'Beside it'],
      ['of-none', '4', '', 'Of no step'],
    ]);
    expect(card.steps.map(({ say }) => say === 'picture.at-step')).toEqual(
      card.steps.map((_, i) => [1, 2, 4].includes(i)),
    );
    expect(card.steps[4]).toMatchObject({
      with: { number: { text: '3' }, step: { say: 'picture.at-step', with: { step: { say: 'sizing.step.measure' } } } },
    });
    expect(card.pictures!.map(({ type, sha256 }) => [type, sha256])).toEqual([
      ['image/png', sha(morePictures()['models/pictures/good.png']!)],
      ['image/png', sha(morePictures()['models/pictures/good.png']!)],
      ['image/svg+xml', sha(sample()['models/pictures/kerf.svg']!)],
      ['image/jpeg', sha(morePictures()['models/pictures/photo.jpg']!)],
    ]);
  });

  test('shows a picture of the model in place of one of the plant, and another on the left hand', () => {
    const own = '  cut: { station: sizing, file: pictures/kerf.svg, caption: Our own }\n';
    const files = workspace(own, own.replace('Our own', 'The plant’s').replace('sizing', 'press'));
    files[TARN] = String(files[TARN]).replace(
      'handed:\n  left:\n',
      'handed:\n  left:\n    pictures: { cut: { file: pictures/good.png } }\n',
    );
    const right = cardOf(files, 'sizing').card;
    expect(shown(right)).toEqual([['cut', '1', '', 'Our own']]);
    expect(cardOf(files, 'press').card).not.toHaveProperty('pictures');
    const left = cardOf(files, 'sizing', 'left').card;
    expect([right.pictures![0]!.type, left.pictures![0]!.type]).toEqual(['image/svg+xml', 'image/png']);
  });
});

describe('the code of a card', () => {
  const lines = '  cut: { station: sizing, file: pictures/good.png, caption: Cut }\n';
  const codesWith = (bytes: Uint8Array, change: (text: string) => string = (text) => text) => {
    const files = workspace(lines);
    const at = { ...files, [TARN]: change(String(files[TARN])), 'models/pictures/good.png': bytes };
    const [model] = compileAll(memoryHost(at), ON).models;
    return new Map(model!.cards.map(({ card: { key }, code }) => [`${key.station} ${key.hand}`, code]));
  };
  const moved = (a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>) =>
    [...a].flatMap(([key, code]) => (b.get(key) === code ? [] : [key]));

  test('follows the bytes of its pictures and the captions, on no other card; not what the file is called', () => {
    const before = codesWith(png(720, 560));
    expect(moved(before, codesWith(png(720, 560)))).toEqual([]);
    expect(moved(before, codesWith(png(720, 560, 254)))).toEqual(['sizing right', 'sizing left']);
    const captioned = codesWith(png(720, 560), (text) => text.replace('caption: Cut }', 'caption: Cut here }'));
    expect(moved(before, captioned)).toEqual(['sizing right', 'sizing left']);
    expect(moved(before, renamedCodes())).toEqual([]);
  });

  /** The same bytes under another name. */
  function renamedCodes() {
    const files = workspace(lines.replace('good.png', 'other.png'));
    const at = { ...files, 'models/pictures/other.png': png(720, 560) };
    const [model] = compileAll(memoryHost(at), ON).models;
    return new Map(model!.cards.map(({ card: { key }, code }) => [`${key.station} ${key.hand}`, code]));
  }

  test('without pictures is what it was before there were any', () => {
    expect(contentCode(richCard())).toBe('3AJS-BS5S');
  });
});

describe('in print', () => {
  test('a picture is carried whole by every page and sheet of its card, as an image and nothing else', () => {
    const caption = `'"><script>alert(1)</script>&`;
    const files = workspace(
      `  hostile: { station: sizing, file: pictures/good.png, caption: '${caption.replace("'", "''")}' }\n` +
        '  turned: { station: sizing, at: cut, file: pictures/photo.jpg, caption: Wide }\n',
    );
    const host = memoryHost(files);
    const printed = printCompiled(host, compileAll(host, ON), ON);
    expect(printed.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const pages = [
      String(printed.files.get('models/tarn/sizing.html')),
      String(printed.files.get('stations/sizing/index.html')),
      printed.sheets.find(({ name }) => name === 'models/tarn/sizing-left.pdf')!.body,
    ];
    for (const page of pages) {
      const images = page.match(/<img\b[^>]*>/g)!;
      expect(images.length % 2).toBe(0);
      const address = `data:image/png;base64,${Buffer.from(morePictures()['models/pictures/good.png']!).toString('base64')}`;
      expect(images[1]).toBe(
        `<img class="picture" src="${address}" alt="&#39;&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;&amp;" style="width:90mm;height:70mm">`,
      );
      // 1060 × 820 pixels are no wider than 90 mm and no higher than 70 mm.
      expect(images[0]).toContain('alt="Wide" style="width:90mm;height:69.62mm"');
      expect(page).not.toMatch(/<script|<image|<object|<embed|<iframe/);
      expect(page).toMatch(/\(picture 1\)<\/li>/);
      expect(page).toContain('Picture 1 (step 2, 3)');
      expect(page).toContain('Picture 2:');
    }
    expect(printed.files.get('models/tarn/press.html')).not.toContain('<img');
    expect(JSON.parse(String(printed.files.get('cards.json')))).toMatchObject({
      models: [
        { cards: expect.arrayContaining([expect.objectContaining({ code: expect.any(String) as string })]) as [] },
      ],
    });
  });
});
