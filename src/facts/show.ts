/** The value of a fact as one line of text, for traces and lists. */
import { formatQuantity } from '../units/format.ts';
import type { Quantity } from '../units/quantity.ts';

export function showValue(value: unknown): string {
  if (typeof value === 'string') return value;
  if (value instanceof Int16Array || value instanceof Map) return 'a table';
  if (value instanceof Float64Array) return `a line of ${value.length / 2} points`;
  if (isQuantity(value)) return formatQuantity(value);
  if (Array.isArray(value)) {
    if (value.length > 0 && value.every((one) => typeof one === 'string')) return value.join(' ');
    return typeof value[0] === 'number' ? `${value.length} numbers` : `${value.length} things`;
  }
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value)
      .filter(([, part]) => part !== undefined && typeof part !== 'function')
      .map(([key, part]) => `${key} ${showValue(part)}`)
      .join(', ');
  }
  if (value === undefined) return 'none';
  return typeof value === 'number' || typeof value === 'boolean' ? String(value) : 'a thing';
}

const isQuantity = (value: unknown): value is Quantity =>
  typeof value === 'object' && value !== null && 'kind' in value && 'decimals' in value;
