// Validators of the published schemas as code: compiling a schema when the program starts costs more than all else it does.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import standalone from 'ajv/dist/standalone/index.js';

/** Words of ours in the schemas, beside the standard's. */
const OURS = ['quantity', 'positive', 'limits', 'whole', 'refers', 'plausible', 'possible', 'set'];

export function validators(dir) {
  const ajv = new Ajv2020({
    allErrors: true,
    verbose: true,
    strict: true,
    strictTypes: false,
    strictRequired: false,
    code: { source: true },
  });
  ajv.addVocabulary(OURS);
  const names = ['model', 'plant'];
  for (const name of names) ajv.addSchema(JSON.parse(readFileSync(join(dir, `${name}.schema.json`), 'utf8')), name);
  const code = standalone.default(ajv, Object.fromEntries(names.map((name) => [name, name])));
  return `// @ts-nocheck
// Written by src/build/validators.mjs from models/schemas/.
import { createRequire } from 'node:module';
import type { ValidateFunction } from 'ajv/dist/2020.js';
const require = createRequire(import.meta.url);
const exports = {};
${code}
${names.map((name) => `export const ${name}: ValidateFunction = exports.${name};`).join('\n')}
`;
}
