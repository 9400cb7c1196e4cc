/** The long lists of a machining card: cavities, holes and channels with their numbers, and the shape of the top. */
import type { Arg, Table } from './card.ts';
import { cavitiesOf } from './cutting-order.ts';
import type { SetupId } from './cutting-order.ts';
import { cavityLetters, holeNumbers } from './drawing/lettered.ts';
import { channelsOf, contoursOf, contourTitle, cutTitle, cutterName, holesOf } from './machining.ts';
import { surfaceName } from './surface-name.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

/** Every cut with its number for the program and for the gauge. */
export function depthTable(desk: Desk, id: SetupId): readonly Table[] {
  const { spec } = desk.subject;
  const letters = cavityLetters(desk, id);
  const cavities = cavitiesOf(desk, id).map((name): Arg[] => {
    const cavity = spec.cavities![name]!;
    const { way, from } = desk.use.fact(`cavity.${name}.measuring`);
    return [
      letters.get(name)!,
      cutTitle(desk, 'cavities', name),
      desk.figure(`cavity.${name}.height`, { decimals: 2 }),
      desk.limits(`cavity.${name}.measured`, way === 'depth' ? 'depth' : 'height'),
      say(`machining.measured-${way}`, { from: surfaceName(from) }),
      woodLeft(desk, `cavity.${name}`),
      cutterName(desk, desk.use(cavity.cutter)),
      desk.figure(cavity.corner, { single: true }),
    ];
  });
  const numbers = holeNumbers(desk, id);
  const holes = holesOf(desk, id).map((name): Arg[] => {
    const hole = spec.holes![name]!;
    const { way, from } = desk.use.fact(`hole.${name}.measuring`);
    return [
      say('machining.hole', { number: numbers.get(name)!, hole: cutTitle(desk, 'holes', name) }),
      desk.figure(`hole.${name}.across`, { single: true }),
      desk.figure(hole.at.y, { single: true, fraction: false }),
      desk.figure(hole.diameter, { fraction: true }),
      desk.figure(`hole.${name}.height`, { decimals: 2 }),
      ...(opensInto(desk, name) ?? [
        desk.limits(`hole.${name}.measured`, way === 'depth' ? 'depth' : 'height'),
        say(`machining.measured-${way}`, { from: surfaceName(from) }),
      ]),
      cutterName(desk, desk.use(hole.drill)),
    ];
  });
  const columns = (...ids: string[]) => ids.map((column) => say(`column.${column}`));
  return [
    ...(cavities.length > 0
      ? [
          {
            title: say('machining.cavities'),
            columns: columns('letter', 'cavity', 'z', 'measured', 'from', 'left-both', 'cutter', 'corner'),
            rows: cavities,
          },
        ]
      : []),
    ...(holes.length > 0
      ? [
          {
            title: say('machining.holes'),
            columns: columns('hole', 'x', 'y', 'diameter', 'z', 'measured', 'from', 'cutter'),
            rows: holes,
          },
        ]
      : []),
    ...channelTable(desk, id),
    ...contourTable(desk, id),
    ...edgeTable(desk, id),
  ];
}

/** A hole for a shaft comes out in the cavity its part sits in: there is no floor to measure. */
function opensInto(desk: Desk, hole: string): readonly Arg[] | undefined {
  const fact = `fitted.hole.${hole}.cavity` as const;
  const cavity = desk.has(`panel.${hole}.least`) && desk.has(fact) ? desk.use.fact(fact) : undefined;
  if (cavity === undefined) return undefined;
  const into = cutTitle(desk, 'cavities', cavity.replace(/^cavity\./, ''));
  return [say('machining.opens-into', { into }), say('common.by-eye')];
}

/** Wood left at its floor, as drawn and at worst; none where it is meant to run into all it meets. */
function woodLeft(desk: Desk, cut: `cavity.${string}`): Arg {
  if (desk.use.fact(`${cut}.thinnest`) === undefined) return say('common.none');
  return say('machining.left', {
    left: desk.figure(`${cut}.floor-left`, { decimals: 1, single: true }),
    worst: desk.figure(`${cut}.floor-worst`, { decimals: 1, single: true, worst: true }),
  });
}

