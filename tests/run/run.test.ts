/** Runs through the command, in a workspace in memory: what is refused and why, what goes on, totals worked out by hand. */
import { beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { memoryHost } from '../../src/host/memory.ts';
import type { MemoryHost } from '../../src/host/memory.ts';
import { sample } from '../cases/workspace.ts';

const TARN = 'models/tarn.yaml';
const PLANT = 'models/plant/plant.yaml';
const HEAD = 'order,model,finish,grade,hand,quantity,due,lead\n';
const DAY = '2026-11-27';

interface Answer {
  readonly orders: string;
  readonly bodies: string;
  readonly refused: readonly {
    readonly id: string;
    readonly line: number;
    readonly what: string;
    readonly mend: string;
  }[];
  readonly lines: readonly {
    readonly order: string;
    readonly revision: string;
    readonly upgradedBy?: string;
    readonly lots: readonly string[];
    readonly setUp: readonly string[];
    readonly shift?: string;
    readonly late?: string;
  }[];
  readonly picks: readonly {
    readonly part: string;
    readonly pieces: string;
    readonly boards: string;
    readonly boardFeet: string;
    readonly orders: readonly string[];
  }[];
  readonly timber: readonly { readonly species: string; readonly boardFeet: string }[];
  readonly hours: readonly {
    readonly name: string;
    readonly work?: string;
    readonly share?: string;
    readonly most: boolean;
  }[];
  readonly ready: readonly {
    readonly name: string;
    readonly groups: readonly { readonly of: string; readonly titles: readonly string[] }[];
  }[];
}

/** A floor on which tarn is released; `act` is what was done on it since, a command a line. */
class Floor {
  readonly host: MemoryHost;
  constructor({ today = DAY }: { readonly today?: string } = {}) {
    const files = sample();
    const plant = files[PLANT]!.split(/^plant: \{ /m);
    expect(plant).toHaveLength(2);
    files[PLANT] = plant.join('plant: { people: [T. Vael, M. Orre], shift: 7.5 h, ');
    this.host = memoryHost(files, { today });
  }

  async platen(line: string): Promise<{ code: number; out: string; err: string }> {
    const said = { out: '', err: '' };
    const io = {
      out: (text: string) => void (said.out += text),
      err: (text: string) => void (said.err += text),
      watched: false,
      host: () => this.host,
    };
    const words = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!);
    return { code: await run(words, io), ...said };
  }

  async act(...lines: readonly string[]): Promise<this> {
    for (const line of lines) {
      const { code, err } = await this.platen(line);
      expect(code, `${line}\n${err}`).toBe(0);
    }
    return this;
  }

  change(find: string, replace: string): this {
    const text = new TextDecoder().decode(this.host.read(TARN));
    expect(text.split(find)).toHaveLength(2);
    this.host.replace(TARN, text.replace(find, replace));
    return this;
  }

  async list(lines: string, on = DAY): Promise<Answer & { readonly code: number }> {
    this.host.replace('orders.csv', HEAD + lines);
    const { code, out, err } = await this.platen(`run orders.csv --json --on ${on}`);
    expect(out, err).not.toBe('');
    return { ...(JSON.parse(out) as Answer), code };
  }
}

const RELEASE = 'release tarn --reason first --name "T. Vael" --on 2026-11-20';
const ids = ({ refused }: Answer) => refused.map(({ id, line }) => `${line} ${id}`);
const numbers = ({ lines }: Answer) => lines.map(({ order }) => order);

describe('a floor with tarn in force', () => {
  const floor = new Floor();
  beforeAll(() => floor.act(RELEASE));

  test('refuses what it cannot run, each with its reason at its line, and the rest goes on', async () => {
    const answer = await floor.list(
      [
        '1,tarn,amber-shaded,fine,right,1,,',
        '2,tern,amber-shaded,,right,1,,',
        '3,tarn,amber,,right,1,,',
        '4,tarn,amber-shaded,plain,right,1,,',
        '5,tarn,black-opaque,fine,right,1,,',
        '6,tarn,black-opaque,fine,right,1,,T. Vael',
        '7,tarn,black-opaque,fine,right,1,,Nobody',
        '8,tarn,blue-clear,flamed,right,1,,',
        '9,tarn,blue-clear,"select, fine",right,1,,',
        '10,tarn,blue-clear,select,left,2,,',
        '11,tarn,amber-shaded,plain,right,1,,T. Vael',
      ].join('\n'),
    );
    expect(answer.code).toBe(1);
    expect(ids(answer)).toEqual([
      '3 order-unknown-model',
      '4 order-finish',
      '5 order-too-poor',
      '6 order-too-good',
      '8 order-lead',
      '9 order-grade-unknown',
      '10 order-grade-unknown',
      // The lead may let better wood through, never worse.
      '12 order-too-poor',
    ]);
    expect(numbers(answer).toSorted()).toEqual(['1', '10', '6']);
    expect(answer.lines.find(({ order }) => order === '6')!.upgradedBy).toBe('T. Vael');
    expect(answer.lines.find(({ order }) => order === '1')).not.toHaveProperty('upgradedBy');
    expect(answer.bodies).toBe('4');
    expect(answer.refused[0]!.mend).toBe('Did you mean "tarn"?');
    expect(answer.refused[3]!.what).toBe('figure "fine" is too good for black-opaque, which asks for plain, select.');
  });

  test('writes nothing where nothing can be run', async () => {
    floor.host.replace('orders.csv', `${HEAD}1,tern,x,,,1,,\n`);
    const { code, err } = await floor.platen(`run orders.csv --no-pdf --on ${DAY}`);
    expect(code).toBe(1);
    expect(err).toContain('no order that can be run');
    expect(floor.host.published.size).toBe(0);
    expect((await floor.platen('run none.csv')).code).toBe(2);
  });

  test('counts its wood', async () => {
    const one = await floor.list('1,tarn,amber-shaded,fine,right,1,,');
    const bought = (part: string) => Number(one.picks.find((pick) => pick.part === part)!.boardFeet);
    // Two halves of the cap, two pieces of the back, a board each.
    expect(one.picks.map(({ part, pieces, boards }) => `${part} ${pieces} ${boards}`).toSorted()).toEqual([
      'back 2 2',
      'cap 2 2',
    ]);
    // By the traces of the spec itself, upward to a tenth.
    const { out } = await floor.platen(`trace tarn blank.cap.bought --json --on ${DAY}`);
    const [cap] = JSON.parse(out) as [{ readonly value: string }];
    expect(cap.value).toMatch(/^[\d.]+ bf$/);
    const each = Number(cap.value.replace(' bf', ''));
    expect(bought('cap')).toBeCloseTo(Math.ceil(each * 10) / 10, 9);
    // Seven bodies of the same wood in one line of the picks: 7 × each, rounded once.
    const seven = await floor.list('1,tarn,amber-shaded,fine,right,3,,\n2,tarn,amber-shaded,fine,left,4,,');
    const caps = seven.picks.find((pick) => pick.part === 'cap')!;
    expect(caps).toMatchObject({ pieces: '14', boards: '14', orders: ['1', '2'] });
    expect(Math.abs(Number(caps.boardFeet) - each * 7)).toBeLessThan(0.1 + 1e-9);
    expect(Number(caps.boardFeet)).toBeGreaterThanOrEqual(each * 7 - 1e-9);
    // Another grade is another line.
    const two = await floor.list('1,tarn,amber-shaded,fine,right,3,,\n2,tarn,amber-shaded,exhibition,right,4,,');
    expect(two.picks.filter(({ part }) => part === 'cap').map(({ pieces }) => pieces)).toEqual(['8', '6']);
  });

  test('has ready what each station wants, once', async () => {
    const { ready } = await floor.list('1,tarn,amber-shaded,fine,right,1,,\n2,tarn,black-opaque,plain,right,2,,');
    const back = ready.find(({ name }) => name === 'Machining, back')!;
    expect(back.groups.map(({ of }) => of)).toEqual(expect.arrayContaining(['fixtures', 'programs', 'cutters']));
    expect(back.groups.find(({ of }) => of === 'programs')!.titles).toEqual(['4110']);
    for (const { groups } of ready) for (const { titles } of groups) expect(new Set(titles).size).toBe(titles.length);
  });
});

describe('what is held', () => {
  test('stops its orders; a lot of it, or another finish, does not', async () => {
    const floor = await new Floor().act(
      RELEASE,
      `hold black-opaque --reason "Wrong shade" --name "M. Orre" --on ${DAY}`,
    );
    const orders = '1,tarn,amber-shaded,,right,1,,\n2,tarn,black-opaque,,right,1,,';
    expect(ids(await floor.list(orders))).toEqual(['3 order-held']);
    await floor.act(
      `hold black-opaque --lift --reason "Mixed anew" --name "M. Orre" --on ${DAY}`,
      `hold lamination-white --lot 7731 --reason "Thin" --name "M. Orre" --on ${DAY}`,
    );
    const lot = await floor.list(orders);
    expect(ids(lot)).toEqual([]);
    expect(lot.lines.map(({ lots }) => lots)).toEqual([['lamination-white 7731'], ['lamination-white 7731']]);
    await floor.act(`hold tarn --reason "Customer" --name "M. Orre" --on ${DAY}`);
    expect(ids(await floor.list(orders))).toEqual(['2 order-held', '3 order-held']);
    // The day before it was not held.
    expect(ids(await floor.list(orders, '2026-11-26'))).toEqual([]);
  });

  test('of one hand stops that hand alone', async () => {
    const floor = new Floor();
    await floor.act(RELEASE);
    const { out } = await floor.platen(`run orders.csv --json --on ${DAY}`);
    expect(out).toBe('');
    const fixture = /fixture: (\S+-left)/
      .exec(new TextDecoder().decode(floor.host.read(TARN)))![1]!
      .replace(/[,}]/g, '');
    await floor.act(`hold ${fixture} --reason "Bent pin" --name "M. Orre" --on ${DAY}`);
    const answer = await floor.list('1,tarn,amber-shaded,,right,1,,\n2,tarn,amber-shaded,,left,1,,');
    expect(ids(answer)).toEqual(['3 order-held']);
  });
});

