/** The command: which sides can be named, what is said of them, what is refused, and what is written where. */
import { describe, expect, test } from 'vitest';
import { memoryHost } from '../../src/host/memory.ts';
import { sample } from '../cases/workspace.ts';
import { changed, desk, rightHanded, TARN } from './desk.ts';

const files = rightHanded();
const PLANT = 'models/plant/plant.yaml';
/** The crown 0.4 mm lower, and the white after it. */
const lowered = changed(
  changed(files[TARN]!, 'machined: { crown: 49.60 ±0.12', 'machined: { crown: 49.20 ±0.12'),
  'white: { crown: 49.20 ±0.15',
  'white: { crown: 48.80 ±0.15',
);
const loweredFiles = { ...files, [TARN]: lowered };

interface Json {
  readonly models: readonly { readonly is: string; readonly given: readonly { readonly id: string }[] }[];
  readonly stations: readonly {
    readonly id: string;
    readonly cards: readonly {
      readonly changes: readonly {
        readonly moves: readonly { fact: string; by: number; ofTolerance: number; limits: string }[];
      }[];
    }[];
  }[];
  readonly untouched: readonly string[];
}
const json = (out: string) => JSON.parse(out) as Json;
const RELEASE = ['--reason', 'first', '--name', 'Reed'];

describe('the crown lowered by 0.4 mm', () => {
  const two = desk(loweredFiles, { './old': memoryHost(files) });

  test('moves the crown at the top and at sign-off by 0.4 mm, 1.67 of its tolerance, past all of its old limits', async () => {
    const { code, out } = await two.platen('diff', './old', '.', '--json');
    expect(code).toBe(0);
    const { stations, untouched } = json(out);
    // Drawn in the stack of cap and back; the controls' floor follows the arch over it; what is cut from the crown's side.
    expect(stations.map(({ id }) => id)).toEqual([
      'lamination',
      'press',
      'machining-back',
      'machining-top',
      'sign-off',
    ]);
    expect(untouched).toEqual(expect.arrayContaining(['planing', 'sizing', 'rough-sawing', 'trim-sawing', 'picking']));
    for (const id of ['machining-top', 'sign-off']) {
      const moves = stations.find((one) => one.id === id)!.cards[0]!.changes.flatMap((change) => change.moves);
      const crown = moves.find(({ fact }) => fact === 'thickness.body.machined.crown')!;
      // 49.60 - 49.20 = 0.40; of 49.48..49.72, which is 0.24 wide. The new end at 49.32, below 49.48.
      expect(crown.by).toBe(-400_000);
      expect(crown.ofTolerance).toBeCloseTo(0.4 / 0.24, 9);
      expect(crown.limits).toBe('apart');
    }
  });

  test('is told in words: where, by how much, what stays, and what bodies under way have too much', async () => {
    const { out } = await two.platen('diff', './old', '.');
    const text = out.replaceAll('\u00a0', ' ');
    expect(text).toContain('now 49.08–49.32 mm (1.933–1.941 in), was 49.48–49.72 mm (1.949–1.957 in)');
    expect(text).toContain(
      '0.4 mm (.016 in) less, 167 % of its whole tolerance; no reading inside the old limits is inside the new',
    );
    expect(text).toMatch(/Nothing changes at: Conditioning store, .*Sizing, Trim sawing/);
    // 49.48 - 49.32 = 0.16; 49.72 - 49.08 = 0.64.
    expect(text).toMatch(
      /Past Machining, top\n.*all that passed have 0.16 mm \(.0063 in\) to 0.64 mm \(.025 in\) too much wood: it can still be taken off/,
    );
    expect(text).toMatch(/Past Lamination, Press, Machining, back\n +Nothing measured here moved/);
  });

  test('the other way round lacks wood that nobody puts back', async () => {
    const { out } = await two.platen('diff', '.', './old');
    expect(out.replaceAll('\u00a0', ' ')).toMatch(
      /Past Machining, top\n.*lack 0.16 mm .* to 0.64 mm .*it cannot be put back/,
    );
  });
});