/** Channels and bores: where the drill goes in, where its tip stops, and how deep its axis lies there. */
function channelTable(desk: Desk, id: SetupId): readonly Table[] {
  const { channels } = desk.subject.spec;
  const own = channelsOf(desk, id);
  if (own.length === 0) return [];
  const rows = own.map((name): Arg[] => {
    const channel = channels![name]!;
    return [
      cutTitle(desk, 'channels', name),
      desk.figure(`channel.${name}.start-across`, { single: true }),
      desk.figure(channel.start.y, { single: true, fraction: false }),
      desk.figure(`channel.${name}.end-across`, { single: true }),
      desk.figure(channel.end.y, { single: true, fraction: false }),
      desk.figure(channel.depth, { single: true }),
      desk.figure(`channel.${name}.end-depth`, { decimals: 1, single: true }),
      cutterName(desk, desk.use(channel.drill)),
    ];
  });
  const columns = ['channel', 'x', 'y', 'end-x', 'end-y', 'axis', 'end-axis', 'cutter'];
  return [{ title: say('machining.channels'), columns: columns.map((column) => say(`column.${column}`)), rows }];
}

/** Where each contour of this face begins and how it falls away. */
function contourTable(desk: Desk, id: SetupId): readonly Table[] {
  const { contours } = desk.subject.spec;
  const own = contoursOf(desk, id);
  if (own.length === 0) return [];
  const rows = own.map((name): Arg[] => {
    const { from, to, slope, width, depth } = contours![name]!;
    const across = (end: 'from' | 'to') => desk.figure(`contour.${name}.${end}-across`, { single: true });
    const or = (leaf: typeof width | typeof slope) => (leaf ? desk.figure(leaf, { single: true }) : say('common.none'));
    return [
      contourTitle(desk, name),
      across('from'),
      desk.figure(from.y, { single: true }),
      across('to'),
      desk.figure(to.y, { single: true }),
      or(slope),
      or(width),
      or(depth),
    ];
  });
  const columns = ['contour', 'x', 'y', 'end-x', 'end-y', 'slope', 'contour-width', 'contour-depth'];
  return [{ title: say('machining.contours'), columns: columns.map((column) => say(`column.${column}`)), rows }];
}

/** What is cut along the whole edge of this face. */
function edgeTable(desk: Desk, id: SetupId): readonly Table[] {
  const edge = id === 'glue-face' ? undefined : desk.subject.spec.edges?.[id];
  const sizes = [
    ['round', edge?.round],
    ['ledge-width', edge?.ledge?.width],
    ['ledge-depth', edge?.ledge?.depth],
  ] as const;
  const given = sizes.flatMap(([column, leaf]) => (leaf ? [{ column, leaf }] : []));
  if (given.length === 0) return [];
  return [
    {
      title: say('machining.edges'),
      columns: given.map(({ column }) => say(`column.${column}`)),
      rows: [given.map(({ leaf }) => desk.figure(leaf))],
    },
  ];
}

/** The shape of the top as drawn: where its zones lie, from the edge inward. */
export function carveTable(desk: Desk): readonly Table[] {
  const { land, recurve, crown, bevel, kind } = desk.subject.spec.carve;
  const zones = [
    ['land', land?.width],
    ['recurve-at', recurve?.at],
    ['recurve-depth', recurve?.depth],
    ['crown-from', crown?.from],
    ['bevel', bevel?.width],
  ] as const;
  const given = zones.flatMap(([zone, leaf]) => (leaf ? [{ zone, leaf }] : []));
  if (given.length === 0) return [];
  return [
    {
      title: say(`machining.carve-${desk.use(kind)}`),
      columns: given.map(({ zone }) => say(`column.${zone}`)),
      rows: [given.map(({ leaf }) => desk.figure(leaf))],
    },
  ];
}
