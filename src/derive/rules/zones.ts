/** Vacuum zones of the fixture under each set-up: where they lie, whether they seal, what they hold, and what opens them when. */
import type { SetupId, StepKey } from '../../facts/cutting-order.ts';
import { machineSteps, setupOrder } from '../../facts/cutting-order.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf, row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { regionArea } from '../../geometry/measure.ts';
import { intersection } from '../../geometry/offset.ts';
import { depthOn } from '../../geometry/solid/face.ts';
import { holdForce } from '../../reference/hold-down.ts';
import type { Quantity } from '../../units/quantity.ts';
import { hollowsOf, mouthsUnder } from '../hollows.ts';
import { toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { setupOf } from '../surfaces.ts';
import type { Leak, Way, ZonePlace } from '../zones.ts';
import { leaksOf, openedBy, zonePlace } from '../zones.ts';
import { drawnAt } from './cut-outline.ts';
import type { Drawn } from './outline.ts';

/** Why a zone no longer holds, and from which step on. */
export interface ZoneOpened {
  readonly zone: string;
  readonly step: StepKey | 'start';
  /** Its place in the order of cutting; −1: before the first. */
  readonly at: number;
  readonly way: Way | 'gasket';
  /** What the air comes through, from the zone outward: `hole.neck-screw-a`, `cavity.neck-pocket`. */
  readonly by: readonly string[];
}

/** Nothing of a set-up that is held otherwise, or whose fixture has no zone of that name. */
declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`zones.${SetupId}.opened`, readonly ZoneOpened[]> {
    [id: `zone.${SetupId}.${string}.drawn`]: Drawn | undefined;
    [id: `zone.${SetupId}.${string}.place`]: ZonePlace | undefined;
    [id: `zone.${SetupId}.${string}.leaks`]: readonly Leak[] | undefined;
    [id: `zone.${SetupId}.${string}.area`]: Quantity<'area'> | undefined;
    [id: `zone.${SetupId}.${string}.force`]: Quantity<'force'> | undefined;
  }
}

const air = practice('pressure × area: the air outside pushes on all that a sealed zone covers; physics, no source');

const rule: Rule = (subject) =>
  setupOrder
    .filter((setup) => subject.spec.setups[setup] !== undefined)
    .flatMap((setup) => [
      ...zoneNames(subject).flatMap((zone) => ofZone(subject, setup, zone)),
      derivation({
        id: `zones.${setup}.opened`,
        label: `set-up ${setup}: which operation opens which zone to the air`,
        formula:
          'from the mouths in a zone through all that meets, at worst, to where air is, with the first step that makes such a way; a gasket that does not seal never holds',
        source: byDefinition,
        value: (use) => opened(subject, use, setup),
      }),
    ]);
export default rule;

/** Names of zones on any fixture: which of them this one has is read, and on record, in each fact. */
export const zoneNames = ({ plant }: Subject): readonly string[] => [
  ...new Set(namesOf(plant.fixtures).flatMap((fixture) => namesOf(plant.fixtures![fixture]!.zones))),
];

/** The zones under a set-up, in the order of its fixture; none where something else holds it. */
export function zonesUnder({ spec, plant }: Subject, use: Use, setup: SetupId): readonly string[] {
  const { hold, fixture } = setupOf(spec, setup);
  return use(hold) === 'vacuum' ? namesOf(row(plant.fixtures, use(fixture), 'plant.fixtures').zones) : [];
}

