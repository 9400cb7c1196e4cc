/** Every finish offered has a band of grades, and every band belongs to a finish offered. */
import { namesOf, present } from '../../facts/row.ts';
import { placeOf } from '../../facts/placed.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'finish-without-grade',
  stage: 'spec',
  severity: 'error',
  why: 'Nobody could say which wood may go under the finish, and the picker would guess.',
  mend: 'Give the finish a band of grades, or take it off the list.',
  example: { file: 'models/tarn.yaml', passes: '  blue-clear: { figure: [select, fine] }\n', fails: '' },
  run: ({ subject: { spec }, facts }) => {
    if (!present(spec.finishes) || !present(spec.grades)) return [];
    const offered = look(facts, (use) => spec.finishes.map((leaf) => ({ id: leaf.id, name: use(leaf) })));
    if (!offered) return [];
    const without = offered
      .filter(({ name }) => namesOf(spec.grades[name]).length === 0)
      .map(({ id, name }): Fault => ({
        at: id,
        what: `No grades of wood are given for the finish ${name}.`,
        mend: `Add "${name}" to grades, with the steps that are allowed under it.`,
        against: [],
        hangsOn: ['grades'],
      }));
    const names = offered.map(({ name }) => name);
    const idle = namesOf(spec.grades)
      .filter((name) => !names.includes(name) && placeOf(spec.grades[name]) !== undefined)
      .map((name): Fault => ({
        at: `grades.${name}`,
        place: placeOf(spec.grades[name])!,
        what: `Grades of wood are given for the finish ${name}, which is not offered.`,
        mend: `Add "${name}" to finishes, or take the line out.`,
        against: [],
        hangsOn: ['finishes', 'grades'],
      }));
    return [...without, ...idle];
  },
};
export default check;
