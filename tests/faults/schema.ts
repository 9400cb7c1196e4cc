/** The published schemas, as far as faults need them: what may stand at a place, and what must. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: boolean | Schema;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly enum?: readonly string[];
  readonly const?: string;
  readonly pattern?: string;
  readonly minLength?: number;
  readonly refers?: string;
  readonly quantity?: string;
  readonly positive?: boolean;
  readonly whole?: boolean;
  readonly limits?: string;
  readonly plausible?: string;
  readonly if?: Schema;
  readonly then?: Schema;
  readonly else?: Schema;
  readonly allOf?: readonly Schema[];
  readonly $defs?: Readonly<Record<string, Schema>>;
}

const folder = join(import.meta.dirname, '..', '..', 'models', 'schemas');

export const schemaOf = (of: 'model' | 'plant'): Schema =>
  JSON.parse(readFileSync(join(folder, `${of}.schema.json`), 'utf8')) as Schema;

/** What a reference stands for, with what is said beside it. */
export function resolved(schema: Schema, root: Schema): Schema {
  if (schema.$ref === undefined) return schema;
  const { $ref, ...beside } = schema;
  return { ...root.$defs![$ref.slice('#/$defs/'.length)]!, ...beside };
}

/** Schema of a key of a map; `free` where the key is a name of the user's own. */
export function childOf(
  schema: Schema,
  key: string,
  root: Schema,
): { readonly schema: Schema; readonly free: boolean } | undefined {
  const own = schema.properties?.[key];
  if (own) return { schema: resolved(own, root), free: false };
  const other = schema.additionalProperties;
  return typeof other === 'object' ? { schema: resolved(other, root), free: true } : undefined;
}

/** Keys a map must have, given the ones it has. */
export function requiredKeys(schema: Schema, map: Readonly<Record<string, unknown>>): string[] {
  const branches = [schema, ...(schema.allOf ?? [])].flatMap((one) =>
    one.if === undefined ? [] : [(holds(one.if, map) ? one.then : one.else) ?? {}],
  );
  return [...(schema.required ?? []), ...branches.flatMap((branch) => branch.required ?? [])];
}

function holds(condition: Schema, map: Readonly<Record<string, unknown>>): boolean {
  if (!(condition.required ?? []).every((key) => key in map)) return false;
  return Object.entries(condition.properties ?? {}).every(([key, want]) => {
    const value = map[key];
    if (value === undefined) return true;
    return want.const === undefined ? (want.enum ?? []).includes(value as string) : value === want.const;
  });
}
