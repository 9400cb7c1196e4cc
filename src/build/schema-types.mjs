// TypeScript types of the published schemas. Every scalar of a spec becomes a `Leaf`: a value that keeps its place and
// can only be opened by something that puts the use on record.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compile } from 'json-schema-to-typescript';

const kindType = (kind) => (kind === 'any' ? 'Quantity' : `Quantity<'${kind}'>`);

/** The type of a scalar node, or undefined for a map or a list. */
function leafType(node) {
  if (node.quantity) return `Leaf<${kindType(node.quantity)}>`;
  if (node.enum) return `Leaf<${node.enum.map((value) => `'${value}'`).join(' | ')}>`;
  if (node.type === 'string') return 'Leaf<string>';
  return undefined;
}

/** The schema with scalars replaced by their leaf types and conditions left out: they narrow values, not shapes. */
function shapes(node) {
  if (Array.isArray(node)) return node.map(shapes);
  if (node === null || typeof node !== 'object') return node;
  const leaf = leafType(node);
  const { properties, required, additionalProperties, description } = node;
  if (leaf && properties) {
    const map = shapes({ type: 'object', properties, required, additionalProperties });
    return { description, anyOf: [{ tsType: leaf }, map] };
  }
  if (leaf) return { description, tsType: leaf };
  const {
    if: _if,
    then: _then,
    else: _else,
    allOf: _allOf,
    propertyNames: _names,
    minProperties: _least,
    minItems: _items,
    ...kept
  } = node;
  const out = {};
  for (const [key, value] of Object.entries(kept)) {
    out[key] =
      key === 'properties' || key === '$defs'
        ? Object.fromEntries(Object.entries(value).map(([name, child]) => [name, shapes(child)]))
        : shapes(value);
  }
  return out;
}

export async function schemaTypes(dir) {
  const parts = [];
  for (const name of ['model', 'plant']) {
    const schema = JSON.parse(readFileSync(join(dir, `${name}.schema.json`), 'utf8'));
    const options = { bannerComment: '', additionalProperties: false, maxItems: -1, format: false };
    parts.push(
      `export namespace ${name === 'model' ? 'Model' : 'Plant'} {\n${await compile(shapes(schema), schema.title, options)}}\n`,
    );
  }
  const head = `// Written by src/build/schema-types.mjs from models/schemas/.
import type { Leaf } from './leaf.ts';
import type { Quantity } from '../units/quantity.ts';
`;
  const tail = 'export type ModelSpec = Model.ModelSpec;\nexport type PlantSpec = Plant.PlantSpec;\n';
  return `${head}\n${parts.join('\n')}\n${tail}`;
}
