/**
 * A first spec of a model: whole, commented, and sound in this plant as it stands, so that an engineer starts from
 * something that passes and changes it line by line.
 */
import type { Use } from '../facts/facts.ts';
import { makeFacts } from '../facts/facts.ts';
import type { Part } from '../facts/parts.ts';
import { namesOf, row, wanted } from '../facts/row.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import { formatNumber } from '../units/format.ts';
import { cutter, first, inUse, longest, router, stocks } from './choose.ts';
import { LIMITS, body, sized } from './numbers.ts';
import { specText } from './text.ts';

const MM = 1_000_000;

export type Started =
  { readonly text: string; readonly spare: readonly string[] } | { readonly missing: readonly string[] };

/** `taken`: program numbers in use. `spare`: more that nobody uses, for the other hand and further set-ups. */
export function startSpec(id: string, plant: PlantSpec, taken: ReadonlySet<string>): Started {
  const reading = makeFacts([]).read((use) => choices(id, plant, use, taken));
  if (!reading.ok) return { missing: reading.missing };
  return { text: specText(reading.value), spare: reading.value.programs.spare };
}

const mm = (nm: number, decimals = 2): string => formatNumber(nm, 'mm', decimals);
const limited = (nm: number, limitNm: number): string => `${mm(nm)} ±${mm(limitNm)}`;

function choices(id: string, plant: PlantSpec, use: Use, taken: ReadonlySet<string>) {
  const lineName = wanted(inUse(plant, 'lines')[0], 'a line in plant.lines');
  const line = row(plant.lines, lineName, 'plant.lines');
  const machine = router(plant, use);
  const error = use(wanted(row(plant.machines, machine, 'plant.machines')['depth-error'], 'depth-error'));
  const errorNm = error.high ?? 0;
  const parts: readonly Part[] = line.slab ? ['slab'] : ['cap', 'back'];
  const boards = timber(plant, use, parts);
  const thickness = Object.fromEntries(
    parts.map((part) => [part, sized(use, line, part, boards[part]!.least.value)]),
  ) as Readonly<Partial<Record<Part, number>>>;
  const glue = parts.length > 1 ? use(wanted(line['glue-line'], 'the glue line of the line')) : undefined;
  const sum = parts.reduce((total, part) => total + thickness[part]!, 0);
  const thinnest = sum - parts.length * LIMITS.sized + (glue?.low ?? 0);
  const stages = body(use, line, thinnest, errorNm);
  const limit = (nm: number) => Math.max(nm, errorNm);
  const pocketNm = Math.max(16 * MM, Math.ceil((stages.machined - HEEL_MM * MM) / MM) * MM);
  const ofRight = (name: string) => use(row(plant.jigs, name, 'plant.jigs').hand) !== 'left';
  const jig = first(plant, 'jigs', ofRight, 'a jig of the right hand in plant.jigs');
  const pattern = use(row(plant.jigs, jig, 'plant.jigs').pattern);
  const rightHand = (name: string) => use(row(plant.fixtures, name, 'plant.fixtures').hand) !== 'left';
  const fixtures = inUse(plant, 'fixtures').filter(rightHand);
  const pinned = (name: string) => {
    const of = row(plant.fixtures, name, 'plant.fixtures').pattern;
    return of !== undefined && use(of) === pattern && rightHand(name);
  };
  const fixtureBack = first(plant, 'fixtures', pinned, `a fixture with pins of ${pattern} in plant.fixtures`);
  // The top is located on holes of the body, not on the pins of the blank.
  const others = fixtures.filter((name) => name !== fixtureBack);
  const free = (name: string) => row(plant.fixtures, name, 'plant.fixtures').pattern === undefined;
  const fixtureTop = others.find(free) ?? others[0] ?? fixtureBack;
  const reach = (name: string) => use(row(plant.cutters, name, 'plant.cutters').reach).value;
  const controls = longest(plant, use, 2 * CORNER_MM * MM);
  const finish = wanted(inUse(plant, 'finishes')[0], 'a finish in plant.finishes');
  return {
    id,
    line: lineName,
    parts: parts.map((part) => ({ part, ...boards[part]!, thickness: limited(thickness[part]!, LIMITS.sized) })),
    faced: limited(stages.faced, limit(LIMITS.faced)),
    machined: limited(stages.machined, limit(LIMITS.machined)),
    white: limited(stages.white, LIMITS.white),
    machine,
    pattern,
    jig,
    jigHoles: jigHoles(plant, use, pattern),
    fixtures: { back: fixtureBack, top: fixtureTop },
    programs: programs(plant, use, taken),
    facing: cutter(plant, use, 'facing', Infinity, 0),
    perimeter: cutter(plant, use, 'end-mill', Infinity, stages.machined / 2),
    pocket: cutter(plant, use, 'end-mill', 2 * CORNER_MM * MM, pocketNm),
    pocketDepth: mm(pocketNm, 1),
    controls,
    drill: cutter(plant, use, 'drill', pinRoom(plant, use, fixtureTop), 12 * MM),
    drillMm: (name: string) => mm(use(row(plant.cutters, name, 'plant.cutters').diameter).value, 1),
    corner: String(CORNER_MM),
    floor: mm(Math.max(LEAST_FLOOR_MM * MM, stages.machined - reach(controls) + MM), 1),
    capFace: parts.length > 1 ? 'cap-face' : 'slab-face',
    finish,
    band: band(plant, use, finish),
  };
}

