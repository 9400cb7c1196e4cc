/** The value of a fact as one line of text, for traces and lists. */
import { formatQuantity } from '../units/format.ts';
import type { Quantity } from '../units/quantity.ts';

export function showValue(value: unknown): string {
  if (typeof value === 'string') return value;
  if (value instanceof Float64Array) return `a line of ${value.length / 2} points`;
  if (isQuantity(value)) return formatQuantity(value);
  if (Array.isArray(value)) return `${value.length / 2} points`;
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value)
      .map(([key, part]) => `${key} ${showValue(part)}`)
      .join(', ');
  }
  return String(value);
}

const isQuantity = (value: unknown): value is Quantity =>
  typeof value === 'object' && value !== null && 'kind' in value && 'decimals' in value;
