/** Starting a model: a first spec, less what the file it is based on gives already, checked before it is said to pass. */
import { isMap, isScalar, parseDocument } from 'yaml';
import type { Document, YAMLMap } from 'yaml';
import { checkAll } from './compile.ts';
import type { Checked } from './compile.ts';
import { leavesOf } from './facts/leaves.ts';
import type { Finding } from './findings/finding.ts';
import { offer } from './findings/nearest.ts';
import type { Host } from './host/host.ts';
import { startSpec } from './starter/starter.ts';

export type StartedModel =
  | { readonly refused: string; readonly usage: boolean }
  | { readonly path: string; readonly findings: readonly Finding[]; readonly texts: ReadonlyMap<string, string> };

export function startModel(host: Host, id: string, basedOn: string | undefined, on: string): StartedModel {
  const refuse = (refused: string, usage = false): StartedModel => ({ refused, usage });
  if (!/^[a-z0-9][a-z0-9-]*$/.test(id))
    return refuse(`"${id}" cannot be a model: use lower-case letters, digits and hyphens.`, true);
  const path = `models/${id}.yaml`;
  if (host.read(path)) return refuse(`${path} is there already.`, true);
  const checked = checkAll(host, on);
  const bases = [...checked.workspace.texts.keys()].filter(
    (file) => file.endsWith('.yaml') && !file.startsWith('models/plant/'),
  );
  const names = bases.map((file) => file.slice('models/'.length, -'.yaml'.length));
  if (basedOn !== undefined && !names.includes(basedOn)) {
    return refuse(`There is no models/${basedOn}.yaml to start from. ${offer(basedOn, names)}`, true);
  }
  const started = startSpec(id, checked.workspace.plant, programsOf(checked));
  if ('missing' in started) return refuse(`No spec can be started: the plant has not ${started.missing.join(', ')}.`);
  const text =
    basedOn === undefined ? started.text : without(started.text, chain(checked, basedOn), basedOn, started.spare);
  const created = host.create(path, text);
  if ('failed' in created) return refuse(created.failed);
  const after = checkAll(host, on);
  const findings = [...after.findings, ...(after.models.find((model) => model.id === id)?.findings ?? [])];
  return { path, findings, texts: after.workspace.texts };
}

/** Program numbers of all models. */
function programsOf(checked: Checked): Set<string> {
  const specs = checked.models.flatMap(({ hands }) => hands.map(({ subject }) => subject.spec));
  return new Set(
    specs.flatMap((spec) =>
      leavesOf(spec)
        .filter((leaf) => leaf.id.endsWith('.program'))
        .map((leaf) => leaf.text),
    ),
  );
}

/** The base and what it is based on itself, nearest first. */
function chain(checked: Checked, basedOn: string): Document[] {
  const docs: Document[] = [];
  for (let name: unknown = basedOn; typeof name === 'string' && docs.length < 20;) {
    const doc: Document = parseDocument(checked.workspace.texts.get(`models/${name}.yaml`) ?? '');
    docs.push(doc);
    name = doc.get('based-on');
  }
  return docs;
}

/** Stay the model's own whatever the base gives: two models must not share them. */
const OWN = new Set(['model', 'title', 'revision', 'units', 'program']);

/** What a neck stands by in its pocket. */
const STANDING = ['heel', 'strings', 'board', 'screws'];

/** How a body is held goes with its fixture: where the base names none, its word for it is of another's. */
function isOwn(path: readonly string[], bases: readonly Document[]): boolean {
  const fixture = [...path.slice(0, -1), 'fixture'];
  return OWN.has(path.at(-1)!) || (path.at(-1) === 'hold' && !bases.some((base) => base.hasIn(fixture)));
}

/** The spec less every value a base gives already; a whole model as base leaves its names and its program numbers. */
function without(text: string, bases: readonly Document[], basedOn: string, spare: readonly string[]): string {
  const doc = parseDocument(text);
  const drop = (path: readonly string[]): void => {
    const node = path.length === 0 ? doc.contents : doc.getIn(path, true);
    if (isMap(node)) {
      for (const pair of node.items.slice()) drop([...path, String(isScalar(pair.key) ? pair.key.value : pair.key)]);
      if (path.length > 0 && node.items.length === 0) doc.deleteIn(path);
      return;
    }
    if (!isOwn(path, bases) && bases.some((base) => base.hasIn(path))) doc.deleteIn(path);
  };
  const whole = bases.some((base) => base.has('outline'));
  // Of a whole model the shape is taken over as one: cavities of the first spec would lie on top of its own.
  if (whole)
    for (const key of [
      'timber',
      'stages',
      'carve',
      'cavities',
      'holes',
      'channels',
      'covers',
      'contours',
      'edges',
      'outline',
      'neck',
      'bridge',
      'location',
      'grades',
    ])
      doc.delete(key);
  drop([]);
  // How high the base's neck stands, and its screws, were meant for another depth of the pocket.
  const standing = whole ? [] : STANDING.filter((key) => bases.some((base) => base.hasIn(['neck', key])));
  if (standing.length > 0) doc.setIn(['neck', 'remove'], doc.createNode(standing, { flow: true }));
  const free = [...spare];
  for (const path of [['setups'], ['handed', 'left', 'setups']]) {
    for (const setup of setupsOf(bases, path)) {
      const program = [...path, setup, 'program'];
      if (!doc.hasIn(program)) doc.setIn(program, free.shift());
    }
  }
  const { items } = doc.contents as unknown as YAMLMap;
  items.splice(3, 0, doc.createPair('based-on', basedOn) as (typeof items)[number]);
  return doc.toString({ lineWidth: 0 });
}

/** Set-ups to which a base gives a program: each wants a number of its own here. */
function setupsOf(bases: readonly Document[], path: readonly string[]): readonly string[] {
  const names = bases.flatMap((base) => {
    const setups = base.getIn(path);
    return isMap(setups) ? setups.items.map(({ key }) => String(isScalar(key) ? key.value : key)) : [];
  });
  return [...new Set(names)].filter((name) => bases.some((base) => base.hasIn([...path, name, 'program'])));
}
