/**
 * How far each cutter of a set-up goes, in how many steps down, and how long that takes. An estimate: areas over the step
 * over, lines once round for each step down. What a program adds (lead-ins, finishing passes, corners taken slower) it does
 * not know.
 */
import type { CutId } from '../../facts/cuts.ts';
import type { Cutter } from '../../facts/cutter-row.ts';
import { byHand, cutterOf } from '../../facts/cutter-row.ts';
import type { MachineStep, SetupId, StepKey } from '../../facts/cutting-order.ts';
import { setupOrder } from '../../facts/cutting-order.ts';
import type { Use } from '../../facts/facts.ts';
import { practice } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { perimeter, regionArea } from '../../geometry/measure.ts';
import { FLAT } from '../../geometry/solid/profile.ts';
import { levelAreas } from '../../geometry/solid/levels.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { NM_PER_M, toMm } from '../lengths.ts';
import { cuttingTime } from '../machine-time.ts';
import { passesFor } from '../passes.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

/** Of one step. */
export interface Way {
  readonly downs: number;
  /** Sideways through the wood, mm. */
  readonly alongMm: number;
  /** Straight down into it, mm. */
  readonly downMm: number;
}

/** A cutter, and the id of where it is named. */
type Tool = Cutter & { readonly named: string };

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `run.${string}.way`]: Way | undefined;
    [id: `run.${string}.downs`]: Quantity<'count'>;
    [id: `run.${string}.path`]: Length;
    /** Nothing of what is drilled by hand. */
    [id: `run.${string}.time`]: Quantity<'time'> | undefined;
  }
}

const estimate = practice('an estimate of path ÷ feed; common practice, no source');

const rule: Rule = (subject) => stepsDrawn(subject).flatMap((step) => facts(subject, step));
export default rule;

/** Every step of the model, in whichever set-up it is cut. */
function stepsDrawn({ spec }: Subject): readonly MachineStep[] {
  const { contours, cavities, holes, channels, edges, setups } = spec;
  const set = setupOrder.flatMap((setup) =>
    (['face', 'carve', 'perimeter'] as const).flatMap((part): MachineStep[] => {
      const cutter = setups[setup]?.cutters?.[part];
      return cutter ? [{ key: `${setup}.${part}`, cutter }] : [];
    }),
  );
  const along = (['back', 'top'] as const).flatMap((side): MachineStep[] =>
    edges?.[side] ? [{ key: `${side}.edge`, cutter: edges[side].cutter }] : [],
  );
  return [
    ...set,
    ...along,
    ...namesOf(contours).map((id): MachineStep => ({ key: `contour.${id}`, cutter: contours![id]!.cutter })),
    ...namesOf(cavities).map((id): MachineStep => ({ key: `cavity.${id}`, cutter: cavities![id]!.cutter })),
    ...namesOf(holes).map((id): MachineStep => ({ key: `hole.${id}`, cutter: holes![id]!.drill })),
    ...namesOf(channels).map((id): MachineStep => ({ key: `channel.${id}`, cutter: channels![id]!.drill })),
  ];
}

function facts(subject: Subject, { key, cutter: name }: MachineStep) {
  const what = key.replace(/\./g, ' ');
  const cutterIn = (use: Use): Tool => ({ ...cutterOf(subject.plant, use, name), named: name.id });
  return [
    derivation({
      id: `run.${key}.way`,
      label: `${what}: way of its cutter`,
      formula:
        'area ÷ step over for each level, or once round (half the body from each side that cuts the perimeter); steps: deepest at most ÷ step down, rounded up; holes straight down',
      source: estimate,
      value: (use) => {
        const cutter = cutterIn(use);
        return key.startsWith('channel.') && byHand(cutter) ? undefined : wayOf(subject, use, key, cutter);
      },
    }),
    derivation({
      id: `run.${key}.downs`,
      label: `${what}: steps down`,
      formula: 'deepest at most ÷ step down, rounded up',
      source: estimate,
      value: (use) => ({ kind: 'count', value: use.fact(`run.${key}.way`)?.downs ?? 1, unit: '', decimals: 0 }),
    }),
    derivation({
      id: `run.${key}.path`,
      label: `${what}: path of its cutter`,
      formula: 'along and down',
      source: estimate,
      value: (use) => {
        const { alongMm, downMm } = use.fact(`run.${key}.way`) ?? NO_WAY;
        return { kind: 'length', value: Math.round((alongMm + downMm) * 1e6), unit: 'm', decimals: 1 };
      },
    }),
    derivation({
      id: `run.${key}.time`,
      label: `${what}: cutting time`,
      formula: 'along ÷ feed + down ÷ plunge (÷ feed, where the cutter has no plunge)',
      source: estimate,
      value: (use) => {
        const way = use.fact(`run.${key}.way`);
        return way && cuttingTime(seconds(use, way, cutterIn(use)));
      },
    }),
  ];
}

const NO_WAY: Way = { downs: 0, alongMm: 0, downMm: 0 };

function seconds(use: Use, { alongMm, downMm }: Way, cutter: Tool): number {
  const mmPerS = (speed: Quantity<'speed'>): number => speed.value * 1000;
  const feed = mmPerS(use(cutter.need('feed')));
  const { plunge } = cutter.row;
  return alongMm / feed + downMm / (plunge ? mmPerS(use(plunge)) : feed);
}

function wayOf(subject: Subject, use: Use, key: StepKey, cutter: Tool): Way {
  const [kind, id] = [key.slice(0, key.indexOf('.')), key.slice(key.indexOf('.') + 1)];
  switch (kind) {
    case 'cavity':
      return cavityWay(use, id, cutter);
    case 'hole':
    case 'channel':
      return drilled(use, `${kind}.${id}` as CutId, cutter);
    case 'contour':
      return contourWay(subject, use, id, cutter);
    default:
      return setupWay(subject, use, kind as SetupId, id as 'face' | 'carve' | 'perimeter' | 'edge', cutter);
  }
}

