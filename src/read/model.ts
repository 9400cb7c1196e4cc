/** One model: its file, what it is based on, and its typed tree for each hand. */
import type { ModelSpec } from '../facts/spec.generated.ts';
import type { Hand } from '../facts/subject.ts';
import type { Finding, Place } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
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
  readonly findings: readonly Finding[];
}

export interface Catalogue {
  /** All model and base files by path without .yaml, relative to models/. */
  readonly sources: ReadonlyMap<string, Source>;
  readonly schema: Schema;
  /** Names in a table of the plant. */
  readonly names: (table: string) => readonly string[];
}

export function readModel(id: string, catalogue: Catalogue): ModelSource {
  const source = catalogue.sources.get(id)!;
  const findings: Finding[] = [...source.findings];
  const root = source.root && inherit(id, source.root, catalogue, [], findings);
  if (!root) return { id, file: source.file, variants: [], findings };
  const name = valueAt(root, 'model');
  if (name?.kind === 'scalar' && name.text !== id) {
    const mend = `Call it "${id}", or rename the file to ${name.text}.yaml.`;
    findings.push(
      mistake('id-is-not-file-name', { place: name.place, what: `This file holds model "${name.text}".`, mend }),
    );
  }
  const variants = hands(root, findings).map(([hand, node]) => ({ hand, spec: specOf(node, catalogue, findings) }));
  return { id, file: source.file, variants, findings: unique(findings) };
}

/** The tree with everything it is based on merged in, nearest first. */
function inherit(
  id: string,
  own: Node,
  catalogue: Catalogue,
  chain: readonly Place[],
  findings: Finding[],
): Node | undefined {
  const named = valueAt(own, 'based-on');
  if (named?.kind !== 'scalar' || named.text === '') return own;
  const seen = chain.find((place) => place.file === named.place.file);
  if (seen) {
    const notes = chain.map((place) => ({ place, text: 'this file is in the ring' }));
    const mend = 'Break the ring: one of them has to start from nothing.';
    findings.push(
      mistake('based-on-loop', {
        place: chain[0]!,
        what: `${id} is based on itself, by way of these files.`,
        mend,
        notes: notes.slice(1),
      }),
    );
    return own;
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
    return own;
  }
  findings.push(...base.findings);
  const under = base.root && inherit(named.text, base.root, catalogue, [...chain, named.place], findings);
  return under && merge(under, own, findings);
}

/** One tree a hand: the spec itself, and with `handed.left` laid over it by the rules of based-on. */
function hands(root: Node, findings: Finding[]): [Hand, Node][] {
  const left = valueAt(root, 'handed', 'left');
  if (left?.kind !== 'map' || root.kind !== 'map') return [['right', root]];
  return [
    ['right', root],
    ['left', merge(root, left, findings)],
  ];
}

function specOf(node: Node, catalogue: Catalogue, findings: Finding[]): ModelSpec {
  findings.push(...validate(catalogue.schema, node, ''));
  const names = (table: string): readonly string[] =>
    table.startsWith('spec.') ? keysAt(node, table.slice('spec.'.length)) : catalogue.names(table);
  return buildTree(node, '', { schema: catalogue.schema, kind: 'given', names, findings }) as ModelSpec;
}

/** Both hands, and models on one base, meet the same mistake: it is said once. */
export function unique(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const key = `${finding.id} ${finding.place.file} ${finding.place.start} ${finding.what}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
