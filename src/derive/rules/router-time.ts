/** How long a set-up takes a body: cutting, moves above the wood, changes of cutter; on one spindle and on all of them. */
import { cutterOf } from '../../facts/cutter-row.ts';
import type { MachineStep, SetupId } from '../../facts/cutting-order.ts';
import { holeSteps, machineSteps, setupOrder } from '../../facts/cutting-order.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { namesOf, present, row, wanted } from '../../facts/row.ts';
import type { Machine } from '../../facts/station-machine.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Quantity } from '../../units/quantity.ts';
import { cuttingTime } from '../machine-time.ts';
import { setupOf } from '../surfaces.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

type Time = Quantity<'time'>;

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`run.${SetupId}.cutting` | `run.${SetupId}.estimate` | `run.${SetupId}.machine`, Time>,
      Record<`run.${SetupId}.body.one` | `run.${SetupId}.body.all`, Time>,
      Record<`run.${SetupId}.changes` | `run.${SetupId}.spindles`, Quantity<'count'>> {
    /** All holes of that drill in the set-up; nothing where it drills none. */
    [id: `run.${string}.drilling.${string}`]: Time | undefined;
  }
}

const practised = practice('a two-spindle machine cuts two bodies in one cycle; common practice, no source');

const rule: Rule = (subject) =>
  setupOrder.filter((setup) => subject.spec.setups[setup] !== undefined).flatMap((setup) => facts(subject, setup));
export default rule;

function facts(subject: Subject, setup: SetupId) {
  const time = (use: Use, step: MachineStep): number => use.fact(`run.${step.key}.time`)?.value ?? 0;
  const steps = (use: Use): readonly MachineStep[] => machineSteps(subject.spec, use, setup);
  const drills = namesOf(subject.plant.cutters).filter((id) => present(subject.plant.cutters![id])?.speed);
  return [
    ...drills.map((drill) =>
      derivation({
        id: `run.${setup}.drilling.${drill}`,
        label: `set-up ${setup}: holes drilled with ${drill}`,
        formula: 'sum of their times',
        source: byDefinition,
        value: (use) => {
          const own = holeSteps(subject.spec, use, setup).filter(({ cutter }) => use(cutter) === drill);
          return own.length === 0 ? undefined : cuttingTime(own.reduce((sum, step) => sum + time(use, step), 0));
        },
      }),
    ),
    derivation({
      id: `run.${setup}.cutting`,
      label: `set-up ${setup}: cutting time, all cutters`,
      formula: 'sum of the times of its steps',
      source: byDefinition,
      value: (use) => cuttingTime(steps(use).reduce((sum, step) => sum + time(use, step), 0)),
    }),
    derivation({
      id: `run.${setup}.changes`,
      label: `set-up ${setup}: changes of cutter`,
      formula: 'steps that take another cutter than the one before; the first follows on the last of the body before',
      source: byDefinition,
      value: (use) => ({ kind: 'count', value: changes(subject, use, steps(use)), unit: '', decimals: 0 }),
    }),
    derivation({
      id: `run.${setup}.estimate`,
      label: `set-up ${setup}: time of the machine, estimated`,
      formula: 'cutting × (1 + moves above the wood) + changes × time of a change',
      source: practice('an estimate; common practice, no source'),
      value: (use) => {
        const machine = machineOf(subject, use, setup);
        const air = 1 + use(machine.need('air-moves')).value;
        const change = use.fact(`run.${setup}.changes`).value * use(machine.need('tool-change')).value;
        return minutes(use.fact(`run.${setup}.cutting`).value * air + change);
      },
    }),
    derivation({
      id: `run.${setup}.machine`,
      label: `set-up ${setup}: time of the machine`,
      formula: 'by the clock, where the model gives it; else the estimate',
      source: byDefinition,
      value: (use) => {
        const { cycle } = setupOf(subject.spec, setup);
        return minutes((cycle ? use(cycle) : use.fact(`run.${setup}.estimate`)).value);
      },
    }),
    derivation({
      id: `run.${setup}.spindles`,
      label: `set-up ${setup}: spindles that cut at once`,
      formula: 'as given',
      source: byDefinition,
      value: (use) => use(machineOf(subject, use, setup).need('spindles')),
    }),
    ...(['one', 'all'] as const).map((which) =>
      derivation({
        id: `run.${setup}.body.${which}`,
        label: `set-up ${setup}: time a body, ${which === 'one' ? 'one spindle' : 'all spindles'}`,
        formula:
          which === 'one'
            ? 'time of the machine + load + unload'
            : 'time of the machine ÷ spindles + load + unload: each body is still loaded and unloaded by hand',
        source: practised,
        value: (use) => {
          const machine = machineOf(subject, use, setup);
          const share = which === 'one' ? 1 : use.fact(`run.${setup}.spindles`).value;
          const hands = use(machine.need('load-time')).value + use(machine.need('unload-time')).value;
          return minutes(use.fact(`run.${setup}.machine`).value / share + hands);
        },
      }),
    ),
  ];
}

/** A drill that is driven by hand is in no spindle. */
function changes({ plant }: Subject, use: Use, steps: readonly MachineStep[]): number {
  const cutters = steps
    .filter(({ key, cutter }) => !key.startsWith('channel.') || cutterOf(plant, use, cutter).row.speed !== undefined)
    .map(({ cutter }) => use(cutter));
  return cutters.filter((cutter, i) => cutter !== cutters.at(i - 1)).length;
}

function machineOf({ spec, plant }: Subject, use: Use, setup: SetupId) {
  const name = use(setupOf(spec, setup).machine);
  const found = row(plant.machines, name, 'plant.machines');
  return {
    need: <K extends keyof Machine>(key: K): NonNullable<Machine[K]> =>
      wanted(found[key], `plant.machines.${name}.${key}`) as NonNullable<Machine[K]>,
  };
}

const minutes = (value: number): Time => ({ kind: 'time', value, unit: 'min', decimals: 1 });
