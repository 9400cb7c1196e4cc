/** What the floor must read: sizes by the font's own measure, and no character the font lacks. */
import { describe, expect, it } from 'vitest';
import { TEXT_MM } from '../../src/print/drawing/text.ts';
import { printAll } from '../../src/print/print.ts';
import { assets, fontBytes, input, richCard } from './fixture.ts';
import { readFont } from './font.ts';
import { readable } from './well-formed.ts';

const { css, words } = assets();
const fonts = (['next', 'mono'] as const).flatMap((of) =>
  ([400, 700] as const).map((weight) => readFont(fontBytes(of, weight))),
);
const capitals = Math.min(...fonts.map((font) => font.capitals));

/** Sizes in millimetres set for a selector, by `font-size` or `font`. */
function sizes(selector: string): number[] {
  return rules()
    .filter((rule) => rule.selectors.includes(selector))
    .flatMap((rule) => rule.sizes);
}

function rules(): { selectors: string[]; sizes: number[] }[] {
  const bare = css.replace(/\/\*[\s\S]*?\*\//g, '');
  return [...bare.matchAll(/([^{}]+)\{([^{}]*)\}/g)].map(([, selectors = '', body = '']) => ({
    selectors: selectors.split(',').map((selector) => selector.trim()),
    sizes: [...body.matchAll(/font(?:-size)?:\s*(?:\d00 )?([\d.]+)mm/g)].map((match) => Number(match[1])),
  }));
}

describe('capitals', () => {
  it('of key numbers, steps and checks are high enough for their distance', () => {
    // 0.006 × 1 m (20 minutes of arc, preferred; NUREG-0700) less rounding, as FACTS gives it: 5.8 mm.
    for (const size of sizes('.key-value')) expect(size * capitals).toBeGreaterThanOrEqual(5.8);
    for (const selector of ['.steps', '.checks']) {
      expect(sizes(selector)).toHaveLength(1);
      for (const size of sizes(selector)) expect(size * capitals).toBeGreaterThanOrEqual(3.3);
    }
    expect(sizes('.key-value')).toHaveLength(1);
  });

  it('of what is read on a form are those of steps and checks', () => {
    const read = ['.traveller', '.first-piece', '.first-piece .when-out', '.written-in', '.said', '.mark', '.held'];
    for (const selector of read) {
      expect(sizes(selector), selector).toHaveLength(1);
      for (const size of sizes(selector)) expect(size * capitals, selector).toBeGreaterThanOrEqual(3.3);
    }
  });

  it('are nowhere under 2 mm', () => {
    const all = rules().flatMap((rule) => rule.sizes);
    expect(all.length).toBeGreaterThan(15);
    expect(Math.min(...all, TEXT_MM) * capitals).toBeGreaterThanOrEqual(2);
    expect(css).not.toMatch(/font-size:\s*[\d.]+(?:px|pt|em|rem|%)|smaller/);
  });
});

describe('the fonts', () => {
  it('have every character that is printed', () => {
    const { files } = printAll(input([richCard()]), assets());
    const printed = [...files]
      .filter(([path]) => /\.(?:html|svg)$/.test(path))
      .map(([, page]) => readable(String(page)));
    const said = [...words.sentences.values()].map((sentence) => sentence.text);
    const used = new Set([...printed, ...said].join('').replace(/\s/g, ' '));
    expect(used.size).toBeGreaterThan(40);
    for (const font of fonts) {
      expect([...used].filter((character) => !font.characters.has(character.codePointAt(0) ?? 0))).toEqual([]);
    }
  });

  it('are known to lack what a card must not use', () => {
    for (const character of ['≤', '→', '✓', '⌀']) {
      expect(
        fonts.some((font) => font.characters.has(character.codePointAt(0) ?? 0)),
        character,
      ).toBe(false);
    }
  });
});
