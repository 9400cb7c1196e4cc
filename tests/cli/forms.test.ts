/** platen traveller, platen first-piece: what is written, what is refused, and which cards they are made from. */
import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { EXIT } from '../../src/cli/io.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { MemoryHost } from '../../src/host/memory.ts';
import { sample } from '../cases/workspace.ts';

async function platen(line: string, host: MemoryHost = memoryHost(sample())) {
  const said: string[] = [];
  const say = (text: string) => void said.push(text);
  const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!);
  const code = await run(words, { out: say, err: say, host: () => host, watched: false });
  const page = (folder: string, path: string): string => {
    const bytes = host.published.get(folder)?.get(path);
    if (bytes === undefined) throw new Error(`${folder}/${path} is not there`);
    return new TextDecoder().decode(bytes);
  };
  return { code, said: said.join(''), page, host };
}

const count = (text: string, what: RegExp) => text.match(what)?.length ?? 0;

test('a traveller has a folder of its own; of a model never released it is a draft', async () => {
  const { code, said, page } = await platen(
    'traveller tarn --order 2114/b --finish blue-clear --hand left --pair P-118 --no-pdf --on 2026-11-25',
  );
  expect(code, said).toBe(EXIT.good);
  const html = page('out/travellers/tarn-left-2114_2fb', 'tarn-left-2114_2fb.html');
  for (const text of ['2114/b', 'P-118', 'Left-handed', 'DRAFT – not for the floor']) expect(html).toContain(text);
});

test.each(['', ' --order ""', ' --order " "'])('without an order number the boxes are empty:%s', async (order) => {
  const { code, said, page } = await platen(`traveller tarn${order} --no-pdf`);
  expect(code, said).toBe(EXIT.good);
  const html = page('out/travellers/tarn-blank', 'tarn-blank.html');
  expect(html).toMatch(/<span class="label">Order<\/span><b><\/b>/);
  expect(html).toMatch(/<span class="label">Finish<\/span><b><\/b>/);
});

test.each([
  ['traveller tarn --order 1 --finish mauve', 'tarn: It does not come in the finish "mauve". There is: amber-shaded'],
  ['traveller tarn --order 1 --hand both', 'Allowed choices are right, left'],
  ['traveller tarn --order 1 --quantity 0', 'one or more'],
  ['traveller turn --order 1', 'There is no model "turn". Did you mean "tarn"?'],
  ['first-piece tarn --station sanding', 'tarn: No first piece is measured at "sanding". There is:'],
])('%s is refused in a line', async (line, why) => {
  const { code, said, host } = await platen(`${line} --no-pdf`);
  expect(code).toBe(EXIT.usage);
  expect(said).toContain(why);
  expect(host.published.size).toBe(0);
});

test('a model that is not made left-handed has no such forms', async () => {
  const files = sample();
  files['models/tarn.yaml'] = files['models/tarn.yaml']!.replace(/^handed:\n(?: .*\n)+/m, '');
  for (const line of ['traveller tarn --order 1 --hand left', 'first-piece tarn --hand left']) {
    const { code, said } = await platen(`${line} --no-pdf`, memoryHost(files));
    expect(code).toBe(EXIT.usage);
    expect(said).toBe('tarn: It is not made left-handed. There is: right.\n');
  }
});

test('a report for each machine and hand, or for the station asked for', async () => {
  const all = await platen('first-piece tarn --no-pdf');
  expect(all.code, all.said).toBe(EXIT.good);
  const right = all.page('out/first-piece', 'tarn/router.html');
  expect(count(right, /<article/g)).toBe(2);
  expect(right).toContain('Program loaded');
  expect(all.page('out/first-piece', 'tarn/router-left.html')).toContain('Tarn top L');
  const one = await platen('first-piece tarn --station sizing --hand right --no-pdf');
  const pages = [...one.host.published.get('out/first-piece')!.keys()].filter((path) => path.endsWith('.html'));
  expect(pages).toHaveLength(1);
});

test('of a released model they are made from the cards in force for that order, with what is said of them that day', async () => {
  const { host } = await platen('release tarn --reason first --name Reed --on 2026-11-25');
  const cards = JSON.parse((await platen('posted --json --on 2026-11-26', host)).said) as {
    hang: { station: string; code: string }[];
  };
  const sized = cards.hang.find(({ station }) => station === 'sizing')!.code;
  // The spec goes on; what is made by is what was released.
  const spec = new TextDecoder().decode(host.read('models/tarn.yaml'));
  host.replace(
    'models/tarn.yaml',
    spec.replace(/revision: \w/, 'revision: D').replace(/notes:.*/, 'notes: { sizing: New. }'),
  );
  const before = await platen('traveller tarn --order 5 --no-pdf --on 2026-11-26', host);
  const old = before.page('out/travellers/tarn-5', 'tarn-5.html');
  expect(old).toContain(sized);
  expect(old).not.toContain('DRAFT');

  const on = '--reason thin --name Reed --on 2026-11-27';
  expect(
    (await platen(`deviate tarn thickness.part.cap.sized --to "16.25..16.50 mm" --until 2026-12-09 ${on}`, host)).code,
  ).toBe(0);
  const { said, code } = await platen(
    `release tarn --from-order 2100 --under-way finish-on-old --old-until 2026-12-20 ${on}`,
    host,
  );
  expect(code, said).toBe(EXIT.good);
  const during = async (order: string) => {
    const made = await platen(`traveller tarn --order ${order} --no-pdf --on 2026-11-28`, host);
    return made.page(`out/travellers/tarn-${order}`, `tarn-${order}.html`);
  };
  expect(await during('2099')).toContain(sized);
  expect(await during('2099')).toContain('RUN-OUT until 2026-12-20');
  expect(await during('2099')).toContain('16.25');
  expect(await during('2100')).not.toContain(sized);
  const late = await platen('traveller tarn --order 2099 --no-pdf --on 2026-12-21', host);
  expect(late.code).toBe(EXIT.errors);
  expect(late.said).toContain('No release of tarn is in force for order 2099 on 2026-12-21');
});

test.each([
  ['traveller tarn --order 1', 'out/travellers/tarn-1', 'tarn-1.html', ['Prensa 7']],
  ['first-piece tarn --station press --hand right', 'out/first-piece', 'tarn/press.html', ['Prensa 7', 'Turno 7']],
  ['charts tarn --station press', 'out/charts', 'tarn/press.html', ['Prensa 7']],
])('%s calls things by their names in the language of the plant', async (line, folder, path, names) => {
  const files = sample();
  const plant = 'models/plant/plant.yaml';
  files[plant] = `${files[plant]!.replace('plant: { ', 'plant: { languages: [es], ')}
names: { es: [{ name: Press, called: Prensa 7 }, { name: Shift lead, called: Turno 7 }] }
`;
  const { code, said, page } = await platen(`${line} --no-pdf`, memoryHost(files));
  expect(code, said).toBe(EXIT.good);
  for (const name of names) expect(page(folder, path).includes(name), name).toBe(true);
  expect(page(folder, path)).toContain('<html lang="es">');
});
