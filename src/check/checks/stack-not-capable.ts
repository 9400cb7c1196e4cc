/** What was measured of the causes of a distance leaves it far enough inside its limits. */
import { cutsOf } from '../../facts/cuts.ts';
import { pointsOf } from '../../facts/parts.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs, sayFact } from '../say.ts';
import { bell, plan, ring } from '../sketch.ts';

const check: Check = {
  id: 'stack-not-capable',
  stage: 'derived',
  severity: 'caution',
  why: 'Each cut is in by its own gauge, and still more bodies than planned come out with a floor too thin or a cavity too deep.',
  mend: 'Set the machine whose mean is off, find what makes it spread, or widen the limits where the body allows it.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'least: 1.33',
    fails: 'least: 2.00',
  },
  sketch: plan(bell(6, 5), ring(13, 8, 4.4)),
  run: (bench) => {
    const { spec } = bench.subject;
    return [
      ...cutsOf(spec).flatMap(({ kind, id }) => fault(bench, `likely.${kind}.${id}`, `${kind}.${id}.required`)),
      ...pointsOf(spec, 'machined').flatMap((point) =>
        fault(bench, `likely.body.machined.${point}`, `thickness.body.machined.${point}`),
      ),
    ];
  },
};
export default check;

function fault({ subject, facts }: Bench, id: `likely.${string}`, required: string): Fault[] {
  if (!facts.has(id)) return [];
  const seen = look(facts, (use) => ({
    likely: use.fact(id as 'likely.cavity.x'),
    least: use(subject.plant.plant!.capability!.least),
  }));
  // Of what nobody measured the worst case says all there is to say; of the thing itself, its own readings do.
  const cpk = seen?.likely.cpk;
  if (!seen || !cpk || seen.likely.measured.length === 0 || seen.likely.measured.includes(required)) return [];
  if (cpk.value >= seen.least.value) return [];
  const { mean, deviation, measured } = seen.likely;
  return [
    {
      at: required,
      what: `By what was measured ${sayFact(facts, required)} comes out at ${sayAs(mean, mean.value)} on average, with a standard deviation of ${sayAs(deviation, deviation.value)}: Cpk is ${sayAs(cpk, cpk.value)}, and the plant asks for at least ${sayAs(seen.least, seen.least.value)}.`,
      mend: `A spread ${sayAs(cpk, seen.least.value / cpk.value, 1)} times smaller would do, or limits as much wider, or a mean nearer to their middle.`,
      against: [
        ...measured.map((fact) => ({ at: `readings.${fact}`, text: 'the readings it is computed from' })),
        { at: 'plant.plant.capability.least', text: 'what the plant asks for' },
      ],
    },
  ];
}
