/**
 * The sides of a comparison, from what a user names: what joins the compiler, the ledger and `diff/`.
 *
 *     tarn          the model as its spec stands            released      all releases in force
 *     tarn@B        its release B                           a folder      another workspace, or another plant
 *     a .yaml file  a model, or a file of the plant, read in place of this workspace's own
 */
import type { Checked, CheckedModel, Compiled } from './compile.ts';
import { isError } from './compile.ts';
import { listOf } from './diff/changed-facts.ts';
import type { ModelState } from './diff/model-state.ts';
import type { Side } from './diff/notice.ts';
import { makeFacts } from './facts/facts.ts';
import { leavesOf } from './facts/leaves.ts';
import { once } from './facts/once.ts';
import { statesOf } from './facts/state.ts';
import type { FactState } from './facts/state.ts';
import { plantRow, present, readable } from './facts/row.ts';
import type { RenderedFinding } from './findings/render.ts';
import { renderFinding, where } from './findings/render.ts';
import type { Host } from './host/host.ts';
import { valueAt } from './read/node.ts';
import { readSource } from './read/source.ts';
import type { Release } from './release/record.ts';
import type { Released } from './releases.ts';

/** One side, and what keeps some of its models from being compared. */
export interface OpenedSide {
  readonly side: Side;
  readonly errors: readonly RenderedFinding[];
}

/** A model as its spec stands. */
export function stateOfModel({ id, title, revision, cards, hands }: CheckedModel, checked: Checked): ModelState {
  const facts = new Map(
    hands.map(({ subject, facts: all }) => [
      subject.hand as string,
      new Map(statesOf(all, subject).map((fact) => [fact.id, fact] as const)),
    ]),
  );
  const { texts, plant } = checked.workspace;
  const rows = once(() => new Set(leavesOf(plant).flatMap((leaf) => [leaf.id, listOf(leaf.id)])));
  const lines = once(() => {
    const leaves = [...hands.flatMap(({ subject }) => leavesOf(subject.spec)), ...leavesOf(plant)];
    const places = leaves.flatMap(({ id: leaf, writing }) =>
      'place' in writing ? [[leaf, writing.place] as const] : [],
    );
    // A list stands where its first item does.
    return new Map([...places.toReversed().map(([leaf, place]) => [listOf(leaf), place] as const), ...places]);
  });
  return {
    id,
    title,
    revision,
    cards,
    facts,
    plantHas: (leaf) => rows().has(leaf),
    where: (fact) => {
      const place = lines().get(fact);
      return place && where(place, texts).replace(/:\d+$/, '');
    },
  };
}

export function stateOfRelease({ model, title, revision, cards, facts, plant }: Release): ModelState {
  // It keeps whole rows: those that went into its cards.
  const rows = once(() => new Set(Object.keys(plant).map(plantRow)));
  const lines = once(() => new Set(Object.keys(plant).flatMap((leaf) => [leaf, listOf(leaf)])));
  return {
    id: model,
    title,
    revision,
    cards,
    plantHas: (leaf) => lines().has(leaf) || (rows().has(plantRow(leaf)) ? false : undefined),
    facts: new Map(
      Object.entries(facts).map(([hand, all]) => [hand, new Map(all.map((fact) => [fact.id, fact] as const))]),
    ),
  };
}

/**
 * These models of a compile; those with an error are left out, and their findings told. `whole`: its plant is compared as well.
 * `standsFor`: the file of the workspace that the one of this name was read in place of.
 */
export function sideOfCompile(
  name: string,
  { checked, models }: Compiled,
  ids: readonly string[],
  whole: boolean,
  standsFor?: string,
): OpenedSide {
  // A file that is read in place of one of the workspace is called what the user calls it.
  const called = (at: string) =>
    standsFor !== undefined && at.startsWith(standsFor) ? name + at.slice(standsFor.length) : at;
  const wanted = models.filter(({ id }) => ids.includes(id));
  const broken = [...checked.findings, ...wanted.flatMap(({ findings }) => findings)].filter(isError);
  const sound = wanted.filter((model) => model.cards.length > 0);
  const route = present(checked.workspace.plant.route);
  return {
    side: {
      name,
      models: sound.map((model) => calledBy(stateOfModel(model, checked), called)),
      ...(whole ? { plant: plantStates(checked) } : {}),
      ...(route ? { route: readable(route).map(({ text }) => text) } : {}),
    },
    errors: broken.map((finding) => {
      const shown = renderFinding(finding, checked.workspace.texts);
      return { ...shown, where: called(shown.where) };
    }),
  };
}

const calledBy = (state: ModelState, called: (at: string) => string): ModelState => ({
  ...state,
  where: (fact) => {
    const at = state.where?.(fact);
    return at === undefined ? undefined : called(at);
  },
});

/** Every line of the plant; what things are called in other languages is in no spec and on no card. */
function plantStates({ workspace }: Checked): ReadonlyMap<string, FactState> {
  const { names: _, ...plant } = workspace.plant;
  const facts = statesOf(makeFacts([]), { spec: plant as never });
  return new Map(facts.map((fact) => [fact.id, fact] as const));
}

/** The releases in force of a day, the latest of each model. */
export function sideInForce({ known }: Released): OpenedSide {
  const inForce = known.filter(({ released }) => released.standing.is === 'current');
  const latest = new Map(inForce.map(({ record }) => [record.model, record]));
  return { side: { name: 'released', models: [...latest.values()].map(stateOfRelease) }, errors: [] };
}

/** What a file holds: a model of that name, or rows of the plant. */
export function kindOfFile(bytes: Uint8Array): { readonly model: string } | 'plant' {
  const { root } = readSource('', bytes);
  const model = root && valueAt(root, 'model');
  return model?.kind === 'scalar' ? { model: model.text } : 'plant';
}

/** This workspace with a file of its own replaced, or one more. */
export function withFile(host: Host, name: string, bytes: Uint8Array): Host {
  const kind = kindOfFile(bytes);
  return laidOver(host, new Map([[placeOfFile(name, kind), bytes]]), () => false);
}

/** This workspace with that spec as its one model: bases and the plant stay. */
export function withSpec(host: Host, model: string, spec: Uint8Array): Host {
  const isModel = (path: string) => /^models\/[^/]+\.yaml$/.test(path);
  return laidOver(host, new Map([[`models/${model}.yaml`, spec]]), isModel);
}

/** The file of a workspace that a file of that name is read in place of. */
export const placeOfFile = (name: string, kind: ReturnType<typeof kindOfFile>): string =>
  kind === 'plant' ? `models/plant/${name}` : `models/${kind.model}.yaml`;

/** This workspace with another plant. */
export function withPlant(host: Host, plant: ReadonlyMap<string, Uint8Array>): Host {
  const files = new Map([...plant].map(([name, bytes]) => [`models/plant/${name}`, bytes] as const));
  return laidOver(host, files, (path) => path.startsWith('models/plant/'));
}

function laidOver(host: Host, files: ReadonlyMap<string, Uint8Array>, gone: (path: string) => boolean): Host {
  const own = (path: string) => !gone(path) && !files.has(path);
  return {
    ...host,
    list: (dir) =>
      [...host.list(dir).filter(own), ...[...files.keys()].filter((path) => path.startsWith(`${dir}/`))].toSorted(),
    read: (path) => files.get(path) ?? (own(path) ? host.read(path) : undefined),
    isBelow: (dir, path) => files.has(path) || host.isBelow(dir, path),
  };
}
