/** What both machining cards have in common: set-up, cutters in order, cuts with their depths. */
import { cutId, cutsOf, tableOf } from '../facts/cuts.ts';
import { namesOf, row, wanted } from '../facts/row.ts';
import type { Arg, Check, Figure, Line, Tool } from './card.ts';
import { byEye, often, one } from './common.ts';
import { cavitiesOf } from './cutting-order.ts';
import type { SetupId } from './cutting-order.ts';
import { surfaceName } from './surface-name.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

export const setupOf = (desk: Desk, id: SetupId) => wanted(desk.subject.spec.setups[id], `setups.${id}`);

export const fixtureOf = (desk: Desk, id: SetupId) =>
  row(desk.subject.plant.fixtures, desk.use(setupOf(desk, id).fixture), 'plant.fixtures');

export const fixtureName = (desk: Desk, id: SetupId): Arg => desk.name(fixtureOf(desk, id).title);

const machineName = (desk: Desk, id: SetupId): Arg =>
  desk.name(row(desk.subject.plant.machines, desk.use(setupOf(desk, id).machine), 'plant.machines').title);

export const holesOf = (desk: Desk, id: SetupId): readonly string[] =>
  namesOf(desk.subject.spec.holes).filter((name) => desk.use(desk.subject.spec.holes![name]!.setup) === id);

/** How the body is put on the fixture, in words. */
export function settingSteps(desk: Desk, id: SetupId): readonly Line[] {
  const setup = setupOf(desk, id);
  const { plant } = desk.subject;
  const { use } = desk;
  const off = offByLocation(desk, id);
  const within = off ? '-within' : '';
  const located: Line = setup.pins
    ? say(`machining.step.pins${within}`, {
        pattern: desk.name(row(plant.patterns, use(setup.pins), 'plant.patterns').title),
        ...off,
      })
    : say(`machining.step.locates${within}`, {
        holes: { kind: 'series', items: (setup['locates-on'] ?? []).map((hole) => cutTitle(desk, 'holes', use(hole))) },
        ...off,
      });
  return [
    say('machining.step.read-back', { fixture: fixtureName(desk, id), program: desk.name(setup.program) }),
    ...(setup.flip ? [say(`machining.step.flip-${use(setup.flip)}`)] : []),
    say(`machining.step.rests-${use(setup['rests-on'])}`),
    located,
    use(setup.hold) === 'vacuum'
      ? say('machining.step.hold-vacuum', { difference: leastVacuum(desk, id) })
      : say(`machining.step.hold-${use(setup.hold)}`),
    say(`machining.step.zero-${use(setup['z-zero'])}`),
  ];
}

/** What the gauge must show before each cycle: no less, in both units. Gauges of vacuum have inches of mercury beside kPa. */
export function leastVacuum(desk: Desk, id: SetupId): Figure {
  const fact = `hold.${id}.difference` as const;
  return desk.figure(fact, { least: true, second: desk.use.fact(fact)?.unit === 'inHg' ? 'kPa' : 'inHg' });
}

/** The cut that lies farthest off by the location of its set-up, and how far; nothing where the pins are not known. */
export function offByLocation(desk: Desk, id: SetupId): { readonly cut: Arg; readonly off: Arg } | undefined {
  const farthest = desk.use.fact(`location.${id}.farthest`);
  if (!farthest || !desk.use.fact(`location.${id}.first-play`) || !desk.use.fact(`location.${id}.second-play`)) {
    return undefined;
  }
  const cut = cutsOf(desk.subject.spec).find((one) => cutId(one) === farthest.cut)!;
  return {
    cut: cutTitle(desk, tableOf(cut), cut.id),
    off: desk.figure(`location.${id}.most-off`, { decimals: 2, least: true, single: true }),
  };
}

/** Steps of cutting: skim, perimeter or carve, cavities in order, holes. */
export function cuttingSteps(desk: Desk, id: SetupId): readonly Line[] {
  const { cutters, faces } = setupOf(desk, id);
  const own = cavitiesOf(desk, id);
  const holes = holesOf(desk, id);
  return [
    ...(cutters?.face
      ? [
          say(faces ? 'machining.step.face' : 'machining.step.face-top', {
            cutter: cutterName(desk, desk.use(cutters.face)),
          }),
        ]
      : []),
    ...(cutters?.carve ? [say('machining.step.carve', { cutter: cutterName(desk, desk.use(cutters.carve)) })] : []),
    ...contoursOf(desk, id).map((name) =>
      say('machining.step.contour', {
        contour: contourTitle(desk, name),
        cutter: cutterName(desk, desk.use(desk.subject.spec.contours![name]!.cutter)),
      }),
    ),
    ...(cutters?.perimeter
      ? [say(`machining.step.perimeter-${id}`, { cutter: cutterName(desk, desk.use(cutters.perimeter)) })]
      : []),
    ...(own.length > 0
      ? [
          say('machining.step.cavities', {
            cavities: { kind: 'series', items: own.map((name) => cutTitle(desk, 'cavities', name)) },
          }),
        ]
      : []),
    ...edgeSteps(desk, id),
    ...drillingSteps(desk, id, holes.length > 0),
  ];
}

