/** One model: its file, what it is based on, and its typed tree for each hand. */
import type { ModelSpec } from '../facts/spec.generated.ts';
import type { Hand } from '../facts/subject.ts';
import type { Finding, Place } from '../findings/finding.ts';
import { nearest, offer } from '../findings/nearest.ts';
import { unique } from '../findings/unique.ts';
import { merge } from './merge.ts';
import { mistake } from './mistakes.ts';
import type { Node } from './node.ts';
import { keysAt, valueAt } from './node.ts';
import type { Schema } from './schema.ts';
import { validate } from './schema.ts';
import type { Source } from './source.ts';
import { buildTree } from './tree.ts';

/** A model as one hand of it is built. */
export interface Variant {
  readonly hand: Hand;
  readonly spec: ModelSpec;
}

export interface ModelSource {
  /** The file's name without .yaml. */
  readonly id: string;
  readonly file: string;
  /** The right hand first; the left where the spec has one. None where the file cannot be read. */
  readonly variants: readonly Variant[];
  /** With all it is based on merged in; absent where that cannot be had. */
  readonly root?: Node;
  readonly findings: readonly Finding[];
}

export interface Catalogue {
  /** All model and base files by path without .yaml, relative to models/. */
  readonly sources: ReadonlyMap<string, Source>;
  readonly schema: Schema;
  /** Names in a table of the plant; undefined where a file of it cannot be read. */
  readonly names: (table: string) => readonly string[] | undefined;
}

export function readModel(id: string, catalogue: Catalogue): ModelSource {
  const source = catalogue.sources.get(id)!;
  const findings: Finding[] = [...source.findings];
  if (!source.root) return { id, file: source.file, variants: [], findings };
  const root = inherit(id, source.root, catalogue, [], findings);
  // Half a model says more wrong things than right ones: only what is wrong in its own lines.
  if (!root) {
    const { findings: own } = specOf(source.root, catalogue);
    findings.push(...own.filter((finding) => finding.id !== 'not-given'));
    return { id, file: source.file, variants: [], findings: unique(findings) };
  }
  const name = valueAt(root, 'model');
  if (name?.kind === 'scalar' && name.text !== id) {
    const mend = `Call it "${id}", or rename the file to ${name.text}.yaml.`;
    findings.push(
      mistake('id-is-not-file-name', { place: name.place, what: `This file holds model "${name.text}".`, mend }),
    );
  }
  const variants = hands(root, findings).map(([hand, node]) => {
    const { spec, findings: found } = specOf(node, catalogue, node);
    findings.push(...found);
    return { hand, spec };
  });
  return { id, file: source.file, variants, root, findings: unique(findings) };
}

/** The tree with everything it is based on merged in, nearest first; undefined where a base cannot be had. */
function inherit(
  id: string,
  own: Node,
  catalogue: Catalogue,
  chain: readonly Place[],
  findings: Finding[],
): Node | undefined {
  const named = valueAt(own, 'based-on');
  if (chain.length > 0 || named) findings.push(...unitsOf(own));
  if (named?.kind !== 'scalar' || named.text === '') return own;
  const seen = chain.findIndex((place) => place.file === named.place.file);
  if (seen >= 0) {
    findings.push(loop(id, chain.slice(seen)));
    return undefined;
  }
  const base = catalogue.sources.get(named.text);
  if (!base) {
    const known = [...catalogue.sources.keys()].filter((name) => name !== id);
    findings.push(
      mistake('file-missing', {
        place: named.place,
        what: `There is no models/${named.text}.yaml to start from.`,
        mend: offer(named.text, known),
      }),
    );
    return undefined;
  }
  findings.push(...base.findings);
  const under = base.root && inherit(named.text, base.root, catalogue, [...chain, named.place], findings);
  return under && merge(under, own, findings);
}

/** Every file says the unit of its own bare numbers: what it is based on, or what it is a base of, may have another. */
function unitsOf(own: Node): Finding[] {
  const units = valueAt(own, 'units');
  const first = own.kind === 'map' ? [...own.entries.values()][0] : undefined;
  // A misspelt key is said by the schema.
  const misspelt = own.kind === 'map' && nearest('units', own.entries.keys()) !== undefined;
  if (!units && first && !misspelt) {
    const what = '"units" is missing in this file.';
    return [
      mistake('not-given', { place: first.key, what, mend: 'Add "units: mm" or "units: in".', about: ['units'] }),
    ];
  }
  if (units?.kind !== 'scalar' || units.text === 'mm' || units.text === 'in') return [];
  const what = `units cannot be "${units.text}".`;
  return [mistake('not-a-choice', { place: units.place, what, mend: 'Choices: mm, in.', about: ['units'] })];
}

/** `ring`: the based-on lines that lead back to the first of them. */
function loop(id: string, ring: readonly Place[]): Finding {
  const by = ring.length > 1 ? `, by way of ${ring.length - 1} more ${ring.length === 2 ? 'file' : 'files'}` : '';
  return mistake('based-on-loop', {
    place: ring[0]!,
    what: `${id} is based on itself${by}.`,
    mend: 'Break the ring: one file has to start from nothing.',
    notes: ring.slice(1).map((place) => ({ place, text: 'this file is in the ring' })),
  });
}

/** One tree a hand: the spec itself, and with `handed.left` laid over it by the rules of based-on. */
function hands(root: Node, findings: Finding[]): [Hand, Node][] {
  const left = valueAt(root, 'handed', 'left');
  if (left?.kind !== 'map' || root.kind !== 'map') return [['right', root]];
  return [
    ['right', root],
    ['left', { ...merge(root, left, findings), place: root.place }],
  ];
}

/** `whole`: where names of the model itself are looked up; of half a model they are not. */
function specOf(node: Node, { schema, names: ofPlant }: Catalogue, whole?: Node) {
  const findings = validate(schema, node, '');
  const ofModel = (table: string) => whole && keysAt(whole, table.slice('spec.'.length));
  const names = (table: string) => (table.startsWith('spec.') ? ofModel(table) : ofPlant(table));
  const spec = buildTree(node, '', { schema, kind: 'given', names, findings }) as ModelSpec;
  return { spec, findings };
}
