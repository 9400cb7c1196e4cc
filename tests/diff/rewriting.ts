/** Other spellings of a spec: each function here leaves what it means as it is. */
import { Document, isAlias, isMap, isPair, isScalar, isSeq, parseDocument, visit } from 'yaml';
import type { Scalar } from 'yaml';
import type { Files } from './asked.ts';

export const isSpec = (path: string): boolean => path.endsWith('.yaml');

/** Every spec of a workspace written anew. */
export const everySpec = (files: Files, write: (text: string, path: string) => string): Files =>
  Object.fromEntries(Object.entries(files).map(([path, text]) => [path, isSpec(path) ? write(text, path) : text]));

/** No line is folded: a text broken in two is a case of its own. */
const plain = { lineWidth: 0 } as const;

/** A spec read, changed in place and written again. */
export function reworked(text: string, change: (document: Document.Parsed) => void): string {
  const document = parseDocument(text);
  change(document);
  return document.toString(plain);
}

/** The spec as plain data, in the order it is written. */
export const dataOf = (text: string): Record<string, unknown> => parseDocument(text).toJS() as Record<string, unknown>;

export const written = (data: unknown): string => new Document(data).toString(plain);

/** Every map the other way round, at every depth. Lists stay: the order of a list may mean something. */
export const reversed = (text: string): string =>
  reworked(text, (document) =>
    visit(document, {
      Map(_, map) {
        map.items.reverse();
      },
    }),
  );

/** In braces and brackets, or in lines and dashes. */
export const inStyle = (text: string, flow: boolean): string =>
  reworked(text, (document) =>
    visit(document, {
      Collection(_, node) {
        node.flow = flow;
      },
    }),
  );

/** Every text in quotes that was in none; numbers stay numbers. */
export const quoted = (text: string): string =>
  reworked(text, (document) =>
    visit(document, {
      Scalar(key, node) {
        if (key !== 'key' && typeof node.value === 'string') node.type = 'QUOTE_DOUBLE';
      },
    }),
  );

export const withoutComments = (text: string): string =>
  reworked(text, (document) => {
    document.comment = document.commentBefore = null;
    visit(document, {
      Node(_, node) {
        if (!isAlias(node)) node.comment = node.commentBefore = null;
      },
    });
  });

/** Keys whose numbers are no lengths: counts, grits, sizes by number, shares and names that look like numbers. */
const noLengths = new Set(
  (
    'halves pieces frets joint-fret hold-factor least readings sample every points clamps rams side-by-side spindles ' +
    'flutes knives grit last-grit gauge resolution friction program revision date calibrated calibration-due'
  ).split(' '),
);

/** The key a value stands under, of the nearest map. */
const keyOf = (path: readonly unknown[]): string => {
  const pair = path.findLast(isPair);
  return isScalar(pair?.key) ? String(pair.key.value) : '';
};

/** Every value of a spec that `change` answers for is written as it says: `change` gets key and text as written. */
export const respelt = (text: string, change: (written: string, key: string) => string | undefined): string =>
  reworked(text, (document) =>
    visit(document, {
      Scalar(key, node, path) {
        if (key === 'key') return;
        const after = change(node.source ?? String(node.value), keyOf(path));
        if (after !== undefined) put(node, after);
      },
    }),
  );

function put(node: Scalar, text: string): void {
  node.value = text;
  node.type = 'PLAIN';
}

const number = String.raw`-?\d+(?:\.\d+)?`;
const barePattern = new RegExp(
  `^(?:${number}|${number} ±${number}|${number} \\+${number}/-${number}|${number}\\.\\.${number})$`,
);

/** A length without a unit, or undefined: what the file's `units` are for. */
export const bareLength = (text: string, key: string): string | undefined =>
  !noLengths.has(key) && barePattern.test(text) ? text : undefined;

/** Every number of a text by a power of ten more, digit by digit: nothing is computed in binary. */
export const shifted = (text: string, by: number): string =>
  text.replaceAll(/\d+(?:\.\d+)?/g, (one) => {
    const [whole = '', part = ''] = one.split('.');
    const places = Math.max(0, part.length - by);
    const digits = (whole + part.padEnd(Math.max(0, by), '0')).padStart(places + 1, '0');
    const head = digits.slice(0, digits.length - places).replace(/^0+(?=\d)/, '');
    return places === 0 ? head : `${head}.${digits.slice(-places)}`;
  });

/** `16.40 ±0.10` by its two ends, in whole units of its last place. */
export function ends(text: string): { nominal: string; off: string; low: string; high: string } | undefined {
  const found = new RegExp(`^(${number}) ±(${number})( \\S+)?$`).exec(text);
  if (!found) return undefined;
  const [, nominal = '', off = ''] = found;
  const places = Math.max(...[nominal, off].map((one) => one.split('.')[1]?.length ?? 0));
  const [middle, half] = [nominal, off].map((one) => Math.round(Number(one) * 10 ** places));
  const end = (sign: number): string => ((middle! + sign * half!) / 10 ** places).toFixed(places);
  return { nominal, off, low: end(-1), high: end(1) };
}

/** `based-on` as the README says it: maps merge key by key, the model's own first; all else is the model's. */
export function laidOver(own: unknown, base: unknown): unknown {
  if (!isRecord(own) || !isRecord(base)) return own ?? base;
  const keys = new Set([...Object.keys(base), ...Object.keys(own)]);
  return Object.fromEntries([...keys].map((key) => [key, laidOver(own[key], base[key])]));
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Lists under these keys the other way round: those whose order means nothing to the trade. */
export const listsReversed = (text: string, keys: readonly string[]): string =>
  reworked(text, (document) =>
    visit(document, {
      Pair(_, pair) {
        if (isScalar(pair.key) && keys.includes(String(pair.key.value)) && isSeq(pair.value))
          pair.value.items.reverse();
      },
    }),
  );

/** A spec cut in two by its top keys; both keep `units`. */
export function cutInTwo(text: string, moved: readonly string[]): { kept: string; moved: string } {
  const halves = [moved, undefined].map((keys) =>
    reworked(text, (document) => {
      if (!isMap(document.contents)) throw new Error('not a map');
      document.contents.items = document.contents.items.filter(({ key }) => {
        const name = String((key as Scalar).value);
        return name === 'units' || moved.includes(name) === (keys !== undefined);
      });
    }),
  );
  return { moved: halves[0]!, kept: halves[1]! };
}