function cavityWay(use: Use, id: string, cutter: Tool): Way {
  const own = use.fact(`cavity.${id}.void`);
  const downMm = most(use.fact(`cavity.${id}.deep`));
  const downs = downsFor(use, downMm, cutter);
  const areaMm2 = own.kind === 'pocket' ? regionArea(own.region) : 0;
  return { downs, alongMm: (downs * areaMm2) / overMm(use, cutter), downMm };
}

function drilled(use: Use, id: CutId, cutter: Tool): Way {
  const [kind, name] = id.split('.') as [string, string];
  const downMm = kind === 'channel' ? toMm(use.fact(`channel.${name}.length`)) : most(use.fact(`hole.${name}.deep`));
  const { 'step-down': step } = cutter.row;
  return { downs: step ? passesFor(downMm * 1e6, use(step)).value : 1, alongMm: 0, downMm };
}

function contourWay({ spec }: Subject, use: Use, id: string, cutter: Tool): Way {
  const face = use.fact(`face.${use(spec.contours![id]!.face)}`);
  const index = namesOf(spec.contours)
    .filter((name) => use(spec.contours![name]!.face) === use(spec.contours![id]!.face))
    .indexOf(id);
  const alone = { ...face, riseMm: 0, carve: { from: face.edge, profile: FLAT }, contours: [face.contours[index]!] };
  return levels(use, { ...alone, roundMm: 0, ledge: undefined }, 0, cutter);
}

function setupWay(
  subject: Subject,
  use: Use,
  setup: SetupId,
  part: 'face' | 'carve' | 'perimeter' | 'edge',
  cutter: Tool,
): Way {
  const outline = use.fact('outline.polygon');
  if (part === 'face') {
    const downMm = facedMm(subject, use, setup);
    const downs = downsFor(use, downMm, cutter);
    return { downs, alongMm: (downs * regionArea([outline])) / overMm(use, cutter), downMm };
  }
  if (part === 'carve') return carveWay(subject, use, setup, cutter);
  const downMm = part === 'edge' ? edgeMm(subject, use, setup) : most(use.fact(`perimeter.${setup}.deep`));
  const downs = downsFor(use, downMm, cutter);
  // Beside the line, at the radius of the cutter.
  const roundMm = perimeter(outline) + Math.PI * toMm(use(cutter.need('diameter')));
  return { downs, alongMm: downs * roundMm, downMm };
}

/** A form cutter runs along the line it cuts beside; any other over all of the top. */
function carveWay(subject: Subject, use: Use, setup: SetupId, cutter: Tool): Way {
  const face = use.fact('face.top');
  if (use(cutter.need('kind')) === 'form') {
    const downs = downsFor(use, face.riseMm, cutter);
    return { downs, alongMm: downs * lineMm(face.carve.from), downMm: face.riseMm };
  }
  const faced = subject.spec.setups[setup]?.cutters?.face !== undefined;
  const overHighMm = faced ? 0 : most(use.fact('removal.body.machined'));
  return levels(use, { ...face, contours: [], roundMm: 0, ledge: undefined }, overHighMm, cutter);
}

function levels(use: Use, face: Parameters<typeof levelAreas>[0], overHighMm: number, cutter: Tool): Way {
  const stepMm = toMm(sideways(use, cutter, 'step-down'));
  const areas = levelAreas(face, use.fact('outline.polygon'), { overMm: overHighMm, stepMm });
  const areaMm2 = areas.reduce((sum, area) => sum + area, 0);
  return { downs: areas.length, alongMm: areaMm2 / overMm(use, cutter), downMm: areas.length * stepMm };
}

/** Off the back, off the top, or one step where nothing says how much. */
function facedMm({ spec }: Subject, use: Use, setup: SetupId): number {
  if (setup === 'top') return most(use.fact('removal.body.machined'));
  return spec.setups[setup]?.faces ? most(use.fact('removal.body.back-faced')) : 0;
}

function edgeMm({ spec }: Subject, use: Use, setup: SetupId): number {
  const edge = setup === 'glue-face' ? undefined : spec.edges?.[setup];
  const sizes = [edge?.round, edge?.ledge?.depth].flatMap((leaf) => (leaf ? [most(use(leaf))] : []));
  return Math.max(0, ...sizes);
}

const downsFor = (use: Use, deepMm: number, cutter: Tool): number =>
  passesFor(Math.round(deepMm * 1e6), sideways(use, cutter, 'step-down')).value;

const overMm = (use: Use, cutter: Tool): number => toMm(sideways(use, cutter, 'step-over'));

/** A drill has no steps sideways: where one is named, its name is at fault, and its row lacks nothing. */
function sideways(use: Use, { named, ...cutter }: Tool, key: 'step-down' | 'step-over'): Length {
  const given = cutter.row[key];
  if (given) return use(given);
  const steps: readonly string[] =
    key === 'step-down' ? ['end-mill', 'ball', 'form', 'facing'] : ['end-mill', 'ball', 'facing'];
  return use(steps.includes(use(cutter.row.kind)) ? cutter.need(key) : hole(named));
}

const most = (q: Length): number => (q.high ?? q.value) / (NM_PER_M / 1000);

function lineMm({ points, closed }: { points: Float64Array; closed: boolean }): number {
  if (closed) return perimeter(points);
  let sum = 0;
  for (let i = 2; i < points.length; i += 2)
    sum += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
  return sum;
}