const ofZone = (subject: Subject, setup: SetupId, zone: string) => {
  const id = `zone.${setup}.${zone}` as const;
  const label = `set-up ${setup}, zone ${zone}`;
  return [
    derivation({
      id: `${id}.drawn`,
      label: `${label}: outline`,
      formula: 'shape placed by point and angle, as it is on the fixture',
      source: byDefinition,
      value: (use) => {
        if (!zonesUnder(subject, use, setup).includes(zone)) return undefined;
        const fixture = use(setupOf(subject.spec, setup).fixture);
        const own = row(subject.plant.fixtures, fixture, 'plant.fixtures').zones![zone]!;
        // A fixture is what it is: that of the left hand has its own.
        return drawnAt({ ...subject, hand: 'right' }, use, own, `plant.fixtures.${fixture}.zones.${zone}`);
      },
    }),
    derivation({
      id: `${id}.place`,
      label: `${label}: where it lies, with its gasket`,
      formula: 'outline, and the width of the gasket outside of it',
      source: byDefinition,
      value: (use) => placeOf(subject, use, setup, zone),
    }),
    derivation({
      id: `${id}.leaks`,
      label: `${label}: where its gasket does not seal`,
      formula: 'the gasket over the edge of the body, over what was cut before, or where the face is not flat',
      source: practice('all of a gasket lies on flat wood; common practice, no source'),
      value: (use) => leaks(subject, use, setup, zone),
    }),
    derivation({
      id: `${id}.area`,
      label: `${label}: area under the body`,
      formula: 'area inside the gasket that lies under the body',
      source: byDefinition,
      value: (use) => {
        const place = use.fact(`${id}.place`);
        const under = place && intersection([place.inside], [use.fact('outline.polygon')]);
        return under && { kind: 'area', value: regionArea(under) / 1e6, unit: 'cm²', decimals: 1 };
      },
    }),
    derivation({
      id: `${id}.force`,
      label: `${label}: what it holds with while it is sealed`,
      formula: 'pressure difference the interlock lets through at the least × area',
      source: air,
      value: (use) => {
        const area = use.fact(`${id}.area`);
        return area && force(holdForce(use.fact(`hold.${setup}.difference`)!.value, area.value));
      },
    }),
  ];
};

export const force = (newton: number): Quantity<'force'> => ({ kind: 'force', value: newton, unit: 'N', decimals: 0 });

function placeOf(subject: Subject, use: Use, setup: SetupId, zone: string): ZonePlace | undefined {
  const drawn = use.fact(`zone.${setup}.${zone}.drawn`);
  if (!drawn) return undefined;
  const fixture = use(setupOf(subject.spec, setup).fixture);
  const { gasket } = row(subject.plant.fixtures, fixture, 'plant.fixtures');
  if (!drawn.ok) return use(hole(`plant.fixtures.${fixture}.zones.${zone}.shape`));
  return zonePlace(drawn.polygon, toMm(use(wanted(gasket, `plant.fixtures.${fixture}.gasket`))));
}

function leaks(subject: Subject, use: Use, setup: SetupId, zone: string): readonly Leak[] | undefined {
  const place = use.fact(`zone.${setup}.${zone}.place`);
  if (!place) return undefined;
  // Only the back has its shape when a body lies on it; every other face is still as glued.
  const back = setup === 'top' ? use.fact('face.back') : undefined;
  return leaksOf(place, {
    outline: use.fact('outline.polygon'),
    awayMm: (x, y) => (back ? depthOn(back, x, y) : 0),
    mouths: mouthsUnder(subject, use, setup),
  });
}

function opened(subject: Subject, use: Use, setup: SetupId): readonly ZoneOpened[] {
  const zones = zonesUnder(subject, use, setup);
  if (zones.length === 0) return [];
  const isSealed = (zone: string) => use.fact(`zone.${setup}.${zone}.leaks`)?.length === 0;
  const sealed = zones.filter(isSealed).map((id) => ({ id, place: use.fact(`zone.${setup}.${id}.place`)! }));
  const found = openedBy(
    sealed,
    hollowsOf(
      subject,
      use,
      setup,
      sealed.map(({ place }) => place.whole),
    ),
  );
  const steps = machineSteps(subject.spec, use, setup);
  return zones.flatMap((zone): ZoneOpened[] => {
    if (!isSealed(zone)) return [{ zone, step: 'start', at: -1, way: 'gasket', by: [] }];
    const own = found.get(zone);
    if (!own) return [];
    return [{ zone, step: steps[own.step]?.key ?? 'start', at: own.step, way: own.way, by: own.by }];
  });
}
