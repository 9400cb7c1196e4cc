/** Pictures by their bytes: sound ones, torn ones, ones that are no drawing alone, and whatever else bytes can be. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PictureForm } from '../../src/facts/pictures.ts';
import { crc32 } from '../../src/read/picture/png.ts';
import { readPicture } from '../../src/read/picture/picture.ts';
import { SIGNATURE, chunk, head, joined, jpeg, orientation, png, segment } from '../cases/pictures.ts';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const SVG = 'xmlns="http://www.w3.org/2000/svg"';
const drawing = (inside: string, root = 'viewBox="0 0 40 30"'): PictureForm =>
  readPicture(utf8(`<svg ${SVG} ${root}>${inside}</svg>`));

/** In one line: what it is, and what is said of it. */
const told = (form: PictureForm): string =>
  form.is === 'picture'
    ? `${form.type} ${form.width} × ${form.height}`
    : form.is === 'broken'
      ? `broken: ${form.what}`
      : form.is === 'acting'
        ? `acting: ${form.acts.join('; ')}`
        : form.is;

const IDAT = chunk('IDAT', [0x78, 0x9c, 0x63, 0x60, 0, 0, 0, 2, 0, 1]);
const END = chunk('IEND');

describe('a PNG', () => {
  test('is read by its head; its check sum is that of the standard', () => {
    expect(crc32(utf8('IEND'))).toBe(0xae426082);
    expect(crc32(utf8('123456789'))).toBe(0xcbf43926);
    expect(told(readPicture(png(720, 560)))).toBe('image/png 720 × 560');
    expect(told(readPicture(joined(SIGNATURE, head(3, 2, [8, 3, 0, 0, 1]), chunk('PLTE', [0, 0, 0]), IDAT, END)))).toBe(
      'image/png 3 × 2',
    );
  });

  test.each<[string, readonly Uint8Array[], string]>([
    ['no head', [IDAT, END], 'it does not begin with its sides'],
    ['no data', [head(3, 2), END], 'it holds no picture'],
    ['no end', [head(3, 2), IDAT], 'it ends before its last byte'],
    ['no width', [head(0, 2), IDAT, END], 'it has no size'],
    ['a colour nobody knows', [head(3, 2, [8, 5, 0, 0, 0]), IDAT, END], 'its head says what no PNG has'],
    ['bits nobody knows', [head(3, 2, [3, 0, 0, 0, 0]), IDAT, END], 'its head says what no PNG has'],
    ['no palette', [head(3, 2, [8, 3, 0, 0, 0]), IDAT, END], 'its colours are missing'],
    [
      'a length beyond the file',
      [head(3, 2), Uint8Array.of(0xff, 0xff, 0xff, 0xff, 73, 68, 65, 84, 0, 0, 0, 0)],
      'it ends before its last byte',
    ],
  ])('with %s is broken', (_, chunks, what) => {
    expect(told(readPicture(joined(SIGNATURE, ...chunks)))).toBe(`broken: ${what}`);
  });

  test('sent as text is broken', () => {
    const mangled = Uint8Array.from(png(8, 8));
    mangled[4] = 0x0a;
    expect(told(readPicture(mangled))).toBe('broken: its first bytes were changed on the way');
  });

  test('with any bit turned is a picture no more', () => {
    const sound = png(24, 9);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: sound.length - 1 }), fc.integer({ min: 0, max: 7 }), (at, bit) => {
        const turned = Uint8Array.from(sound);
        turned[at]! ^= 1 << bit;
        expect(readPicture(turned).is).not.toBe('picture');
      }),
      { numRuns: 400 },
    );
  });
});

