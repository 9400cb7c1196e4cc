/** A cut that is too deep is told with its place, what is left, and the depth that passes: that passes, and no more does. */
import { describe, expect, test } from 'vitest';
import { compileAll } from '../../src/compile.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { edited } from '../cases/workspace.ts';

const file = 'models/tarn.yaml';

function findings(find: string, replace: string): Finding[] {
  const { checked } = compileAll(memoryHost(edited([{ file, find, replace }])), '2026-11-25');
  const all = [...checked.findings, ...checked.models.flatMap((model) => model.findings)];
  // A floor that is just thick enough has no room for a shim: that is another finding's business.
  return all.filter((finding) => finding.id !== 'rework-too-far');
}

describe.each([
  ['cavities that meet from both faces', 'breaks-through', 'depth: 15.0 ±0.6', 'depth: 33.0 ±0.6', 1],
  ['a floor between two cavities', 'floor-too-thin', 'depth: 15.0 ±0.6', 'depth: 27.5 ±0.6', 1],
  ['a floor under the arch', 'floor-too-thin', 'floor: 5.0 ±0.4', 'floor: 3.1 ±0.4', -1],
] as const)('%s', (_, id, passes, fails, deeper) => {
  const key = passes.split(':')[0]!;
  const limits = passes.slice(passes.indexOf('±'));
  const at = (mm: number) => findings(passes, `${key}: ${(Math.round(mm * 100) / 100).toFixed(2)} ${limits}`);
  const nearest = (finding: Finding): number => Number(/(\d+\.\d+) mm/.exec(finding.mend)![1]);

  test('is told with its place, what is left and the causes', () => {
    const [finding] = findings(passes, fails);
    expect(finding!.id).toBe(id);
    expect(finding!.what).toMatch(
      / (?:of wood are|no wood is) left at worst, at x -?[\d.]+, y -?[\d.]+ mm(?:: |. They overlap by )[\d.]+ mm as drawn, and that may be off by ±/,
    );
  });

  test('the depth it names passes, 0.05 mm more does not', () => {
    // A floor that breaks through is mended to where it no longer does; then to where it is thick enough.
    let mm = nearest(findings(passes, fails)[0]!);
    const again = at(mm)[0];
    if (again) mm = nearest(again);
    expect(at(mm)).toEqual([]);
    const [more] = at(mm + deeper * 0.05);
    expect(more!.id).toBe('floor-too-thin');
  });
});