describe('which release an order is made by', () => {
  test('none was released, none is yet in force, or it was withdrawn', async () => {
    const floor = new Floor();
    const order = '1,tarn,amber-shaded,,right,1,,';
    expect((await floor.list(order)).refused).toMatchObject([
      { id: 'order-not-released', what: 'tarn was never released: there is no card in force.' },
    ]);
    await floor.act(`${RELEASE} --from 2026-12-01`);
    expect((await floor.list(order)).refused).toMatchObject([
      { id: 'order-not-released', what: expect.stringContaining('from 2026-12-01') as string },
    ]);
    expect(ids(await floor.list(order, '2026-12-01'))).toEqual([]);
    await floor.act('withdraw tarn@C --reason "Wrong crown" --name "T. Vael" --on 2026-12-02');
    expect((await floor.list(order, '2026-12-02')).refused).toMatchObject([
      { id: 'order-not-released', what: 'tarn revision C was withdrawn: Wrong crown.' },
    ]);
  });

  test('from an order on, the orders before it are made by the one before', async () => {
    const floor = await new Floor().act(RELEASE);
    floor.change('revision: C', 'revision: D').change('sized: 16.40 ±0.10', 'sized: 16.40 ±0.09');
    await floor.act(
      'release tarn --reason next --name "T. Vael" --on 2026-11-25 --from-order 2000 --under-way finish-on-old --old-until 2026-12-31',
    );
    const { lines } = await floor.list('1999,tarn,amber-shaded,,right,1,,\n2000,tarn,amber-shaded,,right,1,,');
    expect(Object.fromEntries(lines.map(({ order, revision }) => [order, revision]))).toEqual({ 1999: 'C', 2000: 'D' });
  });
});

