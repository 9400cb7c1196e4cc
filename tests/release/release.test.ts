/** Releases through the commands, in a workspace in memory: what hangs, what a code means, what is refused, what is kept. */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { MemoryHost } from '../../src/host/memory.ts';
import { FOLDER } from '../../src/release/ledger.ts';
import { sample } from '../cases/workspace.ts';

const TARN = 'models/tarn.yaml';
const PLANT = 'models/plant/plant.yaml';
const KERF = 'models/pictures/kerf.svg';
const FROM_C = '--reason first --name Reed --on 2026-11-25';

const rightOnly = (text: string): string => text.replace(/^handed:\n(?: .*\n)+/m, '');

function workshop(edit: (files: Record<string, string>) => void = () => undefined) {
  const files = sample();
  files[TARN] = rightOnly(files[TARN]!);
  edit(files);
  return bench(memoryHost(files));
}

function bench(host: MemoryHost) {
  const platen = async (line: string) => {
    const said = { out: '', err: '' };
    const io = {
      out: (text: string) => void (said.out += text),
      err: (text: string) => void (said.err += text),
      watched: false,
      host: () => host,
    };
    // What stands in quotes is one word.
    const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!);
    return { code: await run(words, io), ...said };
  };
  const change = (path: string, find: string, replace: string) => {
    const text = new TextDecoder().decode(host.read(path));
    expect(text.split(find)).toHaveLength(2);
    host.replace(path, text.replace(find, replace));
  };
  const codes = async (on: string) => {
    const { out } = await platen(`posted --json --on ${on}`);
    return JSON.parse(out) as Posted;
  };
  const tree = async (what: string, on: string) => {
    const { code, err } = await platen(`cards --released ${what} --no-pdf --on ${on} --out out/x`);
    expect(code, err).toBe(0);
    return new Map([...host.published.get('out/x')!].map(([path, content]) => [path, sha(content)]));
  };
  return { host, platen, change, codes, tree };
}

interface Posted {
  readonly hang: readonly {
    readonly station: string;
    readonly code: string;
    readonly release: string;
    readonly since: string;
    readonly range: { readonly from?: object; readonly to?: object };
    readonly until?: string;
    readonly holds: readonly object[];
    readonly deviations: readonly object[];
  }[];
  readonly pull: readonly { readonly station: string; readonly code: string; readonly why: string }[];
}

const sha = (content: Uint8Array): string => createHash('sha256').update(content).digest('hex');
const released = (host: MemoryHost) => host.list(FOLDER).map((path) => `${path} ${sha(host.read(path)!)}`);

/** Only the sizing card says how fine the last belt is. */
const touchSizing = (shop: ReturnType<typeof workshop>, revision: string) => {
  shop.change(TARN, /revision: \w/.exec(new TextDecoder().decode(shop.host.read(TARN)))![0], `revision: ${revision}`);
  const notes = new TextDecoder().decode(shop.host.read(TARN));
  shop.host.replace(
    TARN,
    `${notes.replace(/^notes:.*\n(?: .*\n)*/m, '')}notes: { sizing: Glue within the shift ${revision}. }\n`,
  );
};

