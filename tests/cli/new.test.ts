import { describe, expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { demoFiles } from '../cards/demo.ts';
import { sample } from '../cases/workspace.ts';

type Files = Record<string, string | Uint8Array>;

const plantOnly = (files: Files): Files =>
  Object.fromEntries(Object.entries(files).filter(([path]) => path.startsWith('models/plant/')));

function workspace(files: Files) {
  const host = memoryHost(files, { today: '2026-11-25' });
  let [out, err] = ['', ''];
  const io = {
    out: (text: string) => void (out += text),
    err: (text: string) => void (err += text),
    watched: false,
    host: () => host,
  };
  const platen = async (line: string) => {
    [out, err] = ['', ''];
    return { code: await run(line.split(' '), io), out, err };
  };
  const text = (path: string) => new TextDecoder().decode(host.read(path));
  return { platen, text };
}

describe('platen new', () => {
  test.each([
    ['a plant with no model', plantOnly(sample())],
    ['the demo plant with no model', plantOnly(demoFiles())],
    ['the demo catalogue', demoFiles()],
  ])('writes a spec that passes at once, in %s', async (_, files) => {
    const { platen, text } = workspace(files);
    const started = await platen('new gill');
    expect(started).toMatchObject({ code: 0, err: '' });
    expect(started.out).toContain('models/gill.yaml is written and passes');
    expect(text('models/gill.yaml')).toMatch(/^# yaml-language-server: \$schema=schemas\/model\.schema\.json\n/);
    expect(await platen('check gill')).toMatchObject({ code: 0, out: '1 model checked: 0 errors, 0 cautions.\n' });
    expect(await platen('cards gill --no-pdf')).toMatchObject({ code: 0 });
  });

  test.each(['tarn', 'ness', 'voe', 'base/bolt-on'])(
    'based on %s takes over what it gives, and passes',
    async (base) => {
      const { platen, text } = workspace(demoFiles());
      expect(await platen(`new gill --based-on ${base}`)).toMatchObject({ code: 0, err: '' });
      expect(text('models/gill.yaml')).toContain(`based-on: ${base}\n`);
      expect(text('models/gill.yaml')).not.toContain('scale:');
      expect(await platen('check gill')).toMatchObject({ code: 0 });
    },
  );

  test('never writes over a file, and refuses what cannot be a name', async () => {
    const { platen, text } = workspace(demoFiles());
    const before = text('models/tarn.yaml');
    expect(await platen('new tarn')).toMatchObject({ code: 2, err: 'models/tarn.yaml is there already.\n' });
    expect(text('models/tarn.yaml')).toBe(before);
    for (const name of ['../tarn', 'Tarn', 'a/b']) expect((await platen(`new ${name}`)).code).toBe(2);
    expect((await platen('new gill --based-on trn')).err).toContain('Did you mean "tarn"?');
  });

  test('says what the plant has not', async () => {
    const files = plantOnly(sample());
    const plant = String(files['models/plant/plant.yaml']).replace(/^ {2}router:\n(?: {4}.*\n)+/m, '');
    const { platen } = workspace({ 'models/plant/plant.yaml': plant });
    const { code, err } = await platen('new gill');
    expect(code).toBe(1);
    expect(err).toContain('the plant has not a router');
  });
});

describe('platen uses', () => {
  test('lists the lines that name a row, and the cards that show it or what came from it', async () => {
    const { platen } = workspace(sample());
    const { code, out } = await platen('uses mill-8');
    expect(code).toBe(0);
    expect(out).toContain('cavities.neck-pickup.cutter');
    expect(out).toMatch(/card +\S+ machining-top\n/);
    expect(out).not.toContain('machining-back');
  });

  test('a gauge is used where the plant names it, by every model that passes the station', async () => {
    const { platen } = workspace(sample());
    const [found] = JSON.parse((await platen('uses caliper-inch --json')).out) as {
      plant: { id: string }[];
      models: { model: string; cards: { station: string }[] }[];
    }[];
    expect(found!.plant.map(({ id }) => id)).toEqual(['plant.stations.planing.gauges.thickness']);
    expect(found!.models.map(({ model }) => model)).toEqual(['tarn']);
    expect(new Set(found!.models[0]!.cards.map(({ station }) => station))).toEqual(new Set(['planing']));
  });

  test('an unknown name is refused with a suggestion', async () => {
    const { platen } = workspace(sample());
    const { code, err } = await platen('uses mil-8');
    expect(code).toBe(2);
    expect(err).toContain('Did you mean "mill-8"?');
  });
});
