/**
 * The height field and the solid of every demo model, step by step, and the same body by an independent kernel for solids,
 * all in one run on one thread. How long it takes passes or fails nothing: what is read off is the table. What is asserted is
 * that both kernels made the same body.
 */
import { cpus } from 'node:os';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { derive } from '../../src/derive/derive.ts';
import type { Facts, Use } from '../../src/facts/facts.ts';
import type { Subject } from '../../src/facts/subject.ts';
import { shapePolygon } from '../../src/geometry/shape.ts';
import { coverage } from '../../src/geometry/solid/coverage.ts';
import { edgeLine } from '../../src/geometry/solid/edge-line.ts';
import { faceField } from '../../src/geometry/solid/face-field.ts';
import { fieldOf } from '../../src/geometry/solid/field.ts';
import { CELL_MM } from '../../src/geometry/solid/grid.ts';
import type { Solid } from '../../src/geometry/solid/solid.ts';
import { compileDemo } from '../cards/demo.ts';
import type { Kernel } from '../solid/mesh.ts';
import { startKernel } from '../solid/mesh.ts';
import { byManifold } from './by-manifold.ts';

/** Looked at after as many rounds of warming up as it takes to fill that time, ms; then as often as fits, within limits. */
const WARM_MS = 400;
const TIMED_MS = 1500;
const [LEAST_ROUNDS, MOST_ROUNDS] = [7, 101];

/** Median of the rounds, ms. `prepare` makes anew what `run` is given, and is not timed. */
function medianMs<T>(prepare: () => T, run: (given: T) => unknown): number {
  const once = (): number => {
    const given = prepare();
    const start = performance.now();
    run(given);
    return performance.now() - start;
  };
  for (let spent = 0; spent < WARM_MS;) spent += once();
  const rounds: number[] = [];
  for (let spent = 0; rounds.length < LEAST_ROUNDS || (spent < TIMED_MS && rounds.length < MOST_ROUNDS);) {
    rounds.push(once());
    spent += rounds.at(-1)!;
  }
  return rounds.toSorted((a, b) => a - b)[Math.floor(rounds.length / 2)]!;
}

const nothing = (): undefined => undefined;

function read<T>(facts: Facts, reader: (use: Use) => T): T {
  const reading = facts.read(reader);
  if (!reading.ok) throw new Error(`missing: ${reading.missing.join(', ')}`);
  return reading.value;
}

/** Coverage of the outline, and both faces over it. */
function heightField({ outline, top, back }: Solid): void {
  const { grid, share } = coverage([outline], CELL_MM);
  faceField(top, grid, share);
  faceField(back, grid, share);
}

/** Facts of a model with its solid known and nothing asked of the wood left. */
function solidKnown(subject: Subject): Facts {
  const facts = derive(subject);
  read(facts, (use) => use.fact('body.solid'));
  return facts;
}

/** Wood left from every cut to both faces and the side, and of every two cuts, with its causes. */
function woodLeft(facts: Facts, ids: readonly `left.${string}`[]): void {
  read(facts, (use) => {
    for (const id of ids) use.fact(id);
  });
}

const COLUMNS = ['outline', 'height field', 'cuts', 'wood left', 'whole', 'manifold', 'manifold ÷ body'] as const;
const table: { readonly model: string; readonly figures: readonly string[] }[] = [];

const { checked } = compileDemo();
let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel();
});

afterAll(() => {
  const lines = [{ model: 'model', figures: COLUMNS }, ...table].map(
    ({ model, figures }) => model.padEnd(8) + figures.map((figure) => figure.padStart(16)).join(''),
  );
  const machine = `${cpus()[0]!.model.trim()}, node ${process.version}, one thread; medians, ms; body = outline + height field + cuts`;
  process.stdout.write(`\n${[...lines, machine].join('\n')}\n\n`);
});

describe('solids', () => {
  test.each(checked.models.map(({ id, hands }) => [id, hands[0]!.subject] as const))('%s', (id, subject) => {
    const facts = solidKnown(subject);
    const solid = read(facts, (use) => use.fact('body.solid'));
    const path = read(facts, (use) => use(subject.spec.outline.path));
    const ids = facts.all().flatMap((fact) => (fact.id.startsWith('left.') ? [fact.id as `left.${string}`] : []));

    const outline = medianMs(nothing, () => {
      const made = shapePolygon({ kind: 'path', d: path });
      return made.ok && edgeLine(made.polygon, true);
    });
    const field = medianMs(nothing, () => heightField(solid));
    const cuts = medianMs(nothing, () => fieldOf(solid)) - field;
    const left = medianMs(
      () => solidKnown(subject),
      (fresh) => woodLeft(fresh, ids),
    );
    const other = medianMs(nothing, () => byManifold(kernel, id, solid));
    const body = outline + field + cuts;
    const figures = [outline, field, cuts, left, body + left, other, other / body];
    table.push({ model: id, figures: figures.map((figure) => figure.toFixed(1)) });

    const mm3 = byManifold(kernel, id, solid);
    expect(Math.abs(fieldOf(solid).volumeMm3 / mm3 - 1)).toBeLessThan(1e-3);
  });
});