describe('a release', () => {
  test('hangs all its cards, and leaves nothing out', async () => {
    const shop = workshop();
    const { code, out, err } = await shop.platen(`release tarn ${FROM_C}`);
    expect(code, err).toBe(0);
    expect(out).toContain('tarn@C is released, from 2026-11-25.');
    const { hang, pull } = await shop.codes('2026-11-25');
    expect(hang).toHaveLength(14);
    expect(hang.every((one) => one.since === 'C' && one.until === undefined)).toBe(true);
    expect(pull).toEqual([]);
    expect((await shop.codes('2026-11-24')).hang).toEqual([]);
  });

  test('preview writes nothing', async () => {
    const shop = workshop();
    const { code, out } = await shop.platen('release tarn --preview --on 2026-11-25');
    expect(code).toBe(0);
    expect(out).toContain('nothing of it was released before');
    expect(released(shop.host)).toEqual([]);
  });

  test.each([
    [
      'with errors',
      (f: Record<string, string>) => (f[TARN] = f[TARN]!.replace('49.60 ±0.12', '49.40 ±0.12')),
      FROM_C,
      1,
      'not released: 1 error',
    ],
    ['with no reason', () => '', '--name Reed --on 2026-11-25', 2, 'Give the reason'],
    ['with no name', () => '', '--reason x --on 2026-11-25', 2, 'Give the name'],
    [
      'with a name the plant does not know',
      (f: Record<string, string>) => (f[PLANT] = f[PLANT]!.replace('paper: A4,', 'paper: A4, people: [A. Reed],')),
      '--reason x --name Read --on 2026-11-25',
      2,
      'not among the people',
    ],
    ['of a first one, with bodies under way', () => '', `${FROM_C} --under-way scrap`, 1, 'nothing is under way'],
    ['from a day that is past', () => '', `${FROM_C} --from 2026-11-01`, 1, 'before it was made'],
    ['from a day that is none', () => '', `${FROM_C} --from 2026-02-30`, 2, 'day of the calendar'],
  ])('is refused %s', async (_, edit, options, expected, text) => {
    const shop = workshop(edit);
    const { code, err } = await shop.platen(`release tarn ${options}`);
    expect(code).toBe(expected);
    expect(err).toContain(text);
    expect(released(shop.host)).toEqual([]);
  });

  test('is refused with the old letter, with an earlier one, with nothing said of bodies under way, and over an altered ledger', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const before = released(shop.host);
    const refused = async (options: string, text: string) => {
      const { code, err } = await shop.platen(`release tarn --reason x --name Reed --on 2026-12-01 ${options}`);
      expect(err).toContain(text);
      expect(code).toBe(1);
      expect(released(shop.host)).toEqual(before);
    };
    await refused('--under-way use-as-is', 'nothing has changed since');
    touchSizing(shop, 'C');
    await refused('--under-way use-as-is', '1 of its cards have changed since: give it the next letter');
    touchSizing(shop, 'B');
    await refused('--under-way use-as-is', 'B does not come after it');
    touchSizing(shop, 'D');
    await refused('', 'Say what becomes of bodies under way');
    await refused('--under-way finish-on-old', 'need a last day');
    await refused('--under-way scrap --old-until 2026-12-20', 'goes with --under-way finish-on-old');
    await refused('--under-way finish-on-old --old-until 2026-12-05 --from 2026-12-06', 'before the new ones begin');
    shop.change(`${FOLDER}/ledger/000001.json`, 'first', 'fir5t');
    const { err, code } = await shop.platen('release tarn --reason x --name Reed --under-way scrap --on 2026-12-01');
    expect(err).toContain('The ledger was altered');
    expect(code).toBe(1);
  });
});

