/**
 * How a body is held by vacuum, step by step: with what force, how hard it may be pushed sideways, and how hard it is.
 *
 * Counted at the least pressure difference the interlock lets a program run with. What a zone holds is lost with the step that
 * opens it, for that step too. Pins are not counted: they locate, and a body that only they keep can climb off them.
 */
import type { SetupId, StepKey } from '../../facts/cutting-order.ts';
import { machineSteps, setupOrder } from '../../facts/cutting-order.ts';
import { byHand, cutterOf } from '../../facts/cutter-row.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice, publishedIn } from '../../facts/facts.ts';
import { Leaf } from '../../facts/leaf.ts';
import { row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import {
  heldSideways,
  STANDARD_AIR_CERTAINTY,
  STANDARD_AIR_PA,
  STANDARD_AIR_SOURCE,
} from '../../reference/hold-down.ts';
import { nominal } from '../../units/arithmetic.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { setupOf } from '../surfaces.ts';
import { force, zoneNames, zonesUnder } from './zones.ts';

/** One step of a set-up: newtons. */
export interface Held {
  readonly step: StepKey;
  /** What the zones that hold through this step push down with. */
  readonly force: number;
  /** How hard it may be pushed sideways. */
  readonly holds: number;
  /** How hard the cutter pushes at most. */
  readonly side: number;
  /** How hard it pulls up at most. */
  readonly lift: number;
  /** Where its side force is given, and its lift where it has one. */
  readonly from: readonly string[];
  /** Zones that have air by then. */
  readonly gone: readonly string[];
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      /** Of a set-up that nothing else holds; nothing of any other. */
      Record<`hold.${SetupId}.difference`, Quantity<'pressure'> | undefined>,
      Record<`hold.${SetupId}.start`, Quantity<'force'> | undefined>,
      Record<`hold.${SetupId}.least`, Quantity<'force'> | undefined>,
      Record<`hold.${SetupId}.steps`, readonly Held[]>,
      Record<`hold.${SetupId}.nearest`, Held | undefined>,
      Record<`hold.${SetupId}.nearest.${'force' | 'holds' | 'side'}`, Quantity<'force'> | undefined> {
    'hold.air': Quantity<'pressure'>;
    [id: `hold.${SetupId}.left.${string}`]: Quantity<'force'> | undefined;
  }
}

const sideways = practice(
  'friction × force ÷ factor of the plant; common practice, from memory. Friction, factor and side force are numbers of the plant',
);

const rule: Rule = (subject) => [
  derivation({
    id: 'hold.air',
    label: 'air pressure of the place, at the least',
    formula: 'as the plant gives it, else the standard atmosphere',
    source: publishedIn(STANDARD_AIR_SOURCE),
    value: (use) => {
      const own = subject.plant.plant?.['air-pressure'];
      if (own) return nominal({ ...use(own), value: use(own).low ?? use(own).value });
      const writing = { kind: 'published', source: STANDARD_AIR_SOURCE, certainty: STANDARD_AIR_CERTAINTY } as const;
      const standard: Quantity<'pressure'> = { kind: 'pressure', value: STANDARD_AIR_PA, unit: 'kPa', decimals: 3 };
      return use(new Leaf('published.standard-atmosphere', '', writing, standard));
    },
  }),
  ...setupOrder.filter((setup) => subject.spec.setups[setup] !== undefined).flatMap((setup) => ofSetup(subject, setup)),
];
export default rule;

const ofSetup = (subject: Subject, setup: SetupId) => [
  derivation({
    id: `hold.${setup}.difference`,
    label: `set-up ${setup}: least pressure difference it is cut with`,
    formula: 'what the interlock of the machine asks for; the lower limit, where it has limits',
    source: byDefinition,
    value: (use) => {
      if (use(setupOf(subject.spec, setup).hold) !== 'vacuum') return undefined;
      const { interlock } = vacuumOf(subject, use, setup);
      return nominal({ ...use(interlock), value: use(interlock).low ?? use(interlock).value });
    },
  }),
  derivation({
    id: `hold.${setup}.start`,
    label: `set-up ${setup}: force that holds the body before the first cut`,
    formula: 'sum of its zones, less those that have air already',
    source: byDefinition,
    value: (use) => held(subject, use, setup, BEFORE),
  }),
  derivation({
    id: `hold.${setup}.least`,
    label: `set-up ${setup}: force that holds the body when all is cut`,
    formula: 'sum of the zones that no step opens',
    source: byDefinition,
    value: (use) => held(subject, use, setup, AT_THE_END),
  }),
  ...zoneSteps(subject, setup),
  derivation({
    id: `hold.${setup}.steps`,
    label: `set-up ${setup}: how each step is held`,
    formula:
      'friction × (force − lift) ÷ factor, with the zones that hold through the step, against the side force of its cutter',
    source: sideways,
    value: (use) => steps(subject, use, setup),
  }),
  derivation({
    id: `hold.${setup}.nearest`,
    label: `set-up ${setup}: the step that is held with the least to spare`,
    formula: 'least of what holds sideways ÷ side force',
    source: byDefinition,
    value: (use) =>
      use
        .fact(`hold.${setup}.steps`)
        .reduce<Held | undefined>((least, one) => (least && ratio(least) <= ratio(one) ? least : one), undefined),
  }),
  ...(['force', 'holds', 'side'] as const).map((what) =>
    derivation({
      id: `hold.${setup}.nearest.${what}`,
      label: `set-up ${setup}: ${WORDS[what]} in the step held with the least to spare`,
      formula: 'of that step',
      source: byDefinition,
      value: (use) => {
        const nearest = use.fact(`hold.${setup}.nearest`);
        return nearest && force(nearest[what]);
      },
    }),
  ),
];

const WORDS = {
  force: 'force of the zones',
  holds: 'side force it may be pushed with',
  side: 'side force of the cutter',
};

const ratio = ({ holds, side }: Held): number => holds / side;

/** What is left after each zone is opened, by the zone. */
const zoneSteps = (subject: Subject, setup: SetupId) =>
  zoneNames(subject).map((zone) =>
    derivation({
      id: `hold.${setup}.left.${zone}`,
      label: `set-up ${setup}: force left when zone ${zone} has air`,
      formula: 'sum of the zones that still hold then',
      source: byDefinition,
      value: (use) => {
        const own = use.fact(`zones.${setup}.opened`).find((one) => one.zone === zone);
        return own && held(subject, use, setup, own.at);
      },
    }),
  );

/** The vacuum of the machine, or a hole that says it has none. */
function vacuumOf({ spec, plant }: Subject, use: Use, setup: SetupId) {
  const machine = use(setupOf(spec, setup).machine);
  return wanted(row(plant.machines, machine, 'plant.machines').vacuum, `plant.machines.${machine}.vacuum`);
}

/** Zones that have air once a step is cut, by its place in the order of cutting. */
const goneAfter = (use: Use, setup: SetupId, step: number): readonly string[] =>
  use
    .fact(`zones.${setup}.opened`)
    .filter(({ at }) => at <= step)
    .map(({ zone }) => zone);

const BEFORE = -1;
const AT_THE_END = Infinity;

/** Sum of the zones that still hold then; nothing of a set-up without zones. */
function held(subject: Subject, use: Use, setup: SetupId, step: number): Quantity<'force'> | undefined {
  const zones = zonesUnder(subject, use, setup);
  if (zones.length === 0) return undefined;
  const gone = goneAfter(use, setup, step);
  const holding = zones.filter((zone) => !gone.includes(zone));
  return force(holding.reduce((sum, zone) => sum + use.fact(`zone.${setup}.${zone}.force`)!.value, 0));
}

function steps(subject: Subject, use: Use, setup: SetupId): readonly Held[] {
  if (zonesUnder(subject, use, setup).length === 0) return [];
  const { spec, plant } = subject;
  const machine = use(setupOf(spec, setup).machine);
  const most = (leaf: Leaf<Quantity<'force'>>) => use(leaf).high ?? use(leaf).value;
  const friction = use(vacuumOf(subject, use, setup).friction);
  const factor = use(wanted(plant.plant?.['hold-factor'], 'plant.plant.hold-factor')).value;
  return machineSteps(spec, use, setup).flatMap(({ key, cutter }, at): Held[] => {
    const own = cutterOf(plant, use, cutter);
    // What is drilled by hand is drilled by hand; a drill of the machine pushes down, unless its row says more.
    if (byHand(own)) return [];
    const fallback = row(plant.machines, machine, 'plant.machines')['side-force'];
    const isDrill = use(own.row.kind) === 'drill';
    const push =
      own.row['side-force'] ?? (isDrill ? undefined : wanted(fallback, `plant.machines.${machine}.side-force`));
    const side = push ? most(push) : 0;
    const lift = own.row.lift ? most(own.row.lift) : 0;
    if (side === 0 && lift === 0) return [];
    const down = held(subject, use, setup, at)!.value;
    const holds = heldSideways({ force: down, lift, friction: friction.low ?? friction.value, factor });
    return [
      {
        step: key,
        force: down,
        holds,
        side,
        lift,
        from: [push, own.row.lift].flatMap((leaf) => leaf?.id ?? []),
        gone: goneAfter(use, setup, at),
      },
    ];
  });
}
