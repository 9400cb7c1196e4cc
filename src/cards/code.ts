/**
 * The content code of a card: a fingerprint of what it says. The same content has the same code through revisions, other
 * dates, other wording and other languages; another number, step, check or drawing has another.
 */
import { createHash } from 'node:crypto';
import type { Card, StationSheet } from './card.ts';

/** Letters and digits that cannot be taken for one another on a print: no I L O U, no 0 1. */
const ALPHABET = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
const LENGTH = 8;

/** Eight letters and digits in two groups, `7KQM-2FXD`: 30^8 = 6.6e11 codes. */
export const contentCode = (card: Card): string => codeOf(card);

/** The same of a station sheet. */
export const sheetCode = (sheet: StationSheet): string => codeOf(sheet);

/** The same of a text that somebody goes over. */
export const textCode = (text: string): string => codeOf(text);

function codeOf(content: unknown): string {
  const digest = createHash('sha256').update(canonical(content)).digest();
  let number = digest.readBigUInt64BE(0);
  let code = '';
  for (let i = 0; i < LENGTH; i++) {
    code += ALPHABET[Number(number % BigInt(ALPHABET.length))]!;
    number /= BigInt(ALPHABET.length);
  }
  return `${code.slice(0, 4)}-${code.slice(4)}`;
}

/** Where a number came from is no part of what the card says; nor is the aim between two limits, which prints nowhere. */
const UNSAID: ReadonlySet<string> = new Set(['fact', 'target']);

/** Keys sorted, what the card does not say left out. */
export function canonical(value: unknown): string {
  // The lines of a drawing: what is written of each number alone is written of all at once.
  if (Array.isArray(value) && value.every(Number.isFinite)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value === 'number' && Number.isFinite(value)) return String(value);
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const content = value as Readonly<Record<string, unknown>>;
  const keys = Object.keys(content).filter((key) => !UNSAID.has(key) && content[key] !== undefined);
  return `{${keys
    .toSorted()
    .map((key) => `${JSON.stringify(key)}:${canonical(content[key])}`)
    .join(',')}}`;
}