describe('a revision that touches one station', () => {
  async function twice(options: string) {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const first = await shop.codes('2026-11-25');
    touchSizing(shop, 'D');
    const { code, err, out } = await shop.platen(`release tarn --reason glue --name Reed --on 2026-12-01 ${options}`);
    expect(code, err).toBe(0);
    return { shop, first, out };
  }

  test('keeps the other cards, byte for byte and with the revision their content began with', async () => {
    const { shop, first, out } = await twice('--under-way use-as-is');
    expect(out).toMatch(/Sizing +pull \S+, post \S+\n {2}Unchanged, keep their cards: Conditioning store/);
    const { hang, pull } = await shop.codes('2026-12-01');
    const changed = hang.filter(({ code }) => !first.hang.some((one) => one.code === code));
    expect(changed.map(({ station, since }) => [station, since])).toEqual([['sizing', 'D']]);
    expect(hang.filter(({ since }) => since === 'C')).toHaveLength(13);
    expect(pull.map(({ station, why }) => [station, why])).toEqual([['sizing', 'superseded']]);
    // On one day, as the old release stored them and as the new one did: what is current is so under both.
    const old = await shop.tree('tarn@C', '2026-12-03');
    const now = await shop.tree('tarn@D', '2026-12-03');
    const pages = [...old.keys()].filter((path) => path.endsWith('.html'));
    const differ = pages.filter((path) => old.get(path) !== now.get(path.replace('tarn@C', 'tarn@D')));
    expect(differ).toEqual(['tarn@C/models/tarn/sizing.html']);
  });

  test('from an order on, the old finished on the old: both hang, each with its orders, until the last day', async () => {
    const { shop } = await twice('--from-order 2100 --under-way finish-on-old --old-until 2026-12-20');
    const at = async (on: string) =>
      (await shop.codes(on)).hang
        .filter(({ station }) => station === 'sizing')
        .map(({ release, range, until }) => ({ release, range, until }));
    const both = [
      { release: 'C', range: { to: { order: 2100 } }, until: '2026-12-20' },
      { release: 'D', range: { from: { order: 2100 } }, until: undefined },
    ];
    expect(await at('2026-12-01')).toEqual(both);
    expect(await at('2026-12-20')).toEqual(both);
    expect(await at('2026-12-21')).toEqual([{ release: 'D', range: {}, until: undefined }]);
    // A station that nothing changed at has one card for all orders.
    const press = (await shop.codes('2026-12-05')).hang.filter(({ station }) => station === 'press');
    expect(press.map(({ range, until }) => ({ range, until }))).toEqual([{ range: {}, until: undefined }]);
    const [old] = (await shop.codes('2026-12-05')).hang.filter(({ station }) => station === 'sizing');
    expect((await shop.platen(`code ${old!.code} --on 2026-12-05`)).out).toContain('RUN-OUT until 2026-12-20');
    const after = await shop.platen(`code ${old!.code.toLowerCase().replace('-', '')} --on 2026-12-21`);
    expect(after).toMatchObject({ code: 1 });
    expect(after.out).toMatch(/^SUPERSEDED by revision D, do not use.*In its place hangs \S+\.\n$/);
  });

  test('from a day on: the old is current until then, the new one not yet', async () => {
    const { shop } = await twice('--from 2026-12-10 --under-way rework');
    const [old] = (await shop.codes('2026-12-05')).hang.filter(({ station }) => station === 'sizing');
    expect(old).toMatchObject({ release: 'C', range: { to: { date: '2026-12-10' } } });
    const [next] = (await shop.codes('2026-12-10')).hang.filter(({ station }) => station === 'sizing');
    expect(next).toMatchObject({ release: 'D', range: {} });
    expect((await shop.platen(`code ${next!.code} --on 2026-12-05`)).out).toMatch(/^NOT YET: Sizing, Tarn, revision D/);
  });

  test('withdrawn: its own card answers do not use, and no older one comes back', async () => {
    const { shop } = await twice('--under-way use-as-is');
    const [mine] = (await shop.codes('2026-12-02')).hang.filter(({ station }) => station === 'sizing');
    expect((await shop.platen('withdraw tarn@D --reason wrong --name Reed --on 2026-12-02')).code).toBe(0);
    const { hang } = await shop.codes('2026-12-02');
    expect(hang).toEqual([]);
    const { code, out } = await shop.platen(`code ${mine!.code} --on 2026-12-03`);
    expect([code, out]).toEqual([1, 'WITHDRAWN, do not use: Sizing, Tarn. wrong\n']);
    expect((await shop.platen('withdraw tarn@D --reason again --name Reed --on 2026-12-03')).code).toBe(1);
    // Nor does it come back by being released once more under its letter.
    const again = await shop.platen('release tarn --reason again --name Reed --under-way scrap --on 2026-12-03');
    expect(again).toMatchObject({ code: 1, err: 'tarn@D was withdrawn: give it the next letter.\n' });
  });
});