/** What a smaller cutter takes along the whole edge, when all else is cut. */
function edgeSteps(desk: Desk, id: SetupId): readonly Line[] {
  const edge = id === 'glue-face' ? undefined : desk.subject.spec.edges?.[id];
  return edge ? [say('machining.step.edge', { cutter: cutterName(desk, desk.use(edge.cutter)) })] : [];
}

export const contoursOf = (desk: Desk, id: SetupId): readonly string[] => {
  const { contours } = desk.subject.spec;
  return namesOf(contours).filter((name) => desk.use(contours![name]!.face) === id);
};

export function contourTitle(desk: Desk, id: string): Arg {
  const { title, face } = desk.subject.spec.contours![id]!;
  return title ? desk.name(title) : { kind: 'name', text: id.replace(/-/g, ' '), fact: face.id };
}

function drillingSteps(desk: Desk, id: SetupId, holes: boolean): readonly Line[] {
  const channels = channelsOf(desk, id).length > 0;
  if (!holes && !channels) return [];
  return [
    say(holes && channels ? 'machining.step.holes-channels' : `machining.step.${holes ? 'holes' : 'channels'}`),
    ...plugSteps(desk, id),
  ];
}

/** Holes of channels in the side that no part closes. */
function plugSteps(desk: Desk, id: SetupId): readonly Line[] {
  const { channels } = desk.subject.spec;
  const plugged = channelsOf(desk, id).filter((name) => {
    const { mouth } = channels![name]!;
    return mouth && desk.use(mouth) === 'plugged' && desk.use.fact(`channel.${name}.mouth`);
  });
  if (plugged.length === 0) return [];
  const items = plugged.map((name) => cutTitle(desk, 'channels', name));
  return [say('machining.step.plug', { channels: { kind: 'series', items } })];
}

export const channelsOf = (desk: Desk, id: SetupId): readonly string[] => {
  const { channels } = desk.subject.spec;
  return namesOf(channels).filter((name) => desk.use(channels![name]!.setup) === id);
};

export function cutTitle(desk: Desk, table: 'cavities' | 'holes' | 'channels', id: string): Arg {
  const cut = desk.subject.spec[table]![id]!;
  return cut.title ? desk.name(cut.title) : { kind: 'name', text: id.replace(/-/g, ' '), fact: cut.setup.id };
}

export function cutterName(desk: Desk, id: string): Arg {
  return desk.name(row(desk.subject.plant.cutters, id, 'plant.cutters').title);
}

/** Machine, fixture, program. Cutters are named in the steps, and in the order they run in the table of operations. */
export function machiningTools(desk: Desk, id: SetupId): readonly Tool[] {
  const setup = setupOf(desk, id);
  return [
    { role: say('tool.machine'), name: machineName(desk, id) },
    { role: say('tool.fixture'), name: fixtureName(desk, id) },
    { role: say('tool.program'), name: desk.name(setup.program) },
    ...(setup.cycle ? [{ role: say('tool.cycle'), name: desk.figure(setup.cycle) }] : []),
  ];
}

/** What the gauge must read of a cavity from where it is held. */
export function depthCheck(desk: Desk, name: string): Check {
  const { way, from } = desk.use.fact(`cavity.${name}.measuring`);
  const role = way === 'depth' ? 'depth' : 'height';
  return {
    what: say(`machining.check.${way}`, { cavity: cutTitle(desk, 'cavities', name), from: surfaceName(from) }),
    limits: desk.limits(`cavity.${name}.measured`, role),
    gauge: desk.gauge(role).name,
    often: often(desk),
    boxes: [one],
  };
}

export function machiningChecks(desk: Desk, id: SetupId): readonly Check[] {
  return holesOf(desk, id).length > 0
    ? [byEye(desk, say('machining.check.holes-edges'), say('common.by-list'))]
    : [byEye(desk, say('machining.check.edges'))];
}
