/** The route passes every station that a model needs, each once, and none before the work it takes up. */
import type { FlowStation } from '../../facts/flow.ts';
import type { Leaf } from '../../facts/leaf.ts';
import { present, readable } from '../../facts/row.ts';
import type { Bench, Check } from '../check.ts';
import { look } from '../check.ts';
import { sentence } from '../say.ts';

const check: Check = {
  id: 'route-out-of-order',
  stage: 'spec',
  severity: 'error',
  why: 'Stations post and travellers tick by the route: a body would come to a station before its wood is ready for it, or leave without work that nobody was told of.',
  mend: 'Write each station once, in the order the bodies pass them; what is done outside the department stands under `elsewhere`.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: '  - lamination\n  - press\n',
    fails: '  - press\n  - lamination\n',
  },
  run: (bench) => {
    const entries = entriesOf(bench);
    if (entries.length === 0) return [];
    const problems = [
      ...twiceIn(entries),
      ...earlyIn(entries, bench.flow),
      ...leftOutOf(entries, bench),
      ...elsewhereIn(entries, bench),
    ];
    const [first] = problems;
    if (!first) return [];
    return [
      {
        ...placed(first.at),
        what: sentence(problems.map(({ what }) => what).join('; ')),
        mend: sentence([...new Set(problems.map(({ mend }) => mend))].join('; ')),
        against: problems.flatMap(({ at, text, other, otherText = 'the other' }) => [
          ...(at === first.at ? [] : [{ ...placed(at), text }]),
          ...(other === undefined ? [] : [{ ...placed(other), text: otherText }]),
        ]),
        hangsOn: ['plant.route'],
      },
    ];
  },
};
export default check;

/** A line of the route. What stands there twice has one name: its place tells which. */
interface Entry {
  readonly at: Leaf<string>;
  readonly id: string;
}

const placed = ({ id, writing }: Leaf<string>) => ({ at: id, ...('place' in writing ? { place: writing.place } : {}) });

interface Problem {
  readonly at: Leaf<string>;
  readonly text: string;
  readonly what: string;
  readonly mend: string;
  readonly other?: Leaf<string>;
  readonly otherText?: string;
}

const entriesOf = (bench: Bench): readonly Entry[] => listIn(bench, bench.subject.plant.route);
const outsideOf = (bench: Bench): readonly Entry[] => listIn(bench, bench.subject.plant.elsewhere);

const listIn = ({ facts }: Bench, list: readonly Leaf<string>[] | undefined): readonly Entry[] =>
  readable(present(list) ?? []).flatMap((leaf) => {
    const id = look(facts, (use) => use(leaf));
    return id === undefined ? [] : [{ at: leaf, id }];
  });

const twiceIn = (entries: readonly Entry[]): Problem[] =>
  entries.flatMap(({ at, id }, i) => {
    const other = entries.findIndex((one) => one.id === id);
    return other === i
      ? []
      : [
          {
            at,
            text: 'again',
            what: `${id} stands in the route twice`,
            mend: `keep one ${id}`,
            other: entries[other]!.at,
            otherText: `where ${id} stands first`,
          },
        ];
  });

/** By the last of each, so that what stands twice is not told once more. */
function earlyIn(entries: readonly Entry[], flow: readonly FlowStation[]): Problem[] {
  return entries.flatMap(({ at, id }, i) => {
    const own = flow.find((station) => station.id === id && station.passes);
    const later = entries.find(
      (one, j) => j > i && own?.after.includes(one.id) && !entries.slice(0, i).some((before) => before.id === one.id),
    );
    if (!later || entries.slice(i + 1).some((again) => again.id === id)) return [];
    const what = `${id} stands before ${later.id}, and works on what comes from there`;
    return [
      {
        at,
        text: 'too early',
        what,
        mend: `move ${id} after ${later.id}`,
        other: later.at,
        otherText: `where ${later.id} stands`,
      },
    ];
  });
}

function leftOutOf(entries: readonly Entry[], bench: Bench): Problem[] {
  const { flow, subject } = bench;
  // What cannot be read may be what is missed: that is said already.
  if (entries.length < (present(subject.plant.route)?.length ?? 0)) return [];
  const listed = [...entries, ...outsideOf(bench)].map(({ id }) => id);
  return flow
    .filter(({ id, passes }) => passes && !listed.includes(id))
    .map(({ id }) => {
      // It belongs behind all whose work it takes up, and before the first that takes up its own.
      const own = flow.find((station) => station.id === id)!;
      const behind = entries.findLastIndex((one) => own.after.includes(one.id)) + 1;
      const next = entries.find((one) => flow.find((station) => station.id === one.id)?.after.includes(id));
      const [from, to] = [entries[behind] ?? entries.at(-1)!, next ?? entries.at(-1)!];
      const mend = `add ${id}, or write it under \`elsewhere\``;
      return {
        at: to.at,
        text: 'where it is missing',
        what: `the route leaves out ${id}`,
        mend,
        ...(from === to ? {} : { other: from.at, otherText: 'or before this' }),
      };
    });
}

/** What is said to be done outside, and is no station, or is one of the route as well. */
const elsewhereIn = (entries: readonly Entry[], bench: Bench): Problem[] =>
  outsideOf(bench).flatMap(({ at, id }): Problem[] => {
    const names = bench.flow.map((station) => station.id);
    const text = 'what is done outside';
    if (!names.includes(id))
      return [
        {
          at,
          text,
          what: `${id}, said to be done elsewhere, is not a station`,
          mend: `name one of ${names.join(', ')}`,
        },
      ];
    const other = entries.find((entry) => entry.id === id)?.at;
    if (other === undefined) return [];
    return [
      {
        at,
        text,
        what: `${id} stands in the route, and is said to be done elsewhere`,
        mend: 'keep one of the two',
        other,
        otherText: `where ${id} stands in the route`,
      },
    ];
  });
