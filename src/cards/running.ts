/** How the machine runs a set-up: what is cut in which order and how, how long it takes, and the sheet for setting it up. */
import { byHand, cutterOf } from '../facts/cutter-row.ts';
import type { Cutter } from '../facts/cutter-row.ts';
import type { MachineStep, SetupId } from '../facts/cutting-order.ts';
import { machineSteps } from '../facts/cutting-order.ts';
import { row, wanted } from '../facts/row.ts';
import type { Arg, Check, Line, Table } from './card.ts';
import { inOneUnit } from './form-checks.ts';
import { cutterName, fixtureName, leastVacuum, setupOf } from './machining.ts';
import { stepTitle } from './step-title.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

/** Steps that one row of the table stands for: one, or all holes of a drill. */
interface Shown {
  readonly steps: readonly MachineStep[];
  readonly cutter: Cutter;
}

const columns = (...ids: string[]): readonly Line[] => ids.map((id) => say(`running.column.${id}`));

function shown(desk: Desk, setup: SetupId): readonly Shown[] {
  const rows: { steps: MachineStep[]; cutter: Cutter }[] = [];
  for (const step of machineSteps(desk.subject.spec, desk.use, setup)) {
    const cutter = cutterOf(desk.subject.plant, desk.use, step.cutter);
    const last = rows.at(-1);
    const together = last && drilledAs(last.steps[0]!) === drilledAs(step) && last.cutter.id === cutter.id;
    if (together) last.steps.push(step);
    else rows.push({ steps: [step], cutter });
  }
  return rows;
}

/** Holes, or channels; anything else is a row by itself. */
const drilledAs = ({ key }: MachineStep): string => (/^(?:hole|channel)\./.test(key) ? key.replace(/\..*/, '') : key);

const isHole = ({ key }: MachineStep): boolean => key.startsWith('hole.');

/** In the order they are cut. Numbers of the plant’s rows; times are estimates. */
export function runningTables(desk: Desk, setup: SetupId): readonly Table[] {
  return [
    {
      place: 'first',
      title: say('running.operations'),
      columns: columns('operation', 'cutter', 'speed', 'feed', 'steps', 'step-down', 'step-over', 'time'),
      rows: shown(desk, setup).map((one) => [
        title(desk, one.steps),
        cutterName(desk, one.cutter.id),
        ...numbers(desk, setup, one),
      ]),
    },
    timeTable(desk, setup),
    ...cuspTable(desk, setup),
  ];
}

function title(desk: Desk, steps: readonly MachineStep[]): Arg {
  const titles = steps.map(({ key }) => stepTitle(desk, key));
  return titles.length === 1 ? titles[0]! : { kind: 'series', items: titles };
}

function numbers(desk: Desk, setup: SetupId, { steps, cutter }: Shown): readonly Arg[] {
  const none = say('running.nothing');
  const [{ key }] = steps as [MachineStep];
  if (key.startsWith('channel.') && byHand(cutter)) return [say('running.by-hand'), none, none, none, none, none];
  const { 'step-down': down, 'step-over': over } = cutter.row;
  const or = (leaf: typeof down): Arg => (leaf ? desk.figure(leaf, { single: true }) : none);
  const hole = isHole(steps[0]!);
  return [
    desk.figure(cutter.need('speed')),
    desk.figure(cutter.need('feed'), { single: true }),
    down ? (hole ? none : desk.figure(`run.${key}.downs`)) : say('running.one-go'),
    or(down),
    or(over),
    desk.figure(hole ? `run.${setup}.drilling.${cutter.id}` : `run.${key}.time`),
  ];
}

function timeTable(desk: Desk, setup: SetupId): Table {
  const { cycle } = setupOf(desk, setup);
  return {
    place: 'first',
    title: say('running.time'),
    columns: [
      ...columns('cutting', 'changes', 'estimate', 'clock', 'load', 'unload', 'one-spindle'),
      say('running.column.all-spindles', { spindles: desk.figure(`run.${setup}.spindles`) }),
    ],
    rows: [
      [
        desk.figure(`run.${setup}.cutting`),
        desk.figure(`run.${setup}.changes`),
        desk.figure(`run.${setup}.estimate`, { unit: 'min', decimals: 1 }),
        cycle ? desk.figure(cycle) : say('common.none'),
        desk.figure(machineNeed(desk, setup, 'load-time')),
        desk.figure(machineNeed(desk, setup, 'unload-time')),
        desk.figure(`run.${setup}.body.one`, { decimals: 1 }),
        desk.figure(`run.${setup}.body.all`, { decimals: 1 }),
      ],
    ],
  };
}