describe('what was stored', () => {
  test('is posted again byte for byte with no plant, no model and other templates', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const before = await shop.tree('tarn@C', '2026-11-30');
    expect(before.size).toBeGreaterThan(25);
    const kept = Object.fromEntries(shop.host.list(FOLDER).map((path) => [path, shop.host.read(path)!]));
    const bare = bench(
      memoryHost({
        ...kept,
        'templates/card.hbs': 'nothing',
        'templates/print.css': '',
        'templates/words/en.yaml': 'a: b',
      }),
    );
    expect(await bare.tree('tarn@C', '2026-11-30')).toEqual(before);
  });

  test('shows its picture, whatever became of the file; a picture of other bytes is another card', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const page = async (on: string) => {
      const { code, err } = await shop.platen(`cards --released --station trim-sawing --no-pdf --on ${on} --out out/x`);
      expect(code, err).toBe(0);
      return new TextDecoder().decode(shop.host.published.get('out/x')!.get('tarn@C/models/tarn/trim-sawing.html'));
    };
    const address = (text: string) => `src="data:image/svg+xml;base64,${Buffer.from(text).toString('base64')}"`;
    const picture = sample()[KERF]!;
    expect(await page('2026-11-25')).toContain(address(picture));
    shop.host.replace(KERF, 'gone');
    expect((await shop.platen('check --on 2026-11-26')).out).toContain('picture-not-a-picture');
    expect(await page('2026-11-26')).toContain(address(picture));
    expect((await shop.platen('recompute --on 2026-11-26')).code).toBe(1);
    shop.host.replace(KERF, picture.replace('M23', 'M24'));
    const { out } = await shop.platen('recompute --all --on 2026-11-26');
    expect(out).toMatch(/cards that would read otherwise: Trim sawing/);
    const again = await shop.platen('release tarn --reason x --name Reed --under-way use-as-is --on 2026-11-26');
    expect(again).toMatchObject({ code: 1, err: expect.stringContaining('1 of its cards have changed') as string });
  });

  test('says today what a change of the plant would move, and by how much', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    expect(await shop.platen('recompute --on 2026-11-30')).toMatchObject({ code: 0, out: 'tarn@C: nothing moved.\n' });
    shop.change(PLANT, 'glue-line: 0.05 ±0.03', 'glue-line: 0.07 ±0.03');
    const { code, out } = await shop.platen('recompute --all --on 2026-11-30');
    expect(code).toBe(1);
    expect(out).toMatch(/thickness\.blank {2}50\.85 ±0\.23 mm → 50\.87 ±0\.23 mm {2}\(\+0\.02 mm, 4 % of its limits\)/);
    expect(out).toMatch(/cards that would read otherwise: .*Press/);
    expect(out).not.toContain('thickness.part.cap.sized');
  });

  test('in other words is a version under the same codes, and supersedes nothing', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const before = await shop.codes('2026-12-02');
    const page = async (on: string) => {
      await shop.platen(`cards --released --station sizing --no-pdf --on ${on} --out out/x`);
      return new TextDecoder().decode(shop.host.published.get('out/x')!.get('tarn@C/models/tarn/sizing.html'));
    };
    const words = new TextDecoder().decode(shop.host.shipped('templates/words/en.yaml'));
    shop.host.replace(
      'templates/words/en.yaml',
      words.replace('Run the proof piece first', 'First run the proof piece'),
    );
    const { code, out } = await shop.platen('release tarn --reason clearer --name Reed --on 2026-12-02');
    expect([code, out]).toEqual([0, expect.stringContaining('tarn@C has a new version')]);
    expect(await shop.codes('2026-12-02')).toEqual(before);
    expect(await page('2026-12-01')).toContain('Run the proof piece first');
    expect(await page('2026-12-02')).toContain('First run the proof piece');
  });

  test('is the same file twice, whatever the clock says', async () => {
    const records = await Promise.all(
      ['2026-11-25', '2027-03-01'].map(async (on) => {
        const shop = workshop();
        await shop.platen(`release tarn --reason first --name Reed --on ${on}`);
        return shop.host.list(FOLDER).filter((path) => /tarn-C-/.test(path));
      }),
    );
    expect(records[0]).toEqual(records[1]);
  });
});

