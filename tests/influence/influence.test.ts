/**
 * What the trace says can move, moves; what it does not say, does not.
 *
 *   INFLUENCE_ALL=1       every plant number in every demo model; without it a seeded few in two of them
 *   INFLUENCE_ALL=tarn    every plant number, in that model
 */
import { expect, test } from 'vitest';
import { checkAll } from '../../src/compile.ts';
import { all as rules } from '../../src/derive/rules/all.generated.ts';
import { derive } from '../../src/derive/derive.ts';
import type { Derivation, Fact, Facts, Use } from '../../src/facts/facts.ts';
import { Leaf } from '../../src/facts/leaf.ts';
import { leavesOf } from '../../src/facts/leaves.ts';
import type { Subject } from '../../src/facts/subject.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { demoFiles } from '../cards/demo.ts';
import { seeded } from '../faults/seeded.ts';
import { others, same } from './perturb.ts';
import { deadEdges } from './dead-edges.ts';

const { INFLUENCE_ALL: everything } = process.env;

const models = checkAll(memoryHost(demoFiles())).models;
const subjects: readonly Subject[] = models.flatMap(({ hands }) => hands.map(({ subject }) => subject));
const right = subjects.filter(({ hand }) => hand === 'right');

const isNumber = (leaf: Leaf<unknown>): boolean => typeof Leaf.open(leaf) === 'object';

/** The tree with one leaf replaced; what does not hold it is shared. */
function withLeaf<T>(tree: T, from: Leaf<unknown>, to: Leaf<unknown>): T {
  if ((tree as unknown) === from) return to as T;
  if (tree instanceof Leaf || typeof tree !== 'object' || tree === null) return tree;
  let changed = false;
  const entries = Object.entries(tree).map(([key, one]) => {
    const replaced = withLeaf(one as unknown, from, to);
    changed ||= replaced !== one;
    return [key, replaced] as const;
  });
  if (!changed) return tree;
  return (Array.isArray(tree) ? entries.map(([, one]) => one) : Object.fromEntries(entries)) as T;
}

const changedLeaf = (leaf: Leaf<unknown>, value: unknown): Leaf<unknown> =>
  new Leaf(leaf.id, leaf.text, leaf.writing, value, leaf.asked);

const derivedOf = (facts: Facts): ReadonlyMap<string, Fact> =>
  new Map(facts.all().flatMap((fact) => (fact.origin.kind === 'derived' ? [[fact.id, fact] as const] : [])));

/** Ids of the facts that lie downstream of each leaf. */
function downstream(facts: ReadonlyMap<string, Fact>): ReadonlyMap<string, ReadonlySet<string>> {
  const above = new Map<string, Set<string>>();
  const upOf = (id: string): Set<string> => {
    const done = above.get(id);
    if (done) return done;
    const up = new Set<string>();
    above.set(id, up);
    for (const input of facts.get(id)?.inputs ?? []) {
      up.add(input);
      for (const one of upOf(input)) up.add(one);
    }
    return up;
  };
  const down = new Map<string, Set<string>>();
  for (const id of facts.keys())
    for (const up of upOf(id)) {
      if (!down.has(up)) down.set(up, new Set());
      down.get(up)!.add(id);
    }
  return down;
}

test('a plant number moves only what its trace says', { timeout: 7_200_000 }, () => {
  const chance = seeded(20261125);
  const named = right.filter(({ spec }) => everything?.split(',').includes(Leaf.open(spec.model)));
  const few = [right.find(({ spec }) => Leaf.open(spec.model) === 'tarn')!, right[0]!];
  const chosen = named.length > 0 ? named : everything ? right : few;
  let moved = 0;
  let tried = 0;
  const astray: string[] = [];
  for (const subject of chosen) {
    const before = derivedOf(derive(subject));
    const below = downstream(before);
    const numbers = leavesOf(subject.plant).filter(isNumber);
    const some = everything ? numbers : chance.shuffle([...numbers]).slice(0, 8);
    for (const leaf of some) {
      tried++;
      const [value] = others(Leaf.open(leaf));
      const after = derivedOf(derive({ ...subject, plant: withLeaf(subject.plant, leaf, changedLeaf(leaf, value)) }));
      const ids = [...before.keys()].filter((id) => !same(before.get(id)!.state, after.get(id)?.state));
      moved += ids.length;
      const may = below.get(leaf.id) ?? new Set();
      astray.push(
        ...ids.filter((id) => !may.has(id)).map((id) => `${Leaf.open(subject.spec.model)}: ${leaf.id} → ${id}`),
      );
      // A fact that is only there with the number changed would be missed above.
      expect([...after.keys()].filter((id) => !before.has(id))).toEqual([]);
    }
  }
  console.log(`${tried} numbers changed, ${moved} facts moved`);
  expect(astray).toEqual([]);
  expect(moved).toBeGreaterThan(everything ? 500 * chosen.length : 0);
});

