/** No wood is wasted under a finish that hides it. */
import { namesOf, row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'figure-under-opaque',
  stage: 'spec',
  severity: 'error',
  why: 'A figured cap under an opaque finish is paid for and never seen.',
  mend: 'End the band before the step that is wasted.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'black-opaque: { figure: [plain, select] }',
    fails: 'black-opaque: { figure: [plain, select, fine] }',
  },
  run: (bench) => namesOf(bench.subject.spec.grades).flatMap((finish) => fault(bench, finish)),
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, finish: string): Fault[] {
  const opaque = look(facts, (use) => use(row(plant.finishes, finish, 'plant.finishes').kind)) === 'opaque';
  if (!opaque) return [];
  return namesOf(spec.grades[finish]).flatMap((scale) => {
    const seen = look(facts, (use) => {
      const rows = row(plant.grades, scale, 'plant.grades');
      const wasted = rows['wasted-from'];
      const steps = rows.steps.map((step) => use(step));
      const from = wasted ? steps.indexOf(use(wasted)) : -1;
      return {
        from,
        steps,
        id: wasted?.id,
        band: spec.grades[finish]![scale]!.map((step) => ({ at: step.id, name: use(step) })),
      };
    });
    if (!seen || seen.from < 0) return [];
    return seen.band
      .filter(({ name }) => seen.steps.indexOf(name) >= seen.from)
      .map(({ at, name }): Fault => ({
        at,
        what: `Wood of the ${scale} "${name}" is wasted under the finish ${finish}, which hides it.`,
        mend: `Let the band end at ${seen.steps[seen.from - 1] ?? 'a poorer step'}.`,
        against: [{ at: seen.id!, text: 'the step from which wood is wasted under an opaque finish' }],
      }));
  });
}
