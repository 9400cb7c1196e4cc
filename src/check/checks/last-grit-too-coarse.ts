/** The last belt before the glue is as fine as the adhesive asks. */
import { partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import { machineNumber } from '../../facts/station-machine.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { rect, ring, scratches, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'last-grit-too-coarse',
  stage: 'derived',
  severity: 'error',
  why: 'In deep scratches the glue stands thick and weak, and the line shows at the edge.',
  mend: 'Put a finer belt last, or take what the adhesive’s sheet allows.',
  example: { file: 'models/plant/plant.yaml', passes: 'grit: 100', fails: 'grit: 70' },
  sketch: section(
    shape(rect(2, 4, 58, 12), 'soft'),
    slab({ bottom: 6, fill: 'cap', under: scratches(58, 2, 6, 2) }),
    slab({ top: 9.4, face: scratches(2, 58, 9.4, 2) }),
    ring(30, 8.6, 4),
  ),
  run: ({ subject: { spec, plant }, facts }) => {
    if (!partsOf(spec).includes('cap')) return [];
    const seen = look(facts, (use) => {
      const line = use(spec.line);
      const name = use(wanted(row(plant.lines, line, 'plant.lines').adhesive, `plant.lines.${line}.adhesive`));
      const coarsest = wanted(
        row(plant.adhesives, name, 'plant.adhesives')['last-grit'],
        `plant.adhesives.${name}.last-grit`,
      );
      const belt = use.fact('sizing.belts').at(-1);
      return belt === undefined
        ? undefined
        : {
            at: machineNumber(plant, use, 'sizing', 'grits')[belt]!.grit.id,
            last: use.fact('sizing.last-grit').value,
            coarsest: use(coarsest).value,
            id: coarsest.id,
          };
    });
    if (!seen || seen.last >= seen.coarsest) return [];
    return [
      {
        at: seen.at,
        what: `The last belt is grit ${seen.last}; the glue asks for grit ${seen.coarsest} or finer.`,
        mend: `Put a belt of grit ${seen.coarsest} or finer last.`,
        against: [{ at: seen.id, text: 'the coarsest the adhesive allows' }],
      },
    ];
  },
};
export default check;
