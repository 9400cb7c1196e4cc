/** No part needs more passes than the machine is meant to make. */
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { row, wanted } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';

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
