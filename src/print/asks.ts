/**
 * Makes a template watch itself. The engine's own strict mode does not see a missing name inside #if, #each, lookup or a
 * helper's arguments; so every path in the parsed template is replaced by a call that is handed the value of each of its
 * prefixes, and where it stands. The same walk refuses what a template may not use.
 */
/// <reference types="handlebars" />
import { offer } from '../findings/nearest.ts';

export interface Watching {
  readonly file: string;
  readonly source: string;
  readonly helpers: readonly string[];
  readonly partials: ReadonlySet<string>;
}

/** Something the template may not hold, as offsets into its text. */
export interface Mistake {
  readonly start: number;
  readonly end: number;
  readonly what: string;
}

interface Walk extends Watching {
  readonly lineStarts: readonly number[];
  readonly mistakes: Mistake[];
}

/** Changes the parsed template in place and returns its mistakes; with any, it must not be run. */
export function watched(program: hbs.AST.Program, watching: Watching): Mistake[] {
  const lineStarts = [0];
  for (const match of watching.source.matchAll(/\n/g)) lineStarts.push(match.index + 1);
  const walk: Walk = { ...watching, lineStarts, mistakes: [] };
  walkProgram(program, walk);
  return walk.mistakes;
}

function walkProgram(program: hbs.AST.Program, walk: Walk): void {
  for (const statement of program.body) walkStatement(statement, walk);
}

function walkStatement(statement: hbs.AST.Statement, walk: Walk): void {
  switch (statement.type) {
    case 'ContentStatement':
    case 'CommentStatement':
      return;
    case 'MustacheStatement':
      return walkMustache(statement as hbs.AST.MustacheStatement, walk);
    case 'BlockStatement':
      return walkBlock(statement as hbs.AST.BlockStatement, walk);
    case 'PartialStatement':
      return walkPartial(statement as hbs.AST.PartialStatement, walk);
    default:
      mistake(statement, 'Decorators, inline blocks and blocks that wrap others are not used here.', walk);
  }
}

function walkMustache(node: hbs.AST.MustacheStatement, walk: Walk): void {
  if (!node.escaped) {
    mistake(
      node,
      'Braces in threes, or {{&, print without escaping: markup of ours needs none, and all else must be escaped.',
      walk,
    );
  }
  const path = node.path;
  if (path.type !== 'PathExpression') return;
  const bare = node.params.length === 0 && !node.hash;
  if (bare && !walk.helpers.includes((path as hbs.AST.PathExpression).original)) {
    const call = asking(path as hbs.AST.PathExpression, 'show', walk);
    if (call) Object.assign(node, { path: call.path, params: call.params });
    return;
  }
  walkCall(node, walk);
}

function walkBlock(node: hbs.AST.BlockStatement, walk: Walk): void {
  walkCall(node, walk);
  walkProgram(node.program, walk);
  // The engine's types promise an inverse that is often absent.
  const inverse = node.inverse as hbs.AST.Program | undefined;
  if (inverse) walkProgram(inverse, walk);
}

function walkPartial(node: hbs.AST.PartialStatement, walk: Walk): void {
  const name = node.name.type === 'PathExpression' ? node.name.original : undefined;
  if (name === undefined) mistake(node, 'A block is called by its plain name.', walk);
  else if (!walk.partials.has(name)) mistake(node, `There is no block "${name}". ${offer(name, walk.partials)}`, walk);
  walkArguments(node, walk);
}

interface Call extends hbs.AST.Node {
  path: hbs.AST.PathExpression | hbs.AST.Literal;
  params: hbs.AST.Expression[];
  hash: hbs.AST.Hash;
}

function walkCall(node: Call | hbs.AST.BlockStatement, walk: Walk): void {
  const helper = node.path as hbs.AST.PathExpression;
  if (!walk.helpers.includes(helper.original)) {
    mistake(node, `There is no helper "${helper.original}". ${offer(helper.original, walk.helpers)}`, walk);
    return;
  }
  walkArguments(node, walk);
  if (helper.original === 'lookup') node.params.push(number(offsetOf(node, walk), node), text(walk.file, node));
}

function walkArguments(node: { params: hbs.AST.Expression[]; hash?: hbs.AST.Hash }, walk: Walk): void {
  node.params = node.params.map((param) => walkExpression(param, walk));
  for (const pair of node.hash?.pairs ?? []) pair.value = walkExpression(pair.value, walk);
}

function walkExpression(node: hbs.AST.Expression, walk: Walk): hbs.AST.Expression {
  if (node.type === 'SubExpression') walkCall(node as hbs.AST.SubExpression, walk);
  if (node.type !== 'PathExpression') return node;
  return asking(node as hbs.AST.PathExpression, 'ask', walk) ?? node;
}

/** `a.b` becomes a call with the values of its holder, of `a` and of `a.b`; the place itself (`this`, `..`) needs none. */
function asking(path: hbs.AST.PathExpression, helper: 'ask' | 'show', walk: Walk): hbs.AST.SubExpression | undefined {
  if (path.parts.length === 0) return undefined;
  const prefixes = path.parts.map((_, i) => ({ ...path, parts: path.parts.slice(0, i + 1) }));
  const holder = path.data ? [] : [{ ...path, parts: [], original: 'this' }];
  const name = path.data ? `@${path.original.replace(/^@/, '')}` : path.original;
  return {
    type: 'SubExpression',
    path: { type: 'PathExpression', data: false, depth: 0, parts: [helper], original: helper, loc: path.loc },
    params: [...holder, ...prefixes, number(offsetOf(path, walk), path), text(name, path), text(walk.file, path)],
    hash: undefined as unknown as hbs.AST.Hash,
    loc: path.loc,
  };
}

function number(value: number, node: hbs.AST.Node): hbs.AST.NumberLiteral {
  return { type: 'NumberLiteral', value, original: value, loc: node.loc };
}

function text(value: string, node: hbs.AST.Node): hbs.AST.StringLiteral {
  return { type: 'StringLiteral', value, original: value, loc: node.loc };
}

function offsetOf(node: hbs.AST.Node, walk: Walk): number {
  return (walk.lineStarts[node.loc.start.line - 1] ?? 0) + node.loc.start.column;
}

function mistake(node: hbs.AST.Node, what: string, walk: Walk): void {
  const end = (walk.lineStarts[node.loc.end.line - 1] ?? 0) + node.loc.end.column;
  walk.mistakes.push({ start: offsetOf(node, walk), end, what });
}