/** How wide the holes may be that the fixture's pins go into: little wider than the pins it has; any drill of ours where it does not say. */
function pinRoom(plant: PlantSpec, use: Use, fixture: string): number {
  const { pins } = row(plant.fixtures, fixture, 'plant.fixtures');
  const measured = Object.values(pins ?? {}).flatMap(({ diameter }) => (diameter ? [use(diameter).high!] : []));
  return measured.length > 0 ? Math.min(...measured) + 0.5 * MM : 12 * MM;
}

/** Where the drilling jig's holes lie, and the plate that hides one. */
function jigHoles(plant: PlantSpec, use: Use, pattern: string) {
  const { holes } = row(plant.patterns, pattern, 'plant.patterns');
  return namesOf(holes).map((name) => {
    const { at, diameter } = holes[name]!;
    return { name, x: mm(use(at.x).value), y: mm(use(at.y).value), size: mm(2 * use(diameter).value + 10 * MM, 0) };
  });
}

/** No more wood under the neck than its screws go through; common practice, no source. */
const HEEL_MM = 33;

const CORNER_MM = 8;
/** Wood left over the controls: what shafts of pots and switches are made for; common practice, no source. */
const LEAST_FLOOR_MM = 6;

export type Choices = ReturnType<typeof choices>;

/** A cap from the thinnest stock there is, all else from the thickest: each of one species. */
function timber(plant: PlantSpec, use: Use, parts: readonly Part[]) {
  const all = stocks(plant, use);
  const of = (part: Part) => wanted(part === 'cap' ? all.at(-1) : all[0], 'stock in plant.stock');
  return Object.fromEntries(parts.map((part) => [part, of(part)])) as Readonly<
    Partial<Record<Part, ReturnType<typeof of>>>
  >;
}

const SPARE = 8;

/** Program numbers nobody uses, in the plant's number of digits. */
function programs(plant: PlantSpec, use: Use, taken: ReadonlySet<string>) {
  const given = plant.plant?.['program-digits'];
  const digits = given ? use(given).value : 4;
  const free: string[] = [];
  for (let n = 10 ** (digits - 1); free.length < 2 + SPARE; n += 1) if (!taken.has(String(n))) free.push(String(n));
  return { back: free[0]!, top: free[1]!, spare: free.slice(2) };
}

/** Of every scale its poorest steps: all of them, or those that an opaque finish does not waste. */
function band(plant: PlantSpec, use: Use, finish: string): readonly { scale: string; steps: readonly string[] }[] {
  const opaque = use(row(plant.finishes, finish, 'plant.finishes').kind) === 'opaque';
  return namesOf(plant.grades).map((scale) => {
    const { steps: leaves, 'wasted-from': wasted } = row(plant.grades, scale, 'plant.grades');
    const steps = leaves.map((step) => use(step));
    const end = opaque && wasted ? steps.indexOf(use(wasted)) : steps.length;
    return { scale, steps: steps.slice(0, Math.max(1, end)) };
  });
}
