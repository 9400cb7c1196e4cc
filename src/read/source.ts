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
const MOST_NODES = 200_000;

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
  const findings = [...doc.errors, ...doc.warnings].map((error) => fromYaml(file, text, error));
  if (findings.length > 0) return { file, text, findings };
  const units: FileUnits = isMap(doc.contents) && (doc as Document).get('units') === 'in' ? 'in' : 'mm';
  const budget = { nodes: MOST_NODES };
  const root = convert(doc, doc.contents, { file, units, budget });
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
}

function convert(doc: Document.Parsed, node: ParsedNode | null, context: Context): Node {
  context.budget.nodes -= 1;
  const place = placeOf(context.file, node?.range);
  const empty: Node = { kind: 'scalar', place, units: context.units, text: '' };
  if (node === null || context.budget.nodes <= 0) return empty;
  if (isAlias(node)) return convert(doc, (node.resolve(doc) ?? null) as ParsedNode | null, context);
  if (isScalar(node)) return { ...empty, text: node.value === null ? '' : (node.source ?? '') };
  if (!isMap(node)) {
    return { kind: 'list', place, items: node.items.map((item) => convert(doc, item as ParsedNode | null, context)) };
  }
  const entries = new Map<string, Entry>();
  for (const pair of node.items) {
    const key = placeOf(context.file, pair.key.range);
    const value = convert(doc, pair.value, context);
    // A key with nothing after it has no place of its own: show the key.
    entries.set(isScalar(pair.key) ? (pair.key.source ?? '') : '', {
      key,
      value: value.kind === 'scalar' && value.text === '' ? { ...value, place: key } : value,
    });
  }
  return { kind: 'map', place, entries };
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
      what: `"${key}" is given twice in the same map.`,
      mend: 'Keep one of the two.',
    });
  }
  return mistake('file-unreadable', {
    place,
    what: `This is not YAML: ${error.message.replace(/\s+/g, ' ')}`,
    mend: 'Look at the line and the one before it: an indent, a colon, a quote or a bracket is off. Tabs are not allowed for indents.',
  });
}