describe('sides', () => {
  test('two files: the same model read in their place, and called what the user calls them', async () => {
    const beside = memoryHost({ 'old.yaml': files[TARN]!, 'new.yaml': lowered });
    const { code, out } = await desk(files, { specs: beside }).platen('diff', 'specs/old.yaml', 'specs/new.yaml');
    expect(code).toBe(0);
    expect(out).toMatch(/stages\.body\.machined\.crown: now .*\n.*\n.*specs\/old\.yaml:\d+ -> specs\/new\.yaml:\d+/);
  });

  test('a release against the working copy, by name or as what is in force', async () => {
    const { host, platen } = desk(files);
    expect((await platen('release', 'tarn', ...RELEASE)).code).toBe(0);
    for (const sides of [['tarn@C', 'tarn'], ['tarn'], []])
      expect((await platen('diff', ...sides)).out, sides.join(' ')).toContain('Nothing differs.');
    host.replace(TARN, lowered);
    const [named, inForce, all] = [
      await platen('diff', 'tarn@C', 'tarn', '--json'),
      await platen('diff', 'tarn', '--json'),
      await platen('diff', '--json'),
    ];
    expect(json(named.out).models[0]!.given.map(({ id }) => id)).toEqual([
      'stages.body.machined.crown',
      'stages.body.white.crown',
    ]);
    expect(json(inForce.out).stations).toEqual(json(named.out).stations);
    expect(json(all.out).stations).toEqual(json(named.out).stations);
  });

  test('two states of the plant, whole or a file of it: given once, shown where it goes', async () => {
    const wider = changed(files[PLANT]!, 'jointing: 3', 'jointing: 4');
    const plant = Object.fromEntries(
      Object.entries(files)
        .filter(([path]) => path.startsWith('models/plant/'))
        .map(([path, text]) => [path.slice('models/plant/'.length), text]),
    );
    const { platen } = desk(
      { ...files, [PLANT]: wider },
      { './plant-before': memoryHost(plant), before: memoryHost({ 'plant.yaml': files[PLANT]! }) },
    );
    for (const old of ['./plant-before', 'before/plant.yaml']) {
      const { code, out } = await platen('diff', old, '.');
      expect(code, old).toBe(0);
      expect(out.replaceAll('\u00a0', ' ')).toMatch(
        /Given: Of the plant\n +plant\.lines\.arched\.jointing: now 4 mm, was 3 mm/,
      );
      expect(out).toMatch(/^Jointing\n/m);
      expect(out).toMatch(/Nothing changes at: .*Sizing/);
    }
  });
});

test('two releases: what both keep is enough, hands in their order', async () => {
  const { host, platen } = desk(sample());
  const release = async (...more: readonly string[]) => {
    const { code, err } = await platen('release', 'tarn', ...RELEASE, ...more);
    expect(code, err).toBe(0);
  };
  await release();
  const edits = [
    ['revision: C', 'revision: D'],
    ['machined: { crown: 49.60', 'machined: { crown: 49.50'],
    ['white: { crown: 49.20', 'white: { crown: 49.10'],
  ] as const;
  const text = new TextDecoder().decode(host.read(TARN));
  host.replace(
    TARN,
    edits.reduce((one, [find, replace]) => changed(one, find, replace), text),
  );
  await release('--under-way', 'use-as-is');
  const { code, out } = await platen('diff', 'tarn@C', 'tarn@D');
  expect(code).toBe(0);
  expect(out).toContain('Tarn: revision C becomes D');
  expect(out).toMatch(
    /^Machining, top\n +Tarn, Right-handed, Left-handed: Take down .*\n +Body at the crown: now 49\.38–49\.62/m,
  );
  const back = await platen('diff', 'tarn@D', 'tarn@C', '--json');
  expect(json(back.out).stations.map(({ id }) => id)).toEqual(
    json((await platen('diff', 'tarn@C', 'tarn', '--json')).out).stations.map(({ id }) => id),
  );
});

