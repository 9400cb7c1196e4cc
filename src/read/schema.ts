/** Validation against a published schema: each fault a finding at the key or value it concerns. */
import type { ErrorObject, ValidateFunction } from 'ajv/dist/2020.js';
import type { Finding, Place } from '../findings/finding.ts';
import { nearest, offer } from '../findings/nearest.ts';
import { mistake } from './mistakes.ts';
import type { Node } from './node.ts';
import { plain } from './node.ts';

/** A schema node as the reader walks it. `quantity` and what follows are this project's own words beside the standard's. */
export interface SchemaNode {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: SchemaNode | boolean;
  readonly items?: SchemaNode;
  readonly enum?: readonly string[];
  readonly description?: string;
  readonly pattern?: string;
  /** A number with a unit of this kind. */
  readonly quantity?: string;
  /** It must be greater than nothing. */
  readonly positive?: boolean;
  /** It must have limits. */
  readonly limits?: 'needed';
  /** It must be a whole number. */
  readonly whole?: boolean;
  /** It names a row of this table. */
  readonly refers?: string;
  /** Of a list: in which order its items are given says nothing. */
  readonly set?: true;
  /** A range, with its unit, outside of which a number was hardly meant. */
  readonly plausible?: string;
  /** A range, with its unit, outside of which there is no such thing. */
  readonly possible?: string;
}

export interface Schema {
  readonly root: SchemaNode & { readonly $defs?: Readonly<Record<string, SchemaNode>> };
  readonly validate: ValidateFunction;
}

/** A published schema with its validator, which is written from it when the program is built. */
export const loadSchema = (bytes: Uint8Array, validate: ValidateFunction): Schema => ({
  root: JSON.parse(new TextDecoder().decode(bytes)) as Schema['root'],
  validate,
});

/** The schema node with its reference followed. */
export function resolved(schema: Schema, node: SchemaNode): SchemaNode {
  if (!node.$ref) return node;
  const { $ref, ...own } = node;
  return { ...resolved(schema, schema.root.$defs![$ref.split('/').pop()!]!), ...own };
}

