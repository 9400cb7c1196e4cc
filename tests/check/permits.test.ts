import { describe, expect, test } from 'vitest';
import { compileAll, printCompiled } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { edited } from '../cases/workspace.ts';

const note = 'notes: { sizing: Sand the glue faces last. }';
const permit = 'permits: { numeral-in-a-note: { reason: batch number meant, name: R. Holm, until: 2026-12-31 } }';

const withPermit = (words: string, text: string = permit) =>
  memoryHost(edited([{ file: 'models/tarn.yaml', find: note, replace: `notes: { sizing: ${words} }\n${text}` }]));

const idsOn = (host: ReturnType<typeof memoryHost>, on: string) =>
  compileAll(host, on).models.flatMap(({ findings }) => findings.map(({ id, severity }) => `${severity} ${id}`));

describe('a caution that somebody lets stand', () => {
  test('leaves the findings, and prints on every card of the model with reason, name and last day', () => {
    const host = withPermit('Batch 7 first.');
    expect(idsOn(host, '2026-12-31')).toEqual([]);
    const compiled = compileAll(host, '2026-12-31');
    const { cards } = compiled.models[0]!;
    expect(cards.length).toBe(28);
    for (const { card } of cards) expect(card.permits).toHaveLength(1);
    // The numeral in what was found leads to the line it was found in.
    expect(cards[0]!.card.permits[0]!.with['what']).toMatchObject({ kind: 'name', fact: 'notes.sizing' });
    const { files, findings } = printCompiled(host, compiled, '2026-12-31');
    expect(findings).toEqual([]);
    const html = String(files.get('models/tarn/sizing.html'));
    for (const text of ['batch number meant', 'R. Holm', '2026-12-31', '7']) expect(html).toContain(text);
  });

  test('comes back when its day is past, and the permit itself is told', () => {
    expect(idsOn(withPermit('Batch 7 first.'), '2027-01-01')).toEqual(['error permit-of-nothing']);
  });

  test('that does not arise needs no permit, but one for an error or for nothing known is refused', () => {
    const other = (id: string) => permit.replace('numeral-in-a-note', id);
    for (const id of ['removal-too-small', 'no-such-check'])
      expect(idsOn(withPermit('Dry.', other(id)), '2026-11-25')).toEqual(['error permit-of-nothing']);
  });

  // The time on the clock follows from the feed, and hangs under it: only the feed is let stand.
  test('lets stand what it names and nothing that hangs below', () => {
    const fast = { file: 'models/plant/plant.yaml', find: 'feed: 4.8 m/min', replace: 'feed: 48 m/min' };
    const ids = (permits: string) => {
      const lines = `${note}\n${permits}`;
      const host = memoryHost(edited([fast, { file: 'models/tarn.yaml', find: note, replace: lines }]));
      return compileAll(host, '2026-11-25').models[0]!.findings.map(({ id }) => id);
    };
    const tops = ids('');
    expect(tops).toEqual(['chip-out-of-band']);
    const left = ids(permit.replace('numeral-in-a-note', 'chip-out-of-band'));
    expect(left).toEqual(['cycle-unlikely']);
  });

  test('without a permit stands as a caution, and stops nothing', () => {
    const host = withPermit('Batch 7 first.', '');
    expect(idsOn(host, '2026-11-25')).toEqual(['caution numeral-in-a-note']);
    expect(compileAll(host, '2026-11-25').models[0]!.cards).toHaveLength(28);
  });
});
