/** What the card of the press shows of a load: one stack, and stacks side by side where this model is pressed so. */
import { laminationAdhesive, machineAt } from '../facts/press-row.ts';
import { row } from '../facts/row.ts';
import type { Arg, Check, KeyNumber, Limits, Line, Table } from './card.ts';
import { key, one } from './common.ts';
import { limits } from './figures.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

type Loading = 'stack' | 'row';

/** Printed force: to a kilonewton. */
const KN = { unit: 'kN', step: 1000 } as const;

/** One stack; and side by side where there is more than one, and time to lay one body on each. */
export const loadings = ({ use }: Desk): readonly Loading[] =>
  use.fact('press.side-by-side').value > 1 && use.fact('press.row.layers').value > 0 ? ['stack', 'row'] : ['stack'];

const gauge = (desk: Desk, loading: Loading): Limits => desk.limits(`press.${loading}.gauge`, 'pressure');

export function gaugeKeys(desk: Desk): readonly KeyNumber[] {
  const keys = loadings(desk).map((loading) =>
    key(
      loading === 'stack'
        ? say('press.key.gauge')
        : say('press.key.gauge-row', { stacks: desk.figure('press.side-by-side') }),
      gauge(desk, loading),
    ),
  );
  const bodies = loadings(desk).map((loading) => desk.figure(`press.${loading}.bodies`));
  return [
    ...keys,
    // How many stand side by side, and how high, is a step of its own.
    key(say(bodies.length > 1 ? 'press.key.bodies-row' : 'press.key.bodies'), bodies[0]!),
  ];
}

/** What the gauge shows is written down for every load. */
export const gaugeChecks = (desk: Desk): readonly Check[] =>
  loadings(desk).map((loading) => ({
    what:
      loading === 'stack'
        ? say('press.check.gauge')
        : say('press.check.gauge-row', { stacks: desk.figure('press.side-by-side') }),
    limits: gauge(desk, loading),
    gauge: desk.gauge('pressure').name,
    often: say('common.every-load'),
    boxes: [one],
  }));

/** Cells of the station sheet: gauge of one stack, gauge side by side, bodies. */
export function sheetCells(desk: Desk): readonly Arg[] {
  const bodies = loadings(desk).map((loading) => desk.figure(`press.${loading}.bodies`));
  return [
    gauge(desk, 'stack'),
    loadings(desk).includes('row') ? gauge(desk, 'row') : say('common.none'),
    { kind: 'series', items: bodies },
  ];
}

export function loadingSteps(desk: Desk): readonly Line[] {
  const { use, subject } = desk;
  const both = loadings(desk).includes('row');
  const press = machineAt(subject, use, 'press');
  const stacks = desk.figure('press.side-by-side');
  const one = first(gauge(desk, 'stack'));
  return [
    say('press.step.load', {
      board: desk.figure(
        press.need('board', (machine) => machine.board),
        { single: true },
      ),
      least: desk.figure('press.layers.least'),
      most: desk.figure('press.stack.layers'),
      height: desk.figure('press.stack.height', { decimals: 0, single: true }),
      daylight: desk.figure(
        press.need('daylight', (machine) => machine.daylight),
        { single: true },
      ),
    }),
    say('press.step.centre', {
      x: desk.figure('joint.centre.x', { single: true }),
      y: desk.figure('joint.centre.y', { single: true }),
    }),
    ...(both ? [say('press.step.beside', { stacks, layers: desk.figure('press.row.layers') })] : []),
    assembly(desk),
    say('press.step.verify', { most: desk.figure('press.gauge-most') }),
    both
      ? say('press.step.gauge-row', { gauge: one, row: first(gauge(desk, 'row')), stacks })
      : say('press.step.gauge', { gauge: one }),
  ];
}

/** Without its second unit, which stands with the key numbers. */
function first({ second: _second, ...limits }: Limits): Limits {
  return limits;
}

/** How old the glue of the first body may be, and how old it gets with a full load. */
function assembly(desk: Desk): Line {
  const glue = laminationAdhesive(desk.subject, desk.use);
  const open = desk.figure(glue.need('open-time', (adhesive) => adhesive['open-time']));
  const takes = desk.figure('press.stack.assembly');
  const { 'closed-time': closed } = glue.row;
  return closed
    ? say('press.step.closed-time', { open, closed: desk.figure(closed), takes })
    : say('press.step.open-time', { open, takes });
}

/** How far out of flat a blank may come out: what facing reckons with. */
export const flatness = ({ subject: { spec, plant }, use }: Desk) =>
  row(plant.lines, use(spec.line), 'plant.lines').blank.flatness;

export function loadTable(desk: Desk): Table {
  return {
    title: say('press.table-load'),
    columns: ['load', 'bodies', 'force', 'gauge', 'scale', 'height', 'takes', 'closed'].map((id) =>
      say(`press.column.${id}`),
    ),
    rows: loadings(desk).map((loading) => [
      loading === 'stack'
        ? say('press.load.stack')
        : say('press.load.row', { stacks: desk.figure('press.side-by-side') }),
      desk.figure(`press.${loading}.bodies`),
      force(desk, loading),
      gauge(desk, loading),
      desk.figure(`press.${loading}.scale`),
      desk.figure(`press.${loading}.height`, { decimals: 0 }),
      desk.figure(`press.${loading}.assembly`),
      desk.figure(`press.${loading}.closed`),
    ]),
  };
}

/** Never a reading of a gauge: it is rounded inward like one. */
function force(desk: Desk, loading: Loading): Arg {
  const read = limits(desk.use, `press.${loading}.force`, { name: desk.machine(), ...KN });
  return read.ok ? read.limits : desk.figure(`press.${loading}.force`);
}

export function sourceTable(desk: Desk): Table {
  const press = machineAt(desk.subject, desk.use, 'press');
  return {
    title: say('press.table-from'),
    columns: ['area', 'pressure', 'bears', 'rams', 'bore', 'ram-area', 'most', 'capacity'].map((id) =>
      say(`press.column.${id}`),
    ),
    rows: [
      [
        desk.figure('joint.area'),
        desk.figure('press.joint-pressure'),
        desk.figure('press.bears'),
        desk.figure(press.need('rams', (machine) => machine.rams)),
        desk.figure(press.need('bore', (machine) => machine.bore)),
        desk.figure('press.ram-area'),
        desk.figure('press.gauge-most'),
        desk.figure('press.capacity'),
      ],
    ],
  };
}
