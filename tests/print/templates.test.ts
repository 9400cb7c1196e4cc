import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { printAll } from '../../src/print/print.ts';
import { templateSet } from '../../src/print/templates.ts';
import { assets, input, ownTemplates, ownWords } from './fixture.ts';

function fill(source: string, view: object, blocks: Record<string, string> = {}) {
  const findings: Finding[] = [];
  const texts = new Map([['page.hbs', source], ...Object.entries(blocks)]);
  const render = templateSet(texts, ownWords().words, (finding) => findings.push(finding));
  const html = render('page', view);
  return { html, findings, asked: findings.map(({ id, place }) => [id, source.slice(place.start, place.end)]) };
}

const view = { title: 'Tarn', steps: [{ line: 'saw' }, { line: 'plane' }], none: null, deep: { er: { text: 'x' } } };

describe('a template that asks for what is not there', () => {
  it.each([
    ['{{titel}}', 'titel'],
    ['a\n  {{deep.ex.text}}', 'deep.ex.text'],
    ['{{#if titel}}x{{/if}}', 'titel'],
    ['{{#unless titel}}x{{/unless}}', 'titel'],
    ['{{#each stepz}}x{{/each}}', 'stepz'],
    ['{{#with deep.es}}x{{/with}}', 'deep.es'],
    ['{{#each steps}}{{lin}}{{/each}}', 'lin'],
    ['{{#each steps}}{{../titel}}{{/each}}', '../titel'],
    ['{{#each steps as |step|}}{{step.lin}}{{/each}}', 'step.lin'],
    ['{{#each steps}}{{@indx}}{{/each}}', '@indx'],
    ["{{say 'labels.revision' revision=titel}}", 'titel'],
    ['{{say (lookup deep titel)}}', 'titel'],
    ['{{none.text}}', 'none.text'],
    ['{{constructor}}', 'constructor'],
    ['{{deep.__proto__}}', 'deep.__proto__'],
    ['{{#if none}}{{else}}{{titel}}{{/if}}', 'titel'],
  ])('%s', (source, expression) => {
    expect(fill(source, view).asked[0]).toEqual(['template-asks-in-vain', expression]);
  });

  it('tells a lookup of a key that is not there', () => {
    expect(fill("{{lookup deep 'es'}}", view).findings[0]).toMatchObject({
      id: 'template-asks-in-vain',
      place: { start: 0 },
    });
  });

  it('is offered the nearest name, in the place it was asked for', () => {
    const { findings, html } = fill('x\n{{#each steps}}\n  {{lime}}\n{{/each}}', view);
    expect(findings[0]?.mend).toContain('"line"');
    expect(findings[0]?.place.file).toBe('templates/page.hbs');
    expect(html).toContain('[lime]');
  });

  it('in a block, is told in the block', () => {
    const { findings } = fill('{{#each steps}}{{> step}}{{/each}}', view, {
      'blocks/step.hbs': '<li>{{line}}\n{{ore}}',
    });
    expect(findings[0]?.place).toEqual({ file: 'templates/blocks/step.hbs', start: 15, end: 18 });
  });

  it('may ask for what is there but empty', () => {
    const { html, findings } = fill(
      '{{#if none}}{{none.text}}{{/if}}{{#each steps}}{{@index}}{{line}}{{/each}}{{none}}',
      view,
    );
    expect(findings).toEqual([]);
    expect(html).toBe('0saw1plane');
  });
});

describe('a template that may not be run', () => {
  it.each([
    ['{{#each steps}}', 'cannot be read'],
    ['{{title', 'cannot be read'],
    ['{{{title}}}', 'without escaping'],
    ['{{&title}}', 'without escaping'],
    ['{{> nothing}}', 'There is no block "nothing"'],
    ['{{> (lookup deep "er")}}', 'plain name'],
    ['{{upper title}}', 'no helper "upper"'],
    ['{{#title}}x{{/title}}', 'no helper "title"'],
    ['{{log title}}', 'no helper "log"'],
    ['{{#*inline "x"}}y{{/inline}}', 'not used here'],
    ['{{> page}}', 'cannot be filled'],
  ])('%s', (source, message) => {
    const { findings, html } = fill(source, view);
    expect(findings[0]?.id).toBe('template-broken');
    expect(findings[0]?.what).toContain(message);
    expect(html).toBe('');
  });

  it('has its mistake shown on the line', () => {
    const source = 'one\ntwo {{#if}\nthree';
    expect(fill(source, view).asked[0]).toEqual(['template-broken', 'two {{#if}']);
  });
});

describe('the templates that come with the program', () => {
  it('ask for nothing in vain', () => {
    expect(printAll(input(), assets()).findings).toEqual([]);
  });

  it.each([...ownTemplates().keys()])('%s, cut in the middle, is a finding and never a throw', (path) => {
    const text = ownTemplates().get(path) ?? '';
    const cut = text.slice(0, text.lastIndexOf('}}') - 1);
    const { findings } = printAll(input(), assets({ templates: new Map([...ownTemplates(), [path, cut]]) }));
    expect(
      findings.some((finding) => finding.id === 'template-broken' && finding.place.file === `templates/${path}`),
    ).toBe(true);
  });
});

describe('a block of one station', () => {
  const own = (path: string, text: string) =>
    printAll(input(), assets({ templates: new Map([...ownTemplates(), [path, text]]) }));
  const page = ({ files }: ReturnType<typeof own>) => String(files.get('models/tarn/sizing.html'));

  it('takes the place of the general one there alone', () => {
    const changed = own('stations/sizing/sign-off.hbs', '<p class="foreman">{{code}}</p>');
    expect(changed.findings).toEqual([]);
    expect(page(changed)).toContain('class="foreman"');
    expect(page(changed)).not.toContain('class="sign-off"');
    const elsewhere = own('stations/planing/sign-off.hbs', '<p class="foreman">{{code}}</p>');
    expect(page(elsewhere)).not.toContain('class="foreman"');
  });

  it.each([
    ['stations/sizing/steps.hbs', '\n{{#each stepz}}{{/each}}', 'template-asks-in-vain', 'stepz'],
    ['stations/sizing/stepz.hbs', 'x', 'template-broken', 'There is no template or block "stepz"'],
    ['stations/sizzing/steps.hbs', 'x', 'template-broken', 'There is no station "sizzing"'],
    ['stations/sizing/steps.hbs', 'one\n{{#if}', 'template-broken', 'cannot be read'],
  ])('%s that holds %j is a finding at its line', (path, text, id, what) => {
    const finding = own(path, text).findings.find((one) => one.id === id)!;
    expect(finding.place.file).toBe(`templates/${path}`);
    expect(finding.what).toContain(what);
  });
});
