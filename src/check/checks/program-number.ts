/** Program numbers have the plant's form, and none is used twice. */
import { Leaf } from '../../facts/leaf.ts';
import { namesOf, present } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'program-number',
  stage: 'spec',
  severity: 'error',
  why: 'The number is all that tells one cut from another at the machine: one that stands for two bodies cuts the wrong one.',
  mend: 'Give every set-up of every hand and model a number of its own.',
  example: { file: 'models/tarn.yaml', passes: "program: '4120'", fails: "program: '4110'" },
  run: (bench) => programsOf(bench.subject).flatMap((leaf) => [...form(bench, leaf), ...twice(bench, leaf)]),
};
export default check;

const programsOf = ({ spec }: Subject): readonly Leaf<string>[] =>
  namesOf(spec.setups).flatMap((id) => {
    const program = present((spec.setups as Record<string, { program?: Leaf<string> }>)[id])?.program;
    return program instanceof Leaf ? [program] : [];
  });

function form({ subject: { plant }, facts }: Bench, leaf: Leaf<string>): Fault[] {
  const seen = look(facts, (use) => {
    const digits = present(plant.plant)?.['program-digits'];
    return digits && { digits: use(digits).value, program: use(leaf), id: digits.id };
  });
  if (!seen || new RegExp(`^\\d{${seen.digits}}$`).test(seen.program)) return [];
  return [
    {
      at: leaf.id,
      what: `"${seen.program}" is not a program number: they have ${seen.digits} digits here.`,
      mend: 'Write it as the list of the machine shows it.',
      against: [{ at: seen.id, text: 'digits of a program number' }],
    },
  ];
}

/** Against the set-ups before it of this hand, the other hand, and all other models. */
function twice({ subject, facts, others }: Bench, leaf: Leaf<string>): Fault[] {
  const number = look(facts, (use) => use(leaf));
  if (number === undefined) return [];
  const own = programsOf(subject);
  const before = own.slice(0, own.indexOf(leaf));
  const elsewhere = others.flatMap((other) => (isRightOf(other, subject) ? [] : programsOf(other)));
  const same = [...before, ...elsewhere].find((other) => facts.peek(other) === number);
  if (!same) return [];
  const where = 'place' in same.writing ? same.writing.place.file : '';
  return [
    {
      at: leaf.id,
      what: `Program ${number} is used already${where ? `, in ${where}` : ''}.`,
      mend: 'Give this set-up a number of its own.',
      against: before.includes(same) ? [{ at: same.id, text: 'used here' }] : [],
    },
  ];
}

/** Of one model the left hand is told: it is the one that wants a number of its own. Of two models both. */
const isRightOf = (other: Subject, subject: Subject): boolean =>
  subject.hand === 'right' && other.hand === 'left' && idOf(other) === idOf(subject);

const idOf = ({ spec }: Subject): string => (spec.model instanceof Leaf ? spec.model.text : '');