/** `prefix` begins the ids of facts: '' for a model, 'plant.' for the plant. */
export function validate(schema: Schema, node: Node, prefix: string): Finding[] {
  if (schema.validate(plain(node))) return [];
  const errors = schema.validate.errors ?? [];
  const gaps = new Map<string, string[]>();
  for (const { keyword, instancePath, params } of errors) {
    if (keyword !== 'required') continue;
    gaps.set(instancePath, [...(gaps.get(instancePath) ?? []), String(params['missingProperty'])]);
  }
  const idOf = (path: string) => prefix + path.slice(1).replace(/\//g, '.');
  const findings = errors
    .filter(({ keyword }) => keyword !== 'required')
    .flatMap((error) => {
      const id = idOf(error.instancePath);
      const meant = misspelt(error, gaps);
      const about = meant === undefined ? [id] : [under(id, meant), id];
      return explain(error, locate(node, error.instancePath), node).map((finding) => ({ ...finding, about }));
    });
  const missing = [...gaps].filter(([, words]) => words.length > 0);
  return [...findings, ...missing.map(([path, words]) => notGiven(locate(node, path).key, words, idOf(path)))];
}

const under = (id: string, key: string): string => (id === '' || id.endsWith('.') ? id + key : `${id}.${key}`);

/** The missing key a key nobody knows was meant to be: one slip is one finding, so it is taken off the gaps. */
function misspelt({ keyword, instancePath, params }: ErrorObject, gaps: Map<string, string[]>): string | undefined {
  if (keyword !== 'additionalProperties') return undefined;
  const words = gaps.get(instancePath) ?? [];
  const meant = nearest(String(params['additionalProperty']), words);
  if (meant !== undefined)
    gaps.set(
      instancePath,
      words.filter((word) => word !== meant),
    );
  return meant;
}

function notGiven(place: Place, words: readonly string[], id: string): Finding {
  const names = words.map((word) => `"${word}"`).join(' and ');
  return mistake('not-given', {
    place,
    what: `${names} ${words.length > 1 ? 'are' : 'is'} missing here.`,
    mend: `Add ${names}, here or in the file it is based on.`,
    about: words.map((word) => under(id, word)),
  });
}

interface Located {
  readonly key: Place;
  readonly value: Place;
  readonly node: Node | undefined;
  readonly name: string;
}

/** The node a JSON pointer means; where it is gone, the nearest one that is there. */
function locate(root: Node, pointer: string): Located {
  let at: Located = { key: root.place, value: root.place, node: root, name: 'this file' };
  // The place of a whole file is its first key: a caret under everything shows nothing.
  if (root.kind === 'map') {
    const first = [...root.entries.values()].toSorted((a, b) => a.key.start - b.key.start)[0];
    if (first) at = { ...at, key: first.key, value: first.key };
  }
  for (const part of pointer.split('/').slice(1)) {
    const name = part.replace(/~1/g, '/').replace(/~0/g, '~');
    if (at.node?.kind === 'map') {
      const entry = at.node.entries.get(name);
      if (!entry) return at;
      at = { key: entry.key, value: entry.value.place, node: entry.value, name };
    } else if (at.node?.kind === 'list') {
      const item = at.node.items[Number(name)];
      if (!item) return at;
      at = { key: item.place, value: item.place, node: item, name };
    }
  }
  return at;
}

function explain(error: ErrorObject, at: Located, root: Node): Finding[] {
  const schema = error.parentSchema as SchemaNode;
  const written = at.node?.kind === 'scalar' ? `"${at.node.text}"` : at.node?.kind === 'list' ? 'a list' : 'a map';
  switch (error.keyword) {
    case 'additionalProperties': {
      const key = String(error.params['additionalProperty']);
      const place = locate(root, `${error.instancePath}/${key.replace(/~/g, '~0').replace(/\//g, '~1')}`).key;
      const known = Object.keys(schema.properties ?? {});
      return [
        mistake('not-in-the-schema', { place, what: `Nothing here is called "${key}".`, mend: offer(key, known) }),
      ];
    }
    case 'enum':
      return [
        mistake('not-a-choice', {
          place: at.value,
          what: `${at.name} cannot be ${written}.`,
          mend: choices(at.node?.kind === 'scalar' ? at.node.text : '', schema.enum ?? []),
        }),
      ];
    case 'false schema':
      return [
        mistake('given-twice', {
          place: at.key,
          what: `"${at.name}" does not go together with what else is given here.`,
          mend: `Keep one of the two. ${schema.description ?? ''}`.trim(),
        }),
      ];
    case 'pattern':
      if (error.propertyName !== undefined) return [];
      return [
        mistake('wrong-form', {
          place: at.value,
          what: `${at.name} cannot be ${written}.`,
          mend: `Wanted: ${schema.description ?? `something like ${schema.pattern}`}`,
        }),
      ];
    case 'propertyNames': {
      const key = String(error.params['propertyName']);
      const place = locate(root, `${error.instancePath}/${key}`).key;
      return [
        mistake('wrong-form', {
          place,
          what: `"${key}" cannot be a name.`,
          mend: 'Use lower-case letters, digits and hyphens.',
        }),
      ];
    }
    case 'type':
    case 'minLength':
    case 'minItems':
    case 'minProperties':
      return [
        mistake('wrong-form', {
          place: at.node?.kind === 'scalar' ? at.value : at.key,
          what:
            at.node?.kind === 'scalar' && at.node.text === ''
              ? `Nothing is given for ${at.name}.`
              : `${at.name} is ${error.keyword === 'type' ? written : 'empty'}; that is not what is asked here.`,
          mend: `Write ${asked(schema)}. ${schema.description ?? ''}`.trim(),
        }),
      ];
    // A condition that failed says so through what it asks for.
    default:
      return [];
  }
}

function choices(written: string, known: readonly string[]): string {
  const near = nearest(written, known);
  return `${near === undefined ? '' : `Did you mean "${near}"? `}Choices: ${known.join(', ')}.`;
}

/** What the schema asks for, in words. */
function asked({ type, quantity, properties, additionalProperties }: SchemaNode): string {
  if (quantity !== undefined) return 'a number with its unit';
  if (type === 'array') return 'a list, as in [one, two]';
  if (type !== 'object') return 'a text';
  const [first] = Object.keys(properties ?? {});
  return `a map, as in { ${first ?? (additionalProperties ? 'name' : 'key')}: … }`;
}