describe('holds and deviations', () => {
  test('a held cutter marks the cards that ask for it, and lifted it marks none', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    expect((await shop.platen('hold mill-8 --reason chipped --name Reed --on 2026-11-26')).out).toMatch(
      /ask for it: [1-9]/,
    );
    const held = (await shop.codes('2026-11-26')).hang.filter(({ holds }) => holds.length > 0);
    expect(held.map(({ station }) => station)).toEqual(['machining-top']);
    expect((await shop.platen(`code ${held[0]!.code} --on 2026-11-26`)).out).toMatch(
      /^HELD, do not use\..*mill-8 is held since 2026-11-26: chipped \(Reed\)\.\n$/,
    );
    await shop.platen('cards --released --no-pdf --on 2026-11-27 --out out/x');
    const page = new TextDecoder().decode(
      shop.host.published.get('out/x')!.get('tarn@C/models/tarn/machining-top.html'),
    );
    expect(page).toContain('HELD on 2026-11-27 – do not use');
    expect(page).toContain('HELD: mill-8, not to be used. chipped (Reed, 2026-11-26)');
    expect((await shop.platen('hold mill-8 --reason chipped --name Reed --on 2026-11-27')).code).toBe(1);
    expect((await shop.platen('hold mill-8 --lift --reason new --name Reed --on 2026-11-28')).code).toBe(0);
    expect((await shop.codes('2026-11-28')).hang.every(({ holds }) => holds.length === 0)).toBe(true);
    expect((await shop.platen('hold mill-8 --lift --reason new --name Reed --on 2026-11-29')).code).toBe(1);
    expect((await shop.platen('hold mil-8 --reason x --name Reed --on 2026-11-29')).err).toContain(
      'Did you mean "mill-8"?',
    );
  });

  test('the landing page leads to each card that hangs', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    await shop.platen('cards --released --no-pdf --on 2026-11-27 --out out/x');
    const tree = shop.host.published.get('out/x')!;
    const index = new TextDecoder().decode(tree.get('index.html'));
    const links = [...index.matchAll(/href="(tarn@C[^"]*)"/g)].map(([, href]) => href!);
    expect(links).toHaveLength(14);
    for (const href of links) expect(tree.has(href), href).toBe(true);
    expect(index).toMatch(
      /What hangs on 2026-11-27[\s\S]*Conditioning store[\s\S]*CURRENT on 2026-11-27; content since revision C/,
    );
  });

  test('a held model marks all its cards; one lot of an adhesive those that use it', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    await shop.platen('hold tarn --reason stop --name Reed --on 2026-11-26');
    expect((await shop.codes('2026-11-26')).hang.every(({ holds }) => holds.length === 1)).toBe(true);
    await shop.platen('hold tarn --lift --reason go --name Reed --on 2026-11-27');
    const adhesive = /adhesive: ([\w-]+)/.exec(sample()[PLANT]!)![1]!;
    await shop.platen(`hold ${adhesive} --lot 2231 --reason stringy --name Reed --on 2026-11-28`);
    const held = (await shop.codes('2026-11-28')).hang.filter(({ holds }) => holds.length > 0);
    expect(held.map(({ station }) => station)).toContain('lamination');
    // The belt's last grit follows from the glue; the glue is not asked for there.
    expect(held.map(({ station }) => station)).not.toContain('sizing');
  });

  test('a deviation stands in bold beside what it stands for, and ends by itself', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const line = 'deviate tarn thickness.part.cap.sized --reason "thin lot" --name Reed --on 2026-11-26';
    expect((await shop.platen(`${line} --to 16.25..16.50`)).err).toContain('ends by itself');
    expect((await shop.platen(`${line} --until 2026-11-20 --to 16.25..16.50`)).code).toBe(2);
    expect((await shop.platen(`${line} --until 2026-11-30`)).err).toContain('Give the limits');
    expect((await shop.platen(`${line} --until 2026-11-30 --to 16.25`)).code).toBe(2);
    expect((await shop.platen(line.replace('cap.sized', 'cap.size'))).err).toContain('Did you mean');
    const { code, out } = await shop.platen(`${line} --until 2026-11-30 --count 4 --to 16.25..16.50`);
    expect(code).toBe(0);
    expect(out).toMatch(
      /16\.25–16\.50\u00a0mm instead of 16\.30–16\.50\u00a0mm until 2026-11-30\. Post anew: \S+\.\n$/,
    );
    const page = async (on: string) => {
      await shop.platen(`cards --released --station sizing --no-pdf --on ${on} --out out/x`);
      return new TextDecoder().decode(shop.host.published.get('out/x')!.get('tarn@C/models/tarn/sizing.html'));
    };
    const during = await page('2026-11-30');
    expect(during).toMatch(
      /not <b>16\.30–16\.50\u00a0mm<\/b> but <b>16\.25–16\.50\u00a0mm<\/b>\. thin lot \(Reed\) For 4 bodies, tick each: (?:<span class="tick"><\/span>){4}<\/p>/,
    );
    expect(await page('2026-12-01')).not.toContain('16.25–16.50');
  });

  test('the whole may be held beside a lot of it, and is lifted with it', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const hold = (what: string) => shop.platen(`hold mill-8 ${what} --reason x --name Reed --on 2026-11-26`);
    expect((await hold('--lot 7')).code).toBe(0);
    expect((await hold('--lot 7')).code).toBe(1);
    expect((await hold('')).code).toBe(0);
    expect((await hold('--lift --lot 8')).code).toBe(1);
    expect((await hold('--lift')).code).toBe(0);
    expect((await shop.codes('2026-11-26')).hang.every(({ holds }) => holds.length === 0)).toBe(true);
  });

  test('limits that keep people from harm do not deviate', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const record = shop.host.list(FOLDER).find((path) => /tarn-C-/.test(path))!;
    const { cards } = JSON.parse(new TextDecoder().decode(shop.host.read(record))) as {
      cards: { limits: { fact: string; text: string }[] }[];
    };
    const pressures = cards.flatMap(({ limits }) => limits).filter(({ text }) => /MPa|bar$/.test(text));
    expect(pressures).not.toEqual([]);
    for (const { fact } of pressures) {
      const line = `deviate tarn ${fact} --to 1..99 --until 2026-12-01 --reason x --name Reed --on 2026-11-26`;
      expect(await shop.platen(line)).toMatchObject({
        code: 2,
        err: expect.stringContaining('keep people from harm') as string,
      });
    }
  });

  test('a deviation is of the limits it was entered against, and a later one stands for it', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const deviate = (to: string) =>
      shop.platen(
        `deviate tarn thickness.part.cap.sized --to ${to} --until 2026-12-31 --reason x --name Reed --on 2026-11-26`,
      );
    await deviate('16.25..16.50');
    await deviate('16.28..16.50');
    const ofSizing = async (on: string) =>
      (await shop.codes(on)).hang.filter(({ station }) => station === 'sizing').flatMap(({ deviations }) => deviations);
    expect(await ofSizing('2026-11-27')).toMatchObject([{ now: '16.28–16.50\u00a0mm' }]);
    shop.change(TARN, 'revision: C', 'revision: D');
    shop.change(TARN, 'cap: { sized: 16.40 ±0.10 }', 'cap: { sized: 16.42 ±0.10 }');
    const { code, err } = await shop.platen(
      'release tarn --reason thicker --name Reed --under-way use-as-is --on 2026-12-01',
    );
    expect(code, err).toBe(0);
    expect(await ofSizing('2026-12-01')).toEqual([]);
  });

  test('what somebody wrote stays text on the card', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    await shop.platen('hold tarn --reason "<script>alert(1)</script> & more" --name Reed --on 2026-11-26');
    await shop.platen('withdraw tarn@C --reason "</style><b>x" --name Reed --on 2026-11-26');
    await shop.platen('cards --released tarn@C --no-pdf --on 2026-11-26 --out out/x');
    const page = new TextDecoder().decode(shop.host.published.get('out/x')!.get('tarn@C/models/tarn/sizing.html'));
    expect(page).not.toContain('<script>');
    expect(page).not.toContain('</style><b>');
    expect(page).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &amp; more');
  });
});

