/** A vite plugin: every comparison of the checks and of what they have in common goes through the switch. */
import { basename, dirname } from 'node:path';
import type { Plugin } from 'vite';
import { parseAst } from 'vite';
import type { Operator, Site } from './switch.ts';

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}

interface Comparison extends Node {
  readonly operator: Operator;
  readonly left: Node;
  readonly right: Node;
}

interface Change {
  readonly at: number;
  readonly removed: number;
  readonly text: string;
}

const OPERATORS: readonly string[] = ['<', '<=', '>', '>=', '===', '!=='] satisfies readonly Operator[];

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

const isComparison = (node: Node): node is Comparison =>
  node.type === 'BinaryExpression' && OPERATORS.includes((node as Comparison).operator);

const isInstrumented = (path: string): boolean =>
  /\/src\/check\/(?:checks\/)?[\w-]+\.ts$/.test(path) && !path.endsWith('.generated.ts');

export const instrument = (): Plugin => ({
  name: 'comparisons through a switch',
  enforce: 'pre',
  transform(code, id) {
    const [path = id] = id.split('?');
    if (path.endsWith('/src/check/checks/all.generated.ts'))
      return code.replace(/\[([^\]]*)\];\s*$/, 'globalThis.platenSwitch.watched([$1]);\n');
    if (path.endsWith('/src/derive/derive.ts'))
      return code.replace(/(?<==>) (makeFacts\(.*\));\s*$/, ' globalThis.platenSwitch.derived(() => $1);\n');
    return isInstrumented(path) ? instrumented(code, path) : undefined;
  },
});

/** The same text line for line, and where each of its comparisons stands. */
function instrumented(code: string, path: string): string {
  const sites: Site[] = [];
  const changes: Change[] = [];
  const visit = (node: Node): void => {
    const mine = isComparison(node) ? node : undefined;
    const at = mine && operatorAt(code, mine);
    if (mine && at !== undefined) {
      const call = `platenSwitch.compare(platenFirst + ${sites.length}, '${mine.operator}', `;
      changes.push({ at: mine.start, removed: 0, text: call });
      changes.push({ at, removed: mine.operator.length, text: ',' });
      sites.push(siteOf(code, path, mine, at));
    }
    for (const value of Object.values(node))
      for (const part of Array.isArray(value) ? (value as unknown[]) : [value]) if (isNode(part)) visit(part);
    if (mine) changes.push({ at: mine.end, removed: 0, text: ')' });
  };
  visit(parseAst(code, { lang: 'ts' }));
  // Of two at one place the outer was met first, or closes last: the order they were put down in is the right one.
  let [done, from] = ['', 0];
  for (const { at, removed, text } of changes.toSorted((a, b) => a.at - b.at)) {
    done += code.slice(from, at) + text;
    from = at + removed;
  }
  return `const platenFirst = platenSwitch.register(${JSON.stringify(sites)}); ${done}${code.slice(from)}`;
}

/** Between its two sides there is nothing but brackets, blanks and the operator itself. */
function operatorAt(code: string, { left, right, operator }: Comparison): number {
  const between = code.slice(left.end, right.start);
  const at = between.indexOf(operator);
  if (at < 0 || between.replace(operator, '').replace(/[\s()]/g, '') !== '')
    throw new Error(`an operator that is not found: ${code.slice(left.start, right.end)}`);
  return left.end + at;
}

function siteOf(code: string, path: string, { start, end, operator }: Comparison, at: number): Site {
  const lines = code.slice(0, at).split('\n');
  const folder = basename(dirname(path)) === 'checks' ? 'checks/' : '';
  return {
    file: folder + basename(path),
    line: lines.length,
    column: lines.at(-1)!.length + 1,
    operator,
    text: code.slice(start, end).replace(/\s+/g, ' '),
  };
}
