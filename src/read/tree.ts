/**
 * From nodes to the typed tree the phases after reading work on: maps of leaves. Text becomes quantities here, and names
 * of rows are looked up. What is missing or unreadable becomes a hole; its finding is made here or by the schema.
 */
import type { Finding, Place } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import { Leaf, hole } from '../facts/leaf.ts';
import type { Asked, Range } from '../facts/leaf.ts';
import { markPlace } from '../facts/placed.ts';
import { kindName } from '../units/describe.ts';
import { parseQuantity } from '../units/parse.ts';
import { findUnit } from '../units/unit.ts';
import { isToleranced } from '../units/quantity.ts';
import type { Kind, Quantity } from '../units/quantity.ts';
import { withCauses } from '../units/arithmetic.ts';
import { mistake } from './mistakes.ts';
import type { MistakeId } from './mistakes.ts';
import type { Node, Scalar } from './node.ts';
import { resolved } from './schema.ts';
import type { Schema, SchemaNode } from './schema.ts';

export interface Building {
  readonly schema: Schema;
  readonly kind: 'given' | 'plant';
  /** Names that may be referred to, by table: `plant.machines`, `spec.cavities`; undefined where nobody can know them. */
  readonly names: (table: string) => readonly string[] | undefined;
  readonly findings: Finding[];
}

/** The tree of a whole file or model. `prefix` begins every id: '' for a model, 'plant.' for the plant. */
export function buildTree(root: Node, prefix: string, building: Building): unknown {
  return build(root, building.schema.root, prefix.replace(/\.$/, ''), root.place, building);
}

function build(node: Node | undefined, schema: SchemaNode, id: string, key: Place, building: Building): unknown {
  const shape = resolved(building.schema, schema);
  if (node === undefined) return hole(id);
  if (node.kind === 'scalar') return scalar(node, shape, id, building);
  if (node.kind === 'list') {
    const items = shape.items;
    if (!items) return hole(id);
    return inOwnOrder(node.items, shape).map((item) =>
      build(item, items, `${id}[${item.kind === 'scalar' ? item.text : ''}]`, item.place, building),
    );
  }
  if (!shape.properties && !shape.additionalProperties) return hole(id);
  const out: Record<string, unknown> = {};
  for (const [name, child] of children(node.entries.keys(), shape)) {
    const entry = node.entries.get(name)!;
    out[name] = build(entry.value, child, id === '' ? name : `${id}.${name}`, entry.key, building);
  }
  for (const name of shape.required ?? []) {
    if (!Object.hasOwn(out, name)) out[name] = hole(id === '' ? name : `${id}.${name}`);
  }
  return markPlace(out, key);
}

const inOwnOrder = (items: readonly Node[], { set }: SchemaNode): readonly Node[] =>
  set ? items.toSorted((a, b) => byName(textOf(a), textOf(b))) : items;

const textOf = (node: Node): string => (node.kind === 'scalar' ? node.text : '');

/** In an order of our own, the schema's and then that of the names: in which order a file gives things says nothing. */
function children(names: Iterable<string>, shape: SchemaNode): readonly (readonly [string, SchemaNode])[] {
  const own = Object.keys(shape.properties ?? {});
  const rank = (name: string) => (own.includes(name) ? own.indexOf(name) : own.length);
  return [...names]
    .toSorted((a, b) => rank(a) - rank(b) || byName(a, b))
    .flatMap((name) => {
      const child = childShape(shape, name);
      return child ? [[name, child] as const] : [];
    });
}

/** `hole-2` before `hole-10`. */
const byName = new Intl.Collator('en', { numeric: true }).compare;

function childShape(shape: SchemaNode, name: string): SchemaNode | undefined {
  if (shape.properties && Object.hasOwn(shape.properties, name)) return shape.properties[name];
  // Any other name must look like a name: it becomes a key and part of ids.
  return typeof shape.additionalProperties === 'object' && /^[a-z0-9][a-z0-9-]*$/.test(name)
    ? shape.additionalProperties
    : undefined;
}

function scalar(node: Scalar, shape: SchemaNode, id: string, building: Building): unknown {
  const writing = { kind: building.kind, place: node.place };
  if (node.text === '') return empty(node, shape, id, building);
  if (shape.quantity !== undefined) {
    const quantity = quantityOf(node, shape, id, building);
    return quantity ? new Leaf(id, node.text, writing, quantity, ranges(shape, quantity.kind)) : hole(id);
  }
  if (shape.type !== 'string') return hole(id);
  if (shape.enum && !shape.enum.includes(node.text)) return hole(id);
  if (shape.refers !== undefined && !refers(node, shape.refers, id, building)) return hole(id);
  return new Leaf(id, node.text, writing, node.text, shape.refers === undefined ? {} : { refers: shape.refers });
}