describe('a JPEG', () => {
  test('is read by its frame, baseline or progressive', () => {
    expect(told(readPicture(jpeg(1060, 820)))).toBe('image/jpeg 1060 × 820');
    expect(told(readPicture(jpeg(1060, 820, { marker: 0xc2 })))).toBe('image/jpeg 1060 × 820');
  });

  test.each([1, 2, 3, 4, 5, 6, 7, 8])('held as %i is shown the way it was held', (way) => {
    for (const little of [false, true]) {
      const sides = way >= 5 ? '820 × 1060' : '1060 × 820';
      expect(told(readPicture(jpeg(1060, 820, { exif: orientation(way, little) })))).toBe(`image/jpeg ${sides}`);
    }
  });

  const begin = [0xff, 0xd8];
  const end = [0xff, 0xd9];
  const scan = segment(0xda, [1, 1, 0, 0, 63, 0]);
  test.each<[string, Uint8Array, string]>([
    ['arithmetic coding', jpeg(9, 9, { marker: 0xc9 }), 'it is packed in a way that browsers do not show'],
    ['twelve bits', jpeg(9, 9, { bits: 12 }), 'it is packed in a way that browsers do not show'],
    ['no height', jpeg(9, 0), 'it has no size'],
    ['no frame', joined(begin, scan, end), 'it does not say its sides'],
    ['nothing in it', joined(begin, end), 'it holds no picture'],
    ['no scan', joined(begin, segment(0xc0, [8, 0, 9, 0, 9, 1, 1, 0x11, 0]), end), 'it holds no picture'],
    ['a part too short', joined(begin, [0xff, 0xe0, 0, 1], end), 'its parts do not join'],
    ['a part too long', joined(begin, [0xff, 0xe0, 0xff, 0xff], end), 'it ends before its last byte'],
    ['something between its parts', joined(begin, segment(0xe0, [1]), [7], end), 'its parts do not join'],
  ])('with %s is broken', (_, bytes, what) => {
    expect(told(readPicture(bytes))).toBe(`broken: ${what}`);
  });
});

test('whatever is cut off at its end, a picture is one no more', () => {
  const whole = [png(24, 9), jpeg(24, 9, { exif: orientation(6) }), utf8(`<svg ${SVG} viewBox="0 0 4 3"><g/></svg>`)];
  for (const bytes of whole) {
    expect(readPicture(bytes).is).toBe('picture');
    for (let length = 0; length < bytes.length; length++)
      expect(readPicture(bytes.subarray(0, length)).is, `${length}`).not.toBe('picture');
  }
});

