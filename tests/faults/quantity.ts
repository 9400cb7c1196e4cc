/** Sizes as specs write them, read a second time by a reader of our own: in millimetres where they are lengths. */

export interface Size {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly unit: string;
}

const NUMBER = String.raw`[-\u2212]?(?:\d+-\d+/\d+|\d+/\d+|\d+\.?\d*|\.\d+)`;
const UNIT = String.raw`\s*(mm|in|"|deg|min|s|h|kPa|bar|%|°C|K|g/m²|kg|g)?\s*`;
const RANGE = new RegExp(`^(${NUMBER})\\.\\.(${NUMBER})${UNIT}$`);
const PLAIN = new RegExp(`^(${NUMBER})${UNIT}(?:±\\s*(${NUMBER})|\\+\\s*(${NUMBER})/-\\s*(${NUMBER}))?${UNIT}$`);

/** A size in millimetres, or in its own unit where that is no length; undefined where it cannot be read. */
export function sizeOf(value: unknown, bare: string): Size | undefined {
  const text = String(value).trim();
  const range = RANGE.exec(text);
  if (range) {
    const [low, high] = [toNumber(range[1]!), toNumber(range[2]!)];
    return scaled({ low, high, nominal: (low + high) / 2, unit: range[3] ?? bare });
  }
  const plain = PLAIN.exec(text);
  if (!plain) return undefined;
  const [, first, unit, both, up, down, after] = plain;
  const nominal = toNumber(first!);
  const high = nominal + toNumber(both ?? up ?? '0');
  const low = nominal - toNumber(both ?? down ?? '0');
  return scaled({ low, nominal, high, unit: unit ?? after ?? bare });
}

/** 1-1/2, 3/4, .748, −12 as a number. */
export function toNumber(text: string): number {
  const sign = /^[-\u2212]/.test(text) ? -1 : 1;
  const parts = text
    .replace(/^[-\u2212]/, '')
    .split(/[-/]/)
    .map(Number);
  const [a = 0, b = 1, c = 1] = parts;
  return sign * (parts.length === 3 ? a + b / c : parts.length === 2 ? a / b : a);
}

function scaled({ low, nominal, high, unit }: Size): Size {
  const by = unit === 'in' || unit === '"' ? 25.4 : 1;
  return { low: low * by, nominal: nominal * by, high: high * by, unit };
}

/** The text with its first number exchanged. */
export const withFirst = (text: string, change: (value: number) => string): string =>
  text.replace(new RegExp(NUMBER), (number) => change(toNumber(number)));

/** A number without the dust of binary arithmetic. */
export const plain = (value: number): string => String(Number(value.toFixed(6)));
