/** A cut is made by a kind of cutter that can make it. */
import type { Use } from '../../facts/facts.ts';
import type { Leaf } from '../../facts/leaf.ts';
import { namesOf, present, row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { cut, cuts, cutter, ideal, ring, section, slab } from '../sketch.ts';

type Kind = 'end-mill' | 'ball' | 'form' | 'drill' | 'facing';

const check: Check = {
  id: 'cutter-of-wrong-kind',
  stage: 'spec',
  severity: 'error',
  why: 'A drill fed sideways breaks, and its end flies; a ball cutter leaves no flat floor; a facing cutter does not plunge.',
  mend: 'Name a cutter of a kind that makes this cut.',
  example: { file: 'models/base/bolt-on.yaml', passes: 'cutter: mill-12', fails: 'cutter: d-11' },
  sketch: section(
    slab(),
    cuts(cut({ from: 14, to: 46, depth: 14, corner: 5 })),
    ideal('M 14 9 V 14 H 19 M 41 14 H 46 V 9'),
    cutter({ x: 41, tip: 14, width: 10, ball: true, flutes: 12 }),
    ring(15.6, 12.4, 3),
  ),
  run: (bench) => wanted(bench).flatMap((one) => fault(bench, one)),
};
export default check;

interface Wanted {
  readonly cutter: Leaf<string> | undefined;
  readonly what: string;
  readonly kinds: readonly Kind[];
}

const names: Readonly<Record<Kind, string>> = {
  'end-mill': 'an end mill',
  ball: 'a ball cutter',
  form: 'a form cutter',
  drill: 'a drill',
  facing: 'a facing cutter',
};

/** Common practice, no source: what each kind of cut is made with. */
const tops: Readonly<Record<string, readonly Kind[]>> = {
  flat: ['facing', 'end-mill'],
  bevelled: ['form', 'ball'],
  arched: ['ball'],
};

function wanted({ subject: { spec }, facts }: Bench): readonly Wanted[] {
  const top = look(facts, (use) => use(spec.carve.kind)) ?? 'flat';
  const setups = Object.entries(present(spec.setups) ?? {}).flatMap(([id, setup]): Wanted[] => {
    const cutters = present(present(setup)?.cutters);
    return [
      { cutter: cutters?.face, what: 'facing', kinds: ['facing', 'end-mill'] },
      { cutter: cutters?.perimeter, what: 'the perimeter', kinds: ['end-mill'] },
      { cutter: id === 'top' ? cutters?.carve : undefined, what: `the ${top} top`, kinds: tops[top] ?? [] },
    ];
  });
  const edges = (['top', 'back'] as const).map((side): Wanted => {
    const edge = present(present(spec.edges)?.[side]);
    return {
      cutter: edge?.cutter,
      what: `the edge at the ${side}`,
      kinds: edge?.ledge ? ['end-mill', 'form'] : ['form'],
    };
  });
  return [
    ...setups,
    ...edges,
    ...namesOf(spec.cavities).map((id): Wanted => ({
      cutter: spec.cavities![id]!.cutter,
      what: id,
      kinds: ['end-mill'],
    })),
    ...namesOf(spec.contours).map((id): Wanted => ({
      cutter: spec.contours![id]!.cutter,
      what: id,
      kinds: ['end-mill', 'ball', 'facing'],
    })),
    ...namesOf(spec.holes).map((id): Wanted => ({
      cutter: spec.holes![id]!.drill,
      what: id,
      kinds: ['drill', 'end-mill'],
    })),
    ...namesOf(spec.channels).map((id): Wanted => ({ cutter: spec.channels![id]!.drill, what: id, kinds: ['drill'] })),
  ];
}

function fault({ subject, facts }: Bench, { cutter, what, kinds }: Wanted): Fault[] {
  if (!cutter) return [];
  const seen = look(facts, (use) => kindOf(subject, use, cutter));
  if (!seen || kinds.includes(seen.kind)) return [];
  const or = kinds.map((kind) => names[kind]).join(' or ');
  return [
    {
      at: cutter.id,
      what: `${seen.title} is ${names[seen.kind]}; ${what} takes ${or}.`,
      mend: `Name ${or}.`,
      against: [{ at: seen.id, text: 'what kind of cutter it is' }],
    },
  ];
}

function kindOf({ plant }: Subject, use: Use, cutter: Leaf<string>) {
  const { kind, title } = row(plant.cutters, use(cutter), 'plant.cutters');
  return { kind: use(kind), title: use(title), id: kind.id };
}
