/** The wide belt's own taper leaves room within the limits of what it sizes. */
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { machineAt } from '../../facts/station-machine.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { ideal, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'taper-too-wide',
  stage: 'derived',
  severity: 'error',
  why: 'When the taper alone is as wide as the limits, every part is out at one corner, whatever the table is set to.',
  mend: 'Have the table set true, or widen the limits.',
  example: { file: 'models/plant/plant.yaml', passes: 'taper: 0.06', fails: 'taper: 0.25' },
  sketch: section(
    slab({ left: 3, right: 57, face: 'L 57 7' }),
    ideal('M 0 2 H 60 M 0 5 H 60'),
    ring(5, 0.4, 3, 'upper-right'),
    ring(55, 6.8, 3, 'upper-left'),
  ),
  run: (bench) => partsOf(bench.subject.spec).flatMap((part) => fault(bench, part)),
};
export default check;

function fault({ subject: { plant }, facts }: Bench, part: Part): Fault[] {
  const seen = look(facts, (use) => {
    const { taper } = machineAt(plant, use, 'sizing');
    return taper && { at: taper.id, taper: use(taper), sized: use.fact(`thickness.part.${part}.sized`) };
  });
  if (!seen) return [];
  const { at, taper, sized } = seen;
  const band = (sized.high ?? sized.value) - (sized.low ?? sized.value);
  if (taper.value < band) return [];
  return [
    {
      at,
      what: `The thickness of the ${part} may vary by ${say(sized, band)} in all, and the taper of the belt alone is ${say(taper, taper.value)}.`,
      mend: `Have the table set true to less than ${say(sized, band)}, or widen the limits of the sized ${part}.`,
      against: [{ at: `thickness.part.${part}.sized`, text: `the limits of the sized ${part}` }],
    },
  ];
}
