/** Edits nobody thought of: one scalar of one file, to another value that such a line may have. Seeded: the same every time. */
import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import type { Document, Scalar } from 'yaml';

export interface RandomEdit {
  readonly file: string;
  readonly path: string;
  readonly from: string;
  readonly to: string;
  readonly files: Readonly<Record<string, string>>;
}

/** Mulberry32: 32 bits of state, public domain. */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

interface Line {
  readonly file: string;
  readonly path: string;
  readonly key: string;
  readonly scalar: Scalar;
  readonly doc: Document;
}

export function randomEdits(files: Readonly<Record<string, string>>, seed: number): () => RandomEdit {
  const next = random(seed);
  const pick = <T>(all: readonly T[]): T => all[Math.floor(next() * all.length)]!;
  const texts = Object.keys(files).filter((file) => file.endsWith('.yaml'));
  const lines = texts.flatMap((file) => linesOf(file, files[file]!));
  return () => {
    const { file, path, scalar } = pick(lines);
    const from = textOf(scalar);
    const key = path.split('.').at(-1)!;
    const to = another(
      from,
      lines.filter((line) => line.key === key).map((line) => textOf(line.scalar)),
      next,
    );
    // In a document of its own: another edit starts from the sample again.
    const line = linesOf(file, files[file]!).find((one) => one.path === path)!;
    line.scalar.value = to;
    delete line.scalar.source;
    line.scalar.type = 'PLAIN';
    return { file, path, from, to, files: { ...files, [file]: line.doc.toString({ lineWidth: 0 }) } };
  };
}

function linesOf(file: string, text: string): readonly Line[] {
  const doc = parseDocument(text);
  const lines: Line[] = [];
  const visit = (node: unknown, path: readonly string[]): void => {
    if (isMap(node)) for (const { key, value } of node.items) visit(value, [...path, String(key)]);
    else if (isSeq(node)) node.items.forEach((item, i) => visit(item, [...path, String(i)]));
    else if (isScalar(node)) lines.push({ file, path: path.join('.'), key: path.at(-1) ?? '', scalar: node, doc });
  };
  visit(doc.contents, []);
  return lines;
}

const textOf = (scalar: Scalar): string => scalar.source ?? String(scalar.value);

/** A number a little off; a name for another of its kind; a text with a word more. */
function another(text: string, others: readonly string[], next: () => number): string {
  const number = /^(-?\d+(?:\.\d+)?)(.*)$/.exec(text);
  if (number && !text.includes('..') && !/^\d+[-/]\d/.test(text)) {
    const decimals = (number[1]!.split('.')[1] ?? '').length;
    const step = 10 ** -decimals * Math.ceil(next() * 4) * (next() < 0.5 ? -1 : 1);
    return `${(Number(number[1]) + step).toFixed(decimals)}${number[2]}`;
  }
  const unlike = [...new Set(others)].filter((other) => other !== text && !/\s/.test(other));
  if (unlike.length > 0 && !/\s/.test(text)) return unlike[Math.floor(next() * unlike.length)]!;
  return `${text} too`;
}
