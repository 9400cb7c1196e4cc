/**
 * The fingerprint of a value: the same for the same value, however its numbers were written. A quantity counts by what it is
 * and its limits, not by the unit or the decimals somebody wrote, nor by the names of what may put it off.
 */
import { createHash } from 'node:crypto';
import type { Hash } from 'node:crypto';

export function fingerprint(value: unknown): string {
  const hash = createHash('sha256');
  feed(value, hash);
  return hash.digest('base64url').slice(0, 16);
}

/** Where a line stands in its file. */
const PLACE: ReadonlySet<string> = new Set(['place', 'writing']);

/** Of a quantity: how it was written. */
const SPELLING: ReadonlySet<string> = new Set(['unit', 'decimals', 'form', 'denominator', 'causes']);

function feed(value: unknown, hash: Hash): void {
  if (ArrayBuffer.isView(value)) {
    hash.update(value.constructor.name).update(new Uint8Array(value.buffer, value.byteOffset, value.byteLength));
  } else if (Array.isArray(value)) {
    hash.update('[');
    for (const item of value) feed(item, hash);
    hash.update(']');
  } else if (value instanceof Map) {
    feed([...(value as ReadonlyMap<unknown, unknown>)], hash);
  } else if (typeof value === 'object' && value !== null) {
    feedFields(value as Readonly<Record<string, unknown>>, hash);
  } else if (typeof value === 'number') {
    // Zero has no sign.
    hash.update(`${value + 0} `);
  } else if (typeof value !== 'function') hash.update(`${typeof value} ${JSON.stringify(value)} `);
}

function feedFields(value: Readonly<Record<string, unknown>>, hash: Hash): void {
  const quantity = 'kind' in value && 'decimals' in value && 'value' in value;
  hash.update('{');
  for (const key of Object.keys(value).toSorted()) {
    if (value[key] === undefined || typeof value[key] === 'function') continue;
    if (PLACE.has(key) || (quantity && SPELLING.has(key))) continue;
    hash.update(`${key}:`);
    feed(value[key], hash);
  }
  hash.update('}');
}