/** One derivation run alone: every input as it was, but one. */
function alone(derivation: Derivation, values: ReadonlyMap<string, unknown>, id: string, value: unknown): unknown {
  const use = Object.assign(<T>(leaf: Leaf<T>): T => (leaf.id === id ? (value as T) : Leaf.open(leaf)), {
    fact: (asked: string) => {
      if (asked === id) return value;
      if (!values.has(asked)) throw new Error(`not to be had: ${asked}`);
      return values.get(asked);
    },
  }) as Use;
  try {
    return derivation.value(use);
  } catch {
    // What cannot be computed with this value has looked at it.
    return LOOKED;
  }
}
const LOOKED = Symbol('looked at it');

test('every edge of the graph is live: what is read makes a difference somewhere', { timeout: 7_200_000 }, () => {
  const words = wordsByKind();
  const known = new Set(deadEdges.flatMap(({ edges }) => edges));
  const seen = new Set<string>();
  const live = new Set<string>();
  const chosen = everything ? subjects : right;
  for (const subject of chosen) {
    const facts = derive(subject);
    const values = new Map(facts.all().flatMap(({ id, state }) => (state.ok ? [[id, state.value] as const] : [])));
    for (const derivation of rules.flatMap((rule) => rule(subject))) {
      const fact = facts.fact(derivation.id)!;
      if (!fact.state.ok) continue;
      for (const input of new Set(fact.inputs)) {
        const edge = `${general(derivation.id)} ← ${general(input)}`;
        seen.add(edge);
        // In the short run an edge on the list is taken at its word.
        if (live.has(edge) || !values.has(input) || (!everything && known.has(edge))) continue;
        const moves = [...others(values.get(input)), ...(words.get(general(input)) ?? [])].some(
          (value) => !same(alone(derivation, values, input, value), fact.state.ok ? fact.state.value : undefined),
        );
        if (moves) live.add(edge);
      }
    }
  }
  const dead = [...seen].filter((edge) => !live.has(edge)).toSorted();
  console.log(`${seen.size} kinds of edges, ${live.size} live`);
  expect({
    'new dead edges': dead.filter((edge) => !known.has(edge)),
    'live after all: take them off dead-edges.ts': everything ? [...known].filter((edge) => !dead.includes(edge)) : [],
  }).toEqual({ 'new dead edges': [], 'live after all: take them off dead-edges.ts': [] });
});

/** What is written in words in the same place elsewhere: what might stand there instead. */
function wordsByKind(): ReadonlyMap<string, ReadonlySet<unknown>> {
  const found = new Map<string, Set<unknown>>();
  for (const leaf of subjects.flatMap(({ spec, plant }) => [...leavesOf(spec), ...leavesOf(plant)])) {
    if (isNumber(leaf)) continue;
    const kind = general(leaf.id);
    found.set(kind, (found.get(kind) ?? new Set()).add(Leaf.open(leaf)));
  }
  return found;
}

/** Names people gave to things, in any model or in the plant: one kind of edge counts once, whatever it joins. */
const names: ReadonlySet<string> = new Set(
  subjects.flatMap(({ spec, plant }) =>
    [
      spec.cavities,
      spec.holes,
      spec.channels,
      spec.contours,
      spec.covers,
      spec.grades,
      ...Object.values(plant).filter((table) => typeof table === 'object' && !(table instanceof Leaf)),
      ...Object.values(plant.fixtures ?? {}).map(({ zones }) => zones),
    ].flatMap((table) => Object.keys(table ?? {})),
  ),
);
const parts: ReadonlySet<string> = new Set(['cap', 'back', 'slab', 'crown', 'face', 'land', 'top', 'glue-face']);

const general = (id: string): string =>
  id
    .replace(/#.*/, '')
    // Their names are those of other things too: a bridge.
    .replace(/\b(fittings?)\.[^.]+/, '$1.*')
    .split(/([.[\]@])/)
    // What an id begins with is ours: a press and a neck, whatever else is named so.
    .map((token, i) => (i > 0 && names.has(token) ? '*' : parts.has(token) ? '(part)' : token))
    .join('');