/** Shaped faces whose cutter leaves ridges. */
function cuspTable(desk: Desk, setup: SetupId): readonly Table[] {
  const { spec, plant } = desk.subject;
  const { marks } = row(plant.lines, desk.use(spec.line), 'plant.lines').machined;
  const rows = machineSteps(spec, desk.use, setup).flatMap((step): Arg[][] => {
    const what = step.key === 'top.carve' ? 'carve' : step.key;
    if (what !== 'carve' && !what.startsWith('contour.')) return [];
    if (desk.use.fact(`cusp.${what}.most`).value === 0) return [];
    return [
      [
        title(desk, [step]),
        desk.figure(`cusp.${what}.steepest`),
        desk.figure(`cusp.${what}.level`, { decimals: 3, single: true }),
        desk.figure(`cusp.${what}.most`, { decimals: 3, single: true }),
        desk.figure(marks, { single: true }),
      ],
    ];
  });
  if (rows.length === 0) return [];
  return [
    {
      place: 'first',
      title: say('running.cusps'),
      columns: columns('operation', 'steepest', 'cusp-level', 'cusp-most', 'marks'),
      rows,
    },
  ];
}

/** Filled in at every changeover: what must be so, and room for what is. */
export function setUpSheet(desk: Desk, setup: SetupId, checks: readonly Check[]): readonly Table[] {
  const spec = setupOf(desk, setup);
  const write = say('running.write');
  const once = shown(desk, setup).filter(
    ({ cutter, steps }, i, all) =>
      all.findIndex((other) => other.cutter.id === cutter.id) === i &&
      !(steps[0]!.key.startsWith('channel.') && byHand(cutter)),
  );
  // Each spindle has a cutter of its own: what is measured of one says nothing of the other.
  const spindles = desk.use.fact(`run.${setup}.spindles`).value;
  const cutters = once.flatMap(({ cutter }) =>
    Array.from({ length: spindles }, (_, i): Arg[] => [
      cutterName(desk, cutter.id),
      ...(spindles > 1 ? [{ kind: 'literal', of: 'point', text: String(i + 1) } as const] : []),
      desk.figure(cutter.need('most-speed')),
      desk.figure(cutter.need('length'), { single: true }),
      write,
      desk.figure(cutter.need('diameter'), { single: true }),
      write,
      write,
    ]),
  );
  const must: readonly (readonly [string, Arg])[] = [
    ['fixture', fixtureName(desk, setup)],
    ['program', desk.name(spec.program)],
    ...(desk.use.fact(`hold.${setup}.difference`)
      ? [['vacuum', say('running.vacuum-at', { difference: leastVacuum(desk, setup) })] as const]
      : []),
    ['zero', say(`machining.step.zero-${desk.use(spec['z-zero'])}`)],
    ['dry-run', say('running.above', { height: desk.figure(machineNeed(desk, setup, 'dry-run'), { single: true }) })],
  ];
  return [
    {
      place: 'form',
      title: say('running.sheet'),
      columns: columns('what', 'must', 'is'),
      rows: must.map(([what, is]) => [say(`running.sheet-row.${what}`), is, say('running.write-long')]),
    },
    {
      place: 'form',
      title: say('running.sheet-cutters'),
      columns: columns(
        'cutter',
        ...(spindles > 1 ? ['spindle'] : []),
        'most-speed',
        'length',
        'length-is',
        'diameter',
        'diameter-is',
        'bodies',
      ),
      rows: cutters,
    },
    {
      place: 'form',
      title: say('running.sheet-sign'),
      columns: columns('set-by', 'checked-by', 'date', 'time-of-day', 'order'),
      rows: [[write, write, write, write, write]],
    },
    {
      place: 'form',
      title: say('running.sheet-first-piece'),
      columns: columns('check', 'limits', 'gauge', 'reading'),
      rows: checks
        .map(inOneUnit)
        .map(({ what, limits, gauge }) => [what, limits ?? say('running.yes-no'), gauge, write]),
    },
  ];
}

function machineNeed(desk: Desk, setup: SetupId, key: 'load-time' | 'unload-time' | 'dry-run') {
  const name = desk.use(setupOf(desk, setup).machine);
  return wanted(row(desk.subject.plant.machines, name, 'plant.machines')[key], `plant.machines.${name}.${key}`);
}
