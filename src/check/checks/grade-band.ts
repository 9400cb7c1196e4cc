/** Grades under each finish: known scales and steps, no gap in a band. */
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { offer } from '../../findings/nearest.ts';

const check: Check = {
  id: 'grade-band',
  stage: 'spec',
  severity: 'error',
  why: 'The picker reads the band from poor to good: a step left out in the middle, or one nobody knows, is picked by guess.',
  mend: 'Name the steps from the poorest to the best that are allowed, none left out between them.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'amber-shaded: { figure: [fine, exhibition] }',
    fails: 'amber-shaded: { figure: [plain, exhibition] }',
  },
  run: (bench) => {
    const { grades } = bench.subject.spec;
    return namesOf(grades).flatMap((finish) => namesOf(grades[finish]).flatMap((scale) => band(bench, finish, scale)));
  },
};
export default check;

function band({ subject: { spec, plant }, facts }: Bench, finish: string, scale: string): Fault[] {
  const steps = spec.grades[finish]![scale]!;
  const [first] = steps;
  if (!first) return [];
  const known = namesOf(plant.grades);
  if (!known.includes(scale)) {
    const seen = look(facts, (use) => use(first));
    if (seen === undefined) return [];
    return [
      {
        at: first.id,
        what: `"${scale}" is not a scale of grades here.`,
        mend: offer(scale, known),
        against: [],
        hangsOn: ['plant.grades'],
      },
    ];
  }
  const seen = look(facts, (use) => ({
    steps: steps.map((step) => ({ at: step.id, name: use(step) })),
    scale: plant.grades![scale]!.steps.map((step) => use(step)),
  }));
  if (!seen) return [];
  const unknown = seen.steps.filter(({ name }) => !seen.scale.includes(name));
  if (unknown.length > 0) {
    return unknown.map(({ at, name }) => ({
      at,
      what: `"${name}" is not a step of the scale ${scale}.`,
      mend: offer(name, seen.scale),
      against: [],
    }));
  }
  const places = seen.steps.map(({ name }) => seen.scale.indexOf(name));
  const missing = seen.scale
    .slice(Math.min(...places), Math.max(...places) + 1)
    .filter((_, i) => !places.includes(i + Math.min(...places)));
  if (missing.length === 0) return [];
  return [
    {
      at: first.id,
      what: `The band of ${scale} under the finish ${finish} leaves out ${missing.join(', ')}.`,
      mend: `Name ${missing.join(', ')} as well, or end the band before that gap.`,
      against: [],
    },
  ];
}