/** The ranges of the schema, read once more by the same parser that reads specs. */
const ranges = ({ plausible, possible }: SchemaNode, kind: Kind): Asked => ({
  ...(plausible === undefined ? {} : { plausible: rangeOf(plausible, kind) }),
  ...(possible === undefined ? {} : { possible: rangeOf(possible, kind) }),
});

function rangeOf(text: string, kind: Kind): Range {
  const range = parseQuantity(text, { kind });
  if (!range.ok || !isToleranced(range.quantity)) throw new Error(`the schema's range cannot be read: ${text}`);
  return { low: range.quantity.low, high: range.quantity.high, text };
}

/** What the schema takes for a text: a number or a name with nothing in it. */
function empty({ place }: Scalar, shape: SchemaNode, id: string, building: Building): never {
  if (shape.quantity !== undefined || shape.refers !== undefined) {
    const what = `Nothing is given for ${id.slice(id.lastIndexOf('.') + 1)}.`;
    building.findings.push(
      mistake('not-given', { place, what, mend: `Wanted: ${shape.description ?? 'a value.'}`, about: [id] }),
    );
  }
  return hole(id);
}

function refers(node: Scalar, table: string, id: string, building: Building): boolean {
  const known = building.names(table);
  if (known === undefined || known.includes(node.text)) return true;
  const what = table.slice(table.indexOf('.') + 1);
  const owner = table.startsWith('plant.') ? 'the plant' : 'this model';
  building.findings.push(
    mistake('no-such-name', {
      place: node.place,
      what: `"${node.text}" is not among the ${what} of ${owner}.`,
      mend: offer(node.text, known),
      about: [id],
      // A row that is gone or called otherwise is one mistake wherever a model names it, and another wherever the plant does:
      // what hangs under a finding of the plant is not said of the model.
      cause: `${building.kind} ${table}.${node.text}`,
    }),
  );
  return false;
}

function quantityOf(node: Scalar, shape: SchemaNode, id: string, building: Building): Quantity | undefined {
  const kind = kindOf(node.text, shape.quantity!);
  const parsed = parseQuantity(node.text, {
    kind,
    ...(kind === 'length' ? { defaultUnit: node.units } : kind === 'count' ? { defaultUnit: '' } : {}),
  });
  if (!parsed.ok) {
    const { code, text, mend } = parsed.problem;
    const unit = code.startsWith('unit-');
    building.findings.push(
      mistake(unit ? 'unit-unknown' : 'number-unreadable', { place: node.place, what: text, mend, about: [id] }),
    );
    return undefined;
  }
  const { quantity } = parsed;
  const wrong = against(quantity, shape);
  if (wrong) {
    building.findings.push(
      mistake(wrong.id, { place: node.place, what: `${node.text}: ${wrong.what}`, mend: wrong.mend, about: [id] }),
    );
    return undefined;
  }
  if (!isToleranced(quantity)) return quantity;
  const { value, low, high } = quantity;
  return {
    ...withCauses(quantity, [{ cause: id, sensitivity: 1, minus: low - value, plus: high - value }]),
    low,
    high,
  };
}

/** The kind the schema asks for; of a step that may be of any kind, the kind of the unit written after it. */
function kindOf(text: string, wanted: string): Kind {
  return wanted === 'any' ? (findUnit(text.replace(/^[\s\d.,/-]+/, ''))?.kind ?? 'count') : (wanted as Kind);
}

interface Wrong {
  readonly id: MistakeId;
  readonly what: string;
  readonly mend: string;
}

function against(quantity: Quantity, shape: SchemaNode): Wrong | undefined {
  const least = quantity.low ?? quantity.value;
  if (shape.positive && least <= 0) {
    return {
      id: 'not-positive',
      what: 'this must be greater than zero, at its low limit too.',
      mend: 'Look for a slipped sign, digit or limit.',
    };
  }
  if (shape.whole && !Number.isInteger(quantity.value)) {
    return { id: 'not-whole', what: 'this is counted in whole numbers.', mend: 'Give a whole number.' };
  }
  if (shape.limits === 'needed' && !isToleranced(quantity)) {
    return {
      id: 'limits-missing',
      what: `${kindName(quantity.kind)} needs limits, and has none.`,
      mend: 'Write the limits after it: ±0.10, +0.1/-0, or low..high.',
    };
  }
  return undefined;
}