test('an entry of a day before the last one is refused: it would change what was said since', async () => {
  const shop = workshop();
  await shop.platen(`release tarn ${FROM_C}`);
  const { code, err } = await shop.platen('hold tarn --reason x --name Reed --on 2026-11-24');
  expect([code, err]).toEqual([1, expect.stringContaining('The last entry of the ledger is of 2026-11-25')]);
});

describe('a code', () => {
  test('never released is a draft; never printed, unknown, with what was meant', async () => {
    const shop = workshop();
    await shop.platen(`release tarn ${FROM_C}`);
    const [first] = (await shop.codes('2026-11-25')).hang;
    const other = `${first!.code.slice(0, -1)}${first!.code.endsWith('2') ? '3' : '2'}`;
    expect((await shop.platen(`code ${other} --on 2026-11-26`)).out).toBe(
      `UNKNOWN, do not use: no card ever had this code. Did you mean ${first!.code}?\n`,
    );
    touchSizing(shop, 'D');
    const { out } = await shop.platen('release tarn --preview --on 2026-11-26');
    const draft = /Sizing +pull \S+, post (\S+)/.exec(out)![1]!;
    expect((await shop.platen(`code ${draft} --on 2026-11-26`)).out).toBe(
      'DRAFT, not for the floor: it was never released.\n',
    );
    expect((await shop.platen(`code ${first!.code} --on 2026-11-26`)).out).toMatch(
      /^CURRENT\. Conditioning store, Tarn: content since revision C\.\n$/,
    );
  });
});

test('a card in two languages says in each what it is on the day, foot and head, with its drawings', async () => {
  const shop = workshop((files) => {
    files[PLANT] = files[PLANT]!.replace('plant: { ', 'plant: { languages: [en, es], ');
  });
  const { code, err } = await shop.platen(`release tarn ${FROM_C}`);
  expect(code, err).toBe(0);
  await shop.tree('', '2026-11-26');
  const tree = shop.host.published.get('out/x')!;
  const page = new TextDecoder().decode(tree.get('tarn@C/models/tarn/sizing.html'));
  const [english, spanish] = page.split('<article class="card" lang="es"') as [string, string];
  // Each language has its rule of page feet before its article.
  expect(page).not.toContain('platen-slot');
  expect(english).toContain('<p class="status">CURRENT on 2026-11-26</p>');
  expect(english).toContain('content since revision C');
  expect(spanish).toContain('<p class="status">VIGENTE al 2026-11-26</p>');
  expect(page.match(/@bottom-right\{content:"(?:CURRENT|VIGENTE)/g)).toEqual([
    '@bottom-right{content:"CURRENT',
    '@bottom-right{content:"VIGENTE',
  ]);
  expect([...tree.keys()]).toContain('tarn@C/models/tarn/sizing-plan.es.svg');
});