describe('what cannot be compared is said', () => {
  const { platen } = desk({ ...files, 'broken.yaml': 'model: tarn\ntitle: Tarn\n' });
  test.each([
    [['diff', 'tam', 'tarn'], 2, 'There is no model "tam"'],
    [['diff', 'tarn@B', 'tarn'], 2, 'tarn@B was never released'],
    [['diff', 'tarn'], 2, 'No release of tarn is in force'],
    [['diff'], 2, 'Nothing was released yet'],
    [['diff', 'none.yaml', 'tarn'], 2, 'There is no file none.yaml'],
  ] as const)('%j', async (words, code, said) => {
    const answer = await platen(...words);
    expect(answer.err).toContain(said);
    expect(answer.code).toBe(code);
    expect(answer.out).toBe('');
  });

  test('a file with errors: its findings, called by its name, and exit code 1', async () => {
    const { code, err, out } = await platen('diff', 'broken.yaml', 'tarn');
    expect(code).toBe(1);
    expect(err).toMatch(/^broken\.yaml:1:1 not-given \(error\)/m);
    expect(out).toBe('');
  });
});

test('the notice as a page: whole in one file, old and new over each other, room to sign, nothing of a spec runs', async () => {
  const named = changed(lowered, 'title: Tarn\n', 'title: Tarn <script>x</script>\n');
  const folder = memoryHost({});
  const { platen } = desk({ ...files, [TARN]: named }, { './old': memoryHost(files), notices: folder });
  const { code, err } = await platen('diff', './old', '.', '--html', 'notices/n.html');
  expect(code, err).toBe(0);
  const page = new TextDecoder().decode(folder.read('n.html'));
  expect(page).toContain('Seen at the stations');
  expect(page).toContain('stroke-dasharray="0.6 1.5"');
  expect(page).toMatch(/Tarn &lt;script&gt;x&lt;\/script&gt;/);
  expect(page.match(/<script|<link|src=|url\((?!data:|#)/g) ?? []).toEqual([]);
});

describe('a pilot whose depth is given otherwise', () => {
  const pilots = (depth: string) => ({
    ...files,
    [TARN]: files[TARN]!.replaceAll('depth: 14 ±0.5', `depth: ${depth} ±0.5`),
  });
  test.each([
    // 13.5..14.5 against 11.5..12.5: every one is 1 to 3 mm too deep, and no drill puts wood back.
    ['12', /lack 1 mm .* to 3 mm .* of wood: it cannot be put back/],
    // Against 15.5..16.5: the drill goes on for 1 to 3 mm.
    ['16', /have 1 mm .* to 3 mm .* too much wood: it can still be taken off/],
  ])('%s mm', async (depth, said) => {
    const { code, out, err } = await desk(pilots(depth), { './old': memoryHost(files) }).platen('diff', './old', '.');
    expect(code, err).toBe(0);
    expect(out.replaceAll('\u00a0', ' ')).toMatch(said);
  });
});

test('a cavity moved, a band narrowed: how far and which way, from what to what, at their lines', async () => {
  const moved = changed(files[TARN]!, 'figure: [select, fine]', 'figure: [fine]').replace(
    /(bridge-pickup:(?:.*\n)+?.*at: \{ x: 0, y: )(\d+)/,
    (_, before: string, y: string) => `${before}${Number(y) + 2}`,
  );
  const { code, out, err } = await desk({ ...files, [TARN]: moved }, { './old': memoryHost(files) }).platen(
    'diff',
    './old',
    '.',
  );
  expect(code, err).toBe(0);
  const text = out.replaceAll('\u00a0', ' ');
  expect(text).toMatch(/lies 2 mm \(\.079 in\) from where it was: 2 mm \(\.079 in\) toward the neck/);
  expect(text).toMatch(/grades\.blue-clear\.figure: now fine, was .*select.*\n +on cards; models\/tarn\.yaml:\d+/);
  expect(text).toMatch(/Past .*Machining, top\n +Bridge pickup: what is cut lies where it lay, and cannot be moved/i);
});

test('a station taken out of the route: its card comes down because of that, the route told in its order', async () => {
  const left = changed(files[PLANT]!, '  - conditioning\n  - jointing\n', '  - conditioning\n');
  // Its work is done outside from now on.
  const route = changed(left, 'route:\n', 'elsewhere: [jointing]\nroute:\n');
  const { out } = await desk({ ...files, [PLANT]: route }, { './old': memoryHost(files) }).platen('diff', './old', '.');
  expect(out).toMatch(
    /^ {2}plant\.route: now conditioning, edge-gluing, planing, .*, was conditioning, jointing, .*\n +on cards;/m,
  );
  expect(out).toMatch(
    /^Jointing\n +Tarn: Take down .*\n +No card of its own any more: Jointing\n +Because of plant\.route$/m,
  );
});
