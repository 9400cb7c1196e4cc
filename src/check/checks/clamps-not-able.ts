/** The side clamps press the edges as the adhesive asks, with air the machine may have. */
import type { Part } from '../../facts/parts.ts';
import { partsOf } from '../../facts/parts.ts';
import { machineNumber } from '../../facts/station-machine.ts';
import { formatNumber, withUnit } from '../../units/format.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'clamps-not-able',
  stage: 'derived',
  severity: 'error',
  why: 'A seam under too little pressure opens later; air above what the machine is made for bursts a hose beside a hand.',
  mend: 'Take a machine with more or larger cylinders, or another adhesive; never more air than the machine may have.',
  example: { file: 'models/plant/plant.yaml', passes: 'clamp-bore: 100', fails: 'clamp-bore: 50' },
  run: (bench) => partsOf(bench.subject.spec).flatMap((part) => fault(bench, part)),
};
export default check;

function fault({ subject, facts }: Bench, part: Part): Fault[] {
  const seen = look(facts, (use) => {
    const most = machineNumber(subject.plant, use, 'edge-gluing', 'clamp-most');
    const bore = machineNumber(subject.plant, use, 'edge-gluing', 'clamp-bore');
    return use.fact(`edge.${part}.seams`).value > 0
      ? { most: use(most), id: most.id, at: bore.id, gauge: use.fact(`edge.${part}.clamp-gauge`) }
      : undefined;
  });
  if (!seen) return [];
  const { most, id, at, gauge } = seen;
  const bar = (pa: number): string => withUnit(formatNumber(pa, most.unit, 1), most.unit);
  const [low, high] = [gauge.low ?? gauge.value, gauge.high ?? gauge.value];
  if (low > high)
    return [
      {
        at,
        what: `No air suits the thinnest and the thickest board of the ${part} alike: the thickest asks for ${bar(low)} at least, the thinnest bears ${bar(high)}.`,
        mend: 'Draw the limits of the rough thickness in, or take an adhesive with a wider band of pressure.',
        against: [{ at: `thickness.part.${part}.rough`, text: 'the rough thickness' }],
      },
    ];
  if (high <= most.value) return [];
  return [
    {
      at,
      what: `To close the seams of the ${part} the clamps need air of up to ${bar(high)}. The machine may be given ${bar(most.value)} at most.`,
      mend: 'Use cylinders of a larger bore, or more of them. Never set more air than the machine may have.',
      against: [{ at: id, text: 'the most air the machine may have' }],
    },
  ];
}