describe('since it last ran', () => {
  const list = '1999,tarn,amber-shaded,,right,1,,\n2000,tarn,amber-shaded,,left,1,,';
  interface Since {
    readonly since: readonly {
      readonly revision: string;
      readonly was?: { readonly on: string; readonly revision: string };
      readonly stations: readonly string[];
      readonly notice?: string;
    }[];
  }
  const since = async (floor: Floor, on: string) => (await floor.list(list, on)) as Answer & Since;

  test('a run is entered on the day it begins, by somebody the plant names', async () => {
    const floor = await new Floor().act(RELEASE);
    expect((await since(floor, DAY)).since).toEqual([{ model: 'Tarn', revision: 'C', stations: [] }]);
    const begin = (more: string) => floor.platen(`run orders.csv --no-pdf --begin ${more}`);
    expect((await begin(`--on ${DAY}`)).err).toContain('--name');
    expect((await begin(`--on ${DAY} --name Nobody`)).err).toContain('"Nobody" is not among the people');
    expect((await begin('--on 9999-12-31 --name "T. Vael"')).err).toContain('on the day it begins');
    expect((await since(floor, DAY)).since[0]).not.toHaveProperty('was');
    await floor.act(`run orders.csv --no-pdf --begin --on ${DAY} --name "T. Vael"`);
    const again = await since(floor, DAY);
    expect(again.since).toEqual([{ model: 'Tarn', revision: 'C', was: { on: DAY, revision: 'C' }, stations: [] }]);
    // Both orders were begun: whoever lists them again is told.
    expect(again.lines).toMatchObject([{ begun: DAY }, { begun: DAY }]);
  });

  test('a release in between is told at its stations, with a notice', async () => {
    const floor = await new Floor({ today: '2026-12-31' }).act(RELEASE);
    await floor.list(list);
    await floor.act(`run orders.csv --no-pdf --begin --on ${DAY} --name "T. Vael"`);
    floor.change('revision: C', 'revision: D').change('sized: 16.40 ±0.10', 'sized: 16.40 ±0.09');
    await floor.act('release tarn --reason next --name "T. Vael" --on 2026-11-28 --under-way use-as-is');
    const told = await since(floor, '2026-11-28');
    expect(told.since).toMatchObject([{ revision: 'D', was: { on: DAY, revision: 'C' }, notice: 'changes/tarn-C-D' }]);
    expect(told.since[0]!.stations).toContain('Sizing');
    await floor.act(`run orders.csv --no-pdf --on 2026-11-28`);
    const tree = floor.host.published.get('out/run/2026-11-28')!;
    expect([...tree.keys()]).toEqual(
      expect.arrayContaining(['changes/tarn-C-D.html', 'run-sheet.html', 'labels.html']),
    );
  });
});
