/**
 * Arithmetic of the trade, worked out from the README and not from the program: whether a model as it stands can be made.
 * Where it says no, a sound program must say so too. Where it says yes, the program may still know better.
 */
import { at, isTree, laid, plantOf, treeAt, treeOf } from './merged.ts';
import type { Tree } from './merged.ts';
import type { Size } from './quantity.ts';
import { sizeOf } from './quantity.ts';
import type { Files } from './merged.ts';

interface Bench {
  readonly model: Tree;
  readonly plant: Tree;
  readonly line: Tree;
  readonly bare: string;
}

/** Binary arithmetic leaves dust on decimals. */
const DUST = 1e-6;

/** What cannot be so, in words; nothing where all that can be worked out here is well. */
export function unsound(files: Files, layers: readonly string[]): string[] {
  const model = layers
    .map((file) => withUnits(treeOf(files[file])))
    .reduceRight((below, over) => laid(over, below), {});
  const plant = plantOf(files);
  const line = treeAt(plant, ['lines', String(model['line'])]);
  const bench = { model, plant, line, bare: String(model['units']) };
  return [...chain(bench), ...parts(bench), ...saws(bench), ...tools(bench), ...neck(bench)];
}

/** Bare sizes with the unit of their file: a model in inches may start from a base in millimetres. */
function withUnits(tree: Tree): Tree {
  const unit = String(tree['units']);
  const marked = (value: unknown): unknown => {
    if (isTree(value)) return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, marked(one)]));
    return sizeOf(value, 'bare')?.unit === 'bare' ? `${String(value)} ${unit}` : value;
  };
  const sizes = ['stages', 'cavities', 'holes'].filter((key) => key in tree);
  return { ...tree, ...Object.fromEntries(sizes.map((key) => [key, marked(tree[key])])) };
}

const size = (value: unknown, bare = 'mm'): Size | undefined => (value === undefined ? undefined : sizeOf(value, bare));

/** The least that must come off: flatness + marks + floor. */
const least = (line: Tree, path: readonly string[]): number =>
  ['flatness', 'marks', 'floor'].reduce((sum, key) => sum + (size(at(line, [...path, key]))?.nominal ?? 0), 0);

/** Blank, back-faced, machined, white: at the thinnest before and the thickest after there must be enough to take off. */
function chain({ model, line, bare }: Bench): string[] {
  const stages = treeAt(model, ['stages']);
  const body = treeAt(stages, ['body']);
  const blank = blankOf(stages, line, bare);
  const faced = size(body['back-faced'], bare);
  const white = treeAt(body, ['white']);
  const machined = Object.entries(treeAt(body, ['machined'])).map(
    ([point, value]) => [point, size(value, bare)] as const,
  );
  const highest = machined.flatMap(([, one]) => (one ? [one] : [])).toSorted((a, b) => b.high - a.high)[0];
  return [
    ...removal('blank to back-faced', blank, faced, least(line, ['blank'])),
    ...removal('back-faced to machined', faced, highest, least(line, ['back-faced'])),
    ...machined.flatMap(([point, one]) =>
      removal(`machined to white at ${point}`, one, size(white[point], bare), least(line, ['machined'])),
    ),
  ];
}

function blankOf(stages: Tree, line: Tree, bare: string): Size | undefined {
  const slab = size(at(stages, ['slab', 'sized']), bare);
  if (slab) return slab;
  const list = [at(stages, ['cap', 'sized']), at(stages, ['back', 'sized'])].map((value) => size(value, bare));
  const [cap, back] = list;
  const glue = size(line['glue-line']);
  if (!cap || !back || !glue) return undefined;
  const sum = (key: 'low' | 'nominal' | 'high'): number => cap[key] + back[key] + glue[key];
  return { low: sum('low'), nominal: sum('nominal'), high: sum('high'), unit: 'mm' };
}

function removal(name: string, before: Size | undefined, after: Size | undefined, want: number): string[] {
  if (!before || !after) return [];
  const off = before.low - after.high;
  return off < want - DUST ? [`${name}: ${off.toFixed(3)} comes off, ${want.toFixed(3)} must`] : [];
}

