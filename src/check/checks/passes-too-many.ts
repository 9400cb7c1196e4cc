/** No part needs more passes than the machine is meant to make. */
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { gap, line, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'passes-too-many',
  stage: 'derived',
  severity: 'caution',
  why: 'Pass after pass on one part means the wood was picked too thick: hours at the machine, and heat in the wood.',
  mend: 'Pick thinner stock, or let the stage before take more.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'widest: 650,',
    fails: 'widest: 650, most-passes: 2,',
  },
  sketch: section(
    slab({ top: -7 }),
    shape(rect(2, -7, 58, 6), 'removed'),
    line('M 2 -4.4 H 58 M 2 -1.8 H 58 M 2 0.8 H 58 M 2 3.4 H 58', 'thin'),
    line('M 2 6 H 58'),
    gap(30, -7, 6),
  ),
  run: (bench) =>
    partsOf(bench.subject.spec).flatMap((part) => [...fault(bench, 'planing', part), ...fault(bench, 'sizing', part)]),
};
export default check;

function fault({ subject: { plant }, facts }: Bench, station: 'planing' | 'sizing', part: Part): Fault[] {
  const seen = look(facts, (use) => {
    const at = row(plant.stations, station, 'plant.stations').machine;
    const most = row(plant.machines, use(wanted(at, 'machine')), 'plant.machines')['most-passes'];
    return most && { most: use(most).value, id: most.id, passes: use.fact(`${station}.${part}.passes`).value };
  });
  if (!seen || seen.passes <= seen.most) return [];
  return [
    {
      at: `${station}.${part}.passes`,
      what: `The ${part} needs ${seen.passes} passes at ${station}; no more than ${seen.most} are meant.`,
      mend: 'Pick thinner stock, or let the stage before take more.',
      against: [{ at: seen.id, text: 'how many passes are meant' }],
    },
  ];
}
