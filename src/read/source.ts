/** From the bytes of a YAML file to nodes with places. Every fault of the file is a finding at its place. */
import { isAlias, isMap, isScalar, parseDocument } from 'yaml';
import type { Document, ParsedNode, Range, YAMLError } from 'yaml';
import type { Finding, Place } from '../findings/finding.ts';
import { mistake } from './mistakes.ts';
import type { Entry, FileUnits, Node } from './node.ts';

export interface Source {
  readonly file: string;
  readonly text: string;
  /** Undefined where the file cannot be read as YAML. */
  readonly root?: Node;
  readonly findings: readonly Finding[];
}

/** Enough for any spec written by hand; aliases that multiply past it are refused. */
const MOST_NODES = 50_000;

export function readSource(file: string, bytes: Uint8Array): Source {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const place = { file, start: 0, end: 0 };
    const finding = mistake('file-unreadable', {
      place,
      what: 'This file is not UTF-8 text.',
      mend: 'Save it as UTF-8 from your editor.',
    });
    return { file, text: '', findings: [finding] };
  }
  const doc = parseDocument(text, { schema: 'core', stringKeys: true, prettyErrors: false });
  const findings = worthSaying([...doc.errors, ...doc.warnings]).map((error) => fromYaml(file, text, error));
  if (findings.length > 0) return { file, text, findings };
  const units: FileUnits = isMap(doc.contents) && (doc as Document).get('units') === 'in' ? 'in' : 'mm';
  const budget = { nodes: MOST_NODES };
  const root = convert(doc.contents, { file, units, budget, anchors: new Map(), inside: [] });
  if (budget.nodes > 0 && root.kind === 'map') return { file, text, root, findings };
  const finding = mistake('file-unreadable', {
    place: { file, start: 0, end: Math.min(text.length, 1) },
    what:
      budget.nodes > 0
        ? 'This file has no keys: a spec is a map of key: value lines.'
        : 'This file repeats itself by aliases without end.',
    mend:
      budget.nodes > 0
        ? 'Start it with a first line such as "model: name".'
        : 'Write the values out, or move what is shared to a file and use based-on.',
  });
  return { file, text, findings: [finding] };
}

interface Context {
  readonly file: string;
  readonly units: FileUnits;
  readonly budget: { nodes: number };
  /** What an alias stands for: the node its anchor was met at last. */
  readonly anchors: Map<string, ParsedNode>;
  /** The nodes this one is inside of. */
  readonly inside: readonly ParsedNode[];
}

function convert(node: ParsedNode | null, outer: Context): Node {
  const context = node === null ? outer : { ...outer, inside: [...outer.inside, node] };
  context.budget.nodes -= 1;
  const place = placeOf(context.file, node?.range);
  const empty: Node = { kind: 'scalar', place, units: context.units, text: '' };
  if (node === null || context.budget.nodes <= 0) return empty;
  if (isAlias(node)) return convertAlias(node.source, empty, context);
  if (node.anchor !== undefined) context.anchors.set(node.anchor, node);
  if (isScalar(node)) return { ...empty, text: node.value === null ? '' : (node.source ?? '') };
  if (!isMap(node)) {
    return { kind: 'list', place, items: node.items.map((item) => convert(item as ParsedNode | null, context)) };
  }
  const entries = new Map<string, Entry>();
  for (const pair of node.items) {
    const key = placeOf(context.file, pair.key.range);
    const value = convert(pair.value, context);
    // A key with nothing after it has no place of its own: show the key.
    entries.set(isScalar(pair.key) ? (pair.key.source ?? '') : '', {
      key,
      value: value.kind === 'scalar' && value.text === '' ? { ...value, place: key } : value,
    });
  }
  return { kind: 'map', place, entries };
}

/** An alias inside what it stands for would go on without end. */
function convertAlias(name: string, empty: Node, context: Context): Node {
  const target = context.anchors.get(name);
  if (target === undefined) return empty;
  if (!context.inside.includes(target)) return convert(target, context);
  context.budget.nodes = 0;
  return empty;
}

const placeOf = (file: string, range: Range | null | undefined): Place => ({
  file,
  start: range?.[0] ?? 0,
  end: range?.[1] ?? 0,
});

function fromYaml(file: string, text: string, error: YAMLError): Finding {
  const [start, end] = error.pos;
  const place = { file, start: Math.min(start, text.length), end: Math.min(end, text.length) };
  if (error.code === 'DUPLICATE_KEY') {
    const key = /^[^:\n]*/.exec(text.slice(place.start))![0].trim();
    return mistake('given-twice', {
      place,
      what: `"${key}" is given twice in the same place.`,
      mend: 'Keep one of the two.',
    });
  }
  return mistake('file-unreadable', { place, ...inWords(error) });
}

/** A file that is no YAML goes wrong again on every line after the first slip: that one, and keys given twice. */
function worthSaying(errors: readonly YAMLError[]): YAMLError[] {
  const slip = errors.find((error) => error.code !== 'DUPLICATE_KEY');
  return errors.filter((error) => error === slip || error.code === 'DUPLICATE_KEY');
}

function inWords({ code, message }: YAMLError): { what: string; mend: string } {
  if (code === 'TAB_AS_INDENT')
    return { what: 'A tab stands where an indent belongs.', mend: 'Use spaces for indents.' };
  if (code === 'MULTIPLE_DOCS') {
    return {
      what: 'A line of --- starts a second spec in this file.',
      mend: 'One file, one spec: take the line out, or move what follows to a file of its own.',
    };
  }
  return {
    what: `This is not YAML: ${message.replace(/\s+/g, ' ')}.`,
    mend: 'Look at the line and the one before it: an indent, a colon, a quote or a bracket is off.',
  };
}
