/** The gauge of a screw has a published row. */
import { row } from '../../facts/row.ts';
import { screws, SHANK_SOURCE } from '../../reference/screws.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { screwedHoles } from '../screws.ts';

const check: Check = {
  id: 'screw-gauge-not-listed',
  stage: 'spec',
  severity: 'error',
  why: 'Without the diameter of its thread nothing can be said of its pilot.',
  mend: 'Name a screw of a listed gauge.',
  example: { file: 'models/plant/plant.yaml', passes: 'gauge: 6,', fails: 'gauge: 7,' },
  run: (bench) =>
    screwedHoles(bench).flatMap(({ hole, name }) => {
      const gauge = look(bench.facts, (use) => {
        const { gauge: leaf } = row(bench.subject.plant.screws, use(hole.screw), 'plant.screws');
        return { id: leaf.id, value: use(leaf).value, text: leaf.text };
      });
      if (!gauge || Object.hasOwn(screws, gauge.value)) return [];
      const listed = Object.keys(screws).join(', ');
      return [
        {
          at: gauge.id,
          what: `${name} has gauge ${gauge.text}; the gauges listed here are ${listed} (${SHANK_SOURCE}).`,
          mend: `Name a screw of gauge ${listed}.`,
          against: [{ at: hole.screw.id, text: 'used here' }],
        },
      ];
    }),
};
export default check;
