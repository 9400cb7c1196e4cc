import { describe, expect, it } from 'vitest';
import { printAll } from '../../src/print/print.ts';
import { assets, finding, input, line, name, richCard } from './fixture.ts';
import { elements, readable } from './well-formed.ts';

const text = (content: string | Uint8Array | undefined): string => (typeof content === 'string' ? content : '');
const left = () => richCard({ key: { ...richCard().key, hand: 'left' }, handLine: line('labels.left-hand') });

describe('the published tree', () => {
  it('has a page for each card, model, station and sheet, and a PDF to be made of each', () => {
    const { files, sheets, piles } = printAll(input([richCard(), left()]), assets());
    expect([...files.keys()].filter((path) => !path.startsWith('assets/')).toSorted()).toEqual([
      'cards.json',
      'checks.html',
      'index.html',
      'models/tarn/index.html',
      'models/tarn/sizing-left-plan.svg',
      'models/tarn/sizing-left-stack.svg',
      'models/tarn/sizing-left.html',
      'models/tarn/sizing-plan.svg',
      'models/tarn/sizing-stack.svg',
      'models/tarn/sizing.html',
      'stations/sizing/index.html',
      'stations/sizing/sheet.html',
    ]);
    const cards = ['models/tarn/sizing.pdf', 'models/tarn/sizing-left.pdf'];
    expect(sheets.map((sheet) => sheet.name)).toEqual([...cards, 'stations/sizing/sheet.pdf']);
    expect(piles.map(({ name, of }) => ({ name, of }))).toEqual([
      { name: 'models/tarn/tarn.pdf', of: cards },
      { name: 'stations/sizing/sizing.pdf', of: cards },
    ]);
  });

  it('holds well-formed pages without a script, whose links all lead somewhere in it', () => {
    const { files } = printAll(input([richCard(), left()]), assets());
    for (const [path, content] of files) {
      if (path.endsWith('.svg'))
        elements(
          text(content)
            .replace(/<style>[^<]*<\/style>/, '')
            .trim(),
        );
      if (!path.endsWith('.html')) continue;
      expect(elements(text(content), true), path).not.toContain('script');
      for (const [, href = ''] of text(content).matchAll(/href="([^"]*)"/g)) {
        expect(files.has(new URL(href, `file:///${path}`).pathname.slice(1)), `${path} to ${href}`).toBe(true);
      }
    }
  });

  it('has the same bytes twice, whatever order the fields of a card were made in', () => {
    const turned = Object.fromEntries(Object.entries(richCard()).toReversed()) as unknown as ReturnType<
      typeof richCard
    >;
    const once = printAll(input(), assets());
    expect(printAll(input([turned]), assets())).toEqual(once);
    expect([...once.files.keys()]).toEqual([...printAll(input([turned]), assets()).files.keys()]);
  });

  it('has element ids that are unique on every page', () => {
    const { files } = printAll(input([richCard(), left()]), assets());
    for (const [path, content] of files) {
      const ids = [...text(content).matchAll(/ id="([^"]*)"/g)].map((match) => match[1]);
      if (path.endsWith('.html')) expect(new Set(ids).size, path).toBe(ids.length);
    }
  });

  it('tells cards of different finishes at one station apart', () => {
    const other = richCard({ key: { ...richCard().key, finishes: ['black-opaque'] } });
    const { files } = printAll(input([richCard(), other]), assets());
    expect(files.has('models/tarn/sizing-amber-shaded-blue-clear.html')).toBe(true);
    expect(files.has('models/tarn/sizing-black-opaque.html')).toBe(true);
  });
});

describe('a model in error', () => {
  const fell = { id: 'fell', title: 'Fell', revision: 'A', cards: input().models[0]?.cards ?? [], findings: [finding] };

  it('shows its findings in place of its cards, and the others print', () => {
    const { files, sheets } = printAll(input([richCard()], { models: [...input().models, fell] }), assets());
    const page = readable(text(files.get('models/fell/index.html')));
    for (const part of [
      finding.what,
      finding.why,
      finding.mend,
      finding.where,
      finding.id,
      'white is given here',
      'No valid card',
    ]) {
      expect(page).toContain(part);
    }
    expect([...files.keys()].filter((path) => path.startsWith('models/fell/'))).toEqual(['models/fell/index.html']);
    expect(sheets.some((sheet) => sheet.name.includes('fell'))).toBe(false);
    expect(files.has('models/tarn/sizing.html')).toBe(true);
    expect(text(files.get('cards.json'))).toContain('"valid": false');
    expect(readable(text(files.get('index.html')))).toContain(finding.what);
  });
});

describe('what comes from a spec', () => {
  const HOSTILE = `<script>alert(1)</script>"'><img src=x onerror=alert(2)></style>{{x}}\u0007`;

  it('stays inert wherever it is printed', () => {
    const card = richCard({
      model: name(HOSTILE),
      station: name(HOSTILE),
      handLine: line('fixture.step-take', { pair: name(HOSTILE) }),
      finishNames: [name(HOSTILE)],
      decides: name(HOSTILE),
      notes: [name(HOSTILE)],
      steps: [line('fixture.step-take', { pair: name(HOSTILE) })],
      tools: [{ role: line('fixture.machine'), name: name(HOSTILE) }],
    });
    const models = [
      {
        ...input([card]).models[0],
        id: 'tarn',
        title: HOSTILE,
        revision: HOSTILE,
        findings: [{ ...finding, severity: 'caution', excerpt: HOSTILE } as const],
      },
    ];
    const { files, sheets, findings } = printAll(input([card], { models, plantName: HOSTILE }), assets());
    expect(findings).toEqual([]);
    for (const body of [
      ...sheets.map((sheet) => sheet.body),
      ...[...files].filter(([path]) => path.endsWith('.html')).map(([, page]) => text(page)),
    ]) {
      const met = elements(body, true);
      expect(met).not.toContain('script');
      expect(met).not.toContain('img');
      expect(body.match(/<style>/g)?.length).toBe(body.match(/<\/style>/g)?.length);
    }
  });
});