describe('a drawing', () => {
  test.each([
    ['viewBox="0 0 40 30"', '40 × 30'],
    ['viewBox=" -1,-2 , 4e1 .5e1 "', '40 × 5'],
    ['width="100%" height="100%" viewBox="0 0 40 30"', '40 × 30'],
    ['width="48" height="96px"', '48 × 96'],
    ['width="1in" height="2in" viewBox="0 0 7 7"', '96 × 192'],
  ])('with %s has its size', (root, size) => {
    expect(told(drawing('<g/>', root))).toBe(`image/svg+xml ${size}`);
  });

  test.each([
    '',
    'width="48"',
    'viewBox="0 0 40"',
    'viewBox="0 0 0 30"',
    'width="-4" height="3"',
    'width="4em" height="3em"',
  ])('with %j has none', (root) => {
    expect(told(drawing('<g/>', root))).toMatch(/^broken: it has neither a viewBox nor width and height/);
  });

  test.each([
    ['a plain path', '<path d="M0 0L9 9" style="fill:none;stroke:#000"/>'],
    ['parts of its own', '<defs><g id="a"/><linearGradient id="b"/></defs><use href="#a"/><rect fill="url(#b)"/>'],
    ['an older link to its own part', '<g id="a"/><use xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="#a"/>'],
    ['a quoted address of its own', `<rect filter="url( '#f' )"/>`],
    ['a picture carried inside', '<image href="data:image/png;base64,AAAA"/>'],
    ['a style of its own', '<style>/* lines */ .a { stroke: #000 }</style><style><![CDATA[ .b > .c {} ]]></style>'],
    ['references that XML knows', '<title>&lt;saw&gt; &amp; &#8211; &#x2013;</title>'],
    [
      'what drawing programs add',
      '<g xmlns:ink="http://ink.test/ns" ink:file="C:\\kerf.svg" ink:label="on the line"/>',
    ],
    ['a comment', '<!-- onload= <script> -->'],
  ])('with %s is inert', (_, inside) => {
    expect(told(drawing(inside))).toBe('image/svg+xml 40 × 30');
  });

  const XLINK = 'xmlns:x="http://www.w3.org/1999/xlink"';
  test.each([
    ['a script', '<script>alert(1)</script>', 'a script (<script>)'],
    ['a script by another name', `<a:script xmlns:a="http://www.w3.org/2000/svg"/>`, 'a script'],
    ['a script in capitals', '<SCRIPT/>', 'a script'],
    ['a handler', '<g onload="alert(1)"/>', 'a handler of events (onload)'],
    ['a handler in capitals', '<g ONCLICK="x"/>', 'a handler of events (onclick)'],
    ['another document', '<foreignObject><p/></foreignObject>', 'a document of another kind (<foreignobject>)'],
    ['XHTML', '<g><b xmlns="http://www.w3.org/1999/xhtml"/></g>', 'XHTML'],
    ['movement', '<set attributeName="href" to="x"/>', 'something that moves (<set>)'],
    ['an address', '<image href="https://example.test/a.png"/>', 'href="https://example.test/a.png"'],
    ['an older address', `<image ${XLINK} x:href="a.png"/>`, 'href="a.png"'],
    ['an address without a scheme', '<image href="//example.test/a.png"/>', 'href="//example.test/a.png"'],
    ['a script as an address', '<a href=" &#106;avascript:alert(1)"/>', 'href=" javascript:alert(1)"'],
    ['a part of another file', '<use href="other.svg#a"/>', 'href="other.svg#a"'],
    ['a drawing carried inside', '<image href="data:image/svg+xml,&lt;svg/>"/>', 'data:image/svg+xml'],
    ['a page carried inside', '<image href="data:text/html,x"/>', 'data:text/html'],
    ['a filter of another file', '<rect filter="url(f.svg#f)"/>', 'url(f.svg#f)'],
    ['a quoted one', `<rect fill='url( "http://example.test/" )'/>`, 'url(http://example.test/)'],
    ['an address spelt otherwise', '<rect style="fill:u\\72l(x)"/>', 'an escape in its style'],
    ['a style from elsewhere', '<style>@import "a.css";</style>', 'a style that fetches (@import)'],
    ['a style in pieces', '<style>@im<!-- -->port "a.css";</style>', 'a style that fetches (@import)'],
    ['a font from elsewhere', '<style>@font-face{src:url(a.woff2)}</style>', 'url(a.woff2)'],
    ['a choice of pictures', '<g style="background:image-set(&quot;a.png&quot; 1x)"/>', 'image-set('],
    ['another base', '<g xml:base="http://example.test/"/>', 'xml:base'],
    ['a style sheet', '<?xml-stylesheet href="a.css"?>', 'an instruction (<?xml-stylesheet?>)'],
  ])('with %s is refused', (_, inside, what) => {
    const form = drawing(inside);
    expect(form.is, told(form)).toBe('acting');
    expect(told(form)).toContain(what === 'xml:base' ? 'base="http://example.test/"' : what);
  });

  test.each([
    '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">',
    '<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]>',
    '<!DOCTYPE x [<!ENTITY a "aa"><!ENTITY b "&a;&a;">]>',
  ])('after %s is refused', (doctype) => {
    const text = `<?xml version="1.0"?>\n${doctype}<svg ${SVG} viewBox="0 0 4 3"><text>&b;</text></svg>`;
    expect(told(readPicture(utf8(text)))).toBe('acting: a DOCTYPE, which may declare anything');
  });

  test.each([
    ['an end missing', '<g>', 'is never closed|closes what is not open'],
    ['ends that cross', '<g><a></g></a>', 'closes what is not open'],
    ['a value without quotes', '<g id=a/>', 'is not written as it should be'],
    ['two of one name', '<g id="a" id="b"/>', 'has id twice'],
    ['an & alone', '<text>a & b</text>', 'stands for nothing: & b'],
    ['an entity', '<text>&nbsp;</text>', 'stands for nothing: &nbsp;'],
    ['a < alone', '<text>a < b</text>', 'opens nothing'],
    ['a comment without end', '<!-- ', 'opened and never closed'],
    ['a control character', '<text>\u0001</text>', 'a character that no XML may hold'],
    ['one written as a number', '<text>&#1;</text>', 'stands for nothing'],
    ['a prefix of nothing', '<use xlink:href="#a"/>', 'says what xlink: stands for'],
    ['parts without end', `${'<g>'.repeat(5000)}${'</g>'.repeat(5000)}`, 'deeper in each other'],
    ['itself in itself', '<g id="a"><use href="#a"/></g>', 'again and again'],
    [
      'its parts drawn a thousand million times',
      Array.from({ length: 32 }, (_, i) => `<g id="a${i}"><use href="#a${i - 1}"/><use href="#a${i - 1}"/></g>`).join(
        '',
      ),
      'again and again',
    ],
  ])('with %s is broken', (_, inside, what) => {
    expect(told(drawing(inside))).toMatch(new RegExp(`^broken: .*(?:${what})`));
  });

  test('that browsers would not show is broken', () => {
    const inside = 'viewBox="0 0 4 3"></svg>';
    expect(told(readPicture(utf8(`<svg ${inside}`)))).toMatch(/^broken: its root lacks xmlns/);
    expect(told(readPicture(utf8(`\n<?xml version="1.0"?><svg ${SVG} ${inside}`)))).toMatch(/^broken: its first line/);
    expect(told(readPicture(utf8(`<svg ${SVG} ${inside}<svg/>`)))).toBe('broken: it has two roots');
    expect(told(readPicture(joined(`<svg ${SVG} `, [0xe9], inside)))).toBe('broken: it is not UTF-8 text');
    expect(
      told(
        readPicture(utf8(`\ufeff<?xml version="1.0"?><s:svg xmlns:s="http://www.w3.org/2000/svg" viewBox="0 0 4 3"/>`)),
      ),
    ).toBe('image/svg+xml 4 × 3');
  });

  test.each(['', 'The kerf', '<html><body/></html>', '<!doctype html><p>', '<', 'GIF89a', '%PDF-1.7', '\u0000'])(
    '%j is none',
    (text) => {
      expect(readPicture(utf8(text)).is).toBe('other');
    },
  );
});