/** Sized, planed, rough: the line's allowances, and the board bought. */
function parts({ model, plant, line, bare }: Bench): string[] {
  return ['cap', 'back', 'slab'].flatMap((part) => {
    const timber = treeAt(model, ['timber', part]);
    const sized = size(at(model, ['stages', part, 'sized']), bare);
    const over = (stage: string): Size | undefined => size(at(line, [part, stage, 'over']));
    const [planedOver, roughOver] = [over('planed'), over('rough')];
    if (!sized || !planedOver || !roughOver) return [];
    const planed = raised(sized, planedOver);
    const rough = raised(planed, roughOver);
    const board = treeAt(plant, ['stock', String(timber['stock'])]);
    const thinnest = size(board['least-thickness'])?.nominal ?? Infinity;
    return [
      ...removal(`${part} planed to sized`, planed, sized, least(line, [part, 'planed', 'least-removal'])),
      ...removal(`${part} rough to planed`, rough, planed, least(line, [part, 'rough', 'least-removal'])),
      ...(thinnest < rough.low - DUST ? [`${part}: a board of ${thinnest} is under ${rough.low}`] : []),
      ...(board['species'] !== timber['species'] ? [`${part}: the board is of another species`] : []),
    ];
  });
}

/** A stage thicker than the next by an allowance: its limits are the allowance's own, about the sum of the nominals. */
const raised = (next: Size, over: Size): Size => ({
  low: next.nominal + over.low,
  nominal: next.nominal + over.nominal,
  high: next.nominal + over.high,
  unit: 'mm',
});

/** The rough saw cuts outside the trim saw, and that outside the outline. */
function saws({ line }: Bench): string[] {
  const [rough, trim] = [size(line['rough-line']), size(line['trim-line'])];
  return rough && trim && rough.nominal <= trim.nominal ? ['the rough line lies inside the trim line'] : [];
}

/** A cutter fits its corners and reaches its floor; a drill is as wide as its hole. */
function tools({ model, plant, bare }: Bench): string[] {
  const cutter = (name: unknown): Tree => treeAt(plant, ['cutters', String(name)]);
  const all = (of: string): (readonly [string, Tree])[] =>
    Object.entries(treeAt(model, [of])).flatMap(([name, one]) => (isTree(one) ? [[name, one] as const] : []));
  const tooWide = all('cavities').filter(([, one]) => {
    const [corner, wide] = [size(one['corner'], bare), size(cutter(one['cutter'])['diameter'])];
    return corner && wide && wide.nominal > 2 * corner.nominal + DUST;
  });
  const otherWidth = all('holes').filter(([, one]) => {
    const [hole, drill] = [size(one['diameter'], bare), size(cutter(one['drill'])['diameter'])];
    return hole && drill && Math.abs(hole.nominal - drill.nominal) > 0.5;
  });
  const tooShort = [...all('cavities'), ...all('holes')].filter(([, one]) => {
    const [deep, reach] = [deepest(one, model, bare), size(cutter(one['cutter'] ?? one['drill'])['reach'])];
    return deep !== undefined && reach && deep > reach.nominal;
  });
  const noDepth = all('cavities').filter(([, one]) => (deepest(one, model, bare) ?? 1) <= 0);
  return [
    ...noDepth.map(([name]) => `the wood left over ${name} is all there is`),
    ...tooWide.map(([name]) => `the cutter of ${name} is wider than its corners`),
    ...otherWidth.map(([name]) => `the drill of ${name} is not as wide as the hole`),
    ...tooShort.map(([name]) => `${name} is deeper than its tool reaches`),
  ];
}

/** Its depth, or where the wood left is given what is cut away of the lowest part of the body. */
function deepest(one: Tree, model: Tree, bare: string): number | undefined {
  const floor = size(one['floor'], bare);
  if (!floor) return size(one['depth'], bare)?.nominal;
  const points = Object.values(treeAt(model, ['stages', 'body', 'machined'])).map(
    (value) => size(value, bare)?.nominal,
  );
  return Math.min(...points.map((point) => point ?? 0)) - floor.nominal;
}

/** The neck has the fret that stands at the body's edge. */
function neck({ model }: Bench): string[] {
  const [frets, joint] = ['frets', 'joint-fret'].map((key) => Number(at(model, ['neck', key])));
  return joint! > frets! ? ['the neck has no such joint fret'] : [];
}
