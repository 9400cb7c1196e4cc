import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { plainText, resolve } from '../../src/print/say.ts';
import { loadWords } from '../../src/print/words.ts';
import { figure, limits, line, name, ownWords } from './fixture.ts';

const load = (text: string) => loadWords('w.yaml', new TextEncoder().encode(text));
const at = (text: string, finding: Finding | undefined) =>
  text.slice(finding?.place.start ?? 0, finding?.place.end ?? 0);

function said(text: string, arg: Parameters<typeof resolve>[0]) {
  const findings: Finding[] = [];
  const segments = resolve(arg, load(text).words, (finding) => findings.push(finding));
  return { text: plainText(segments), segments, findings };
}

describe('a words file', () => {
  it('has no findings in the one that comes with the program', () => {
    expect(ownWords().findings).toEqual([]);
  });

  it('gives sentences by their keys joined with dots', () => {
    const { words, findings } = load('language: es\nsizing:\n  deep:\n    feed: "Feed at {belt}."\n');
    expect(findings).toEqual([]);
    expect(words.language).toBe('es');
    expect(words.sentences.get('sizing.deep.feed')).toMatchObject({ text: 'Feed at {belt}.', places: ['belt'] });
  });

  it('may hold no number but a listed literal', () => {
    const text = 'literals: [ISO 7010]\na:\n  b: after ISO 7010\n  c: leave 3.5 mm\n';
    const { findings } = load(text);
    expect(findings.map((finding) => [finding.id, at(text, finding)])).toEqual([['numeral-in-words', '3.5']]);
  });

  it('does not take the name of a {place2} for a number', () => {
    expect(load('a: { b: "x {place2}" }').findings).toEqual([]);
  });

  it.each([
    ['a: [1, 2]', 'a'],
    ['a: { b: }', 'b'],
    ['a: { b: "stray } brace" }', '"stray } brace"'],
    ['a: { b: x\n', undefined],
    ['- a', undefined],
    ['a: *nowhere', undefined],
  ])('is found broken: %s', (text, where) => {
    const { findings } = load(text);
    expect(findings[0]?.id).toBe('words-broken');
    if (where !== undefined) expect(at(text, findings[0])).toBe(where);
  });
});

describe('a line in words', () => {
  const words = 'labels: { to: to }\na:\n  feed: Feed at {belt}, then {more}.\n  plain: here\n';

  it('keeps a number and its unit together, the second unit in brackets', () => {
    const { segments, text, findings } = said(
      'a: { b: "Feed at {v}." }',
      line('a.b', { v: figure('6.0', 'm/min', { text: '19.7', unit: 'ft/min' }) }),
    );
    expect(findings).toEqual([]);
    expect(text).toBe('Feed at 6.0\u00a0m/min (19.7\u00a0ft/min).');
    expect(segments.filter((segment) => segment.figure).map((segment) => segment.text)).toEqual([
      '6.0\u00a0m/min',
      '(19.7\u00a0ft/min)',
    ]);
  });

  it('writes limits as a range, and in words where one lies below zero', () => {
    expect(said(words, limits('50.20', '50.40', 'mm', { low: '1.977', high: '1.984', unit: 'in' })).text).toBe(
      '50.20–50.40\u00a0mm (1.977–1.984\u00a0in)',
    );
    expect(said(words, limits('-0.05', '0.10', 'mm')).text).toBe('-0.05\u00a0to\u00a00.10\u00a0mm');
    expect(said(words, limits('4', '4', '')).text).toBe('4');
    expect(said(words, figure('45', '°')).text).toBe('45°');
  });

  it('joins a series and resolves a line within a line', () => {
    const series = { kind: 'series', items: [name('P80'), line('a.plain'), figure('1', 'mm')] } as const;
    expect(said(words, line('a.feed', { belt: series, more: line('a.plain') })).text).toBe(
      'Feed at P80, here, 1\u00a0mm, then here.',
    );
  });

  it('tells a sentence that is missing, with the nearest name, and prints its id', () => {
    const { text, findings } = said(words, line('a.fed'));
    expect(text).toBe('[a.fed]');
    expect(findings.map((finding) => finding.id)).toEqual(['word-missing']);
    expect(at(words, findings[0])).toBe('a');
    expect(findings[0]?.mend).toContain('"a.feed"');
  });

  it('tells an argument that is missing and one that has no place', () => {
    const { text, findings } = said(words, line('a.feed', { belt: name('x'), mre: name('y') }));
    expect(text).toBe('Feed at x, then [more].');
    expect(findings.map((finding) => finding.id)).toEqual(['word-argument-unused', 'word-argument-missing']);
    expect(findings[1]?.mend).toContain('"mre"');
  });

  it('is not misled by names that every object has', () => {
    const { findings } = said('a: { b: "{constructor}" }', line('a.b'));
    expect(findings.map((finding) => finding.id)).toEqual(['word-argument-missing']);
  });
});