describe('whatever the bytes, reading them throws nothing and ends', () => {
  const begun = fc.oneof(
    fc.constant(Uint8Array.of()),
    fc.constant(Uint8Array.from(SIGNATURE)),
    fc.constant(joined(SIGNATURE, head(3, 2))),
    fc.constant(Uint8Array.of(0xff, 0xd8)),
    fc.constant(jpeg(9, 9).subarray(0, 22)),
    fc.constant(joined([0xff, 0xd8], segment(0xe1, orientation(6)).subarray(0, 20))),
    fc.constant(utf8(`<svg ${SVG} `)),
    fc.constant(utf8(`<svg ${SVG} viewBox="0 0 1 1"><`)),
  );

  test('noise after a sound beginning', () => {
    fc.assert(
      fc.property(begun, fc.uint8Array({ maxLength: 200 }), (start, noise) => {
        expect(['picture', 'acting', 'broken', 'other']).toContain(readPicture(joined(start, noise)).is);
      }),
      { numRuns: 3000 },
    );
  });

  test('XML of odd pieces', () => {
    const piece = fc.constantFrom(
      '<',
      '>',
      '/>',
      '</g>',
      '<g',
      '<g>',
      ' id="a"',
      ' href="#a"',
      '<use',
      '&',
      '&#x',
      ';',
      '<!',
      '<!--',
      '-->',
      '<![CDATA[',
      ']]>',
      '<?xml',
      '?>',
      '"',
      "'",
      '=',
      ' ',
      '\n',
      '<style>',
      'url(',
      '#a',
      ')',
      '<!DOCTYPE',
      '\\',
      '__proto__',
      ' constructor="1"',
      '&constructor;',
      '<toString',
      '\ud800',
      '😀',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        readPicture(utf8(`<svg ${SVG} viewBox="0 0 1 1">${pieces.join('')}`));
        readPicture(utf8(pieces.join('')));
      }),
      { numRuns: 3000 },
    );
  });
});
