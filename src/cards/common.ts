/** What several stations say in the same way. */
import { boardOf } from '../facts/parts.ts';
import { row } from '../facts/row.ts';
import type { Part } from '../facts/parts.ts';
import type { Caution, Check, KeyNumber, Line, Literal } from './card.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';
import type { Ref } from './figures.ts';

export const partName = (part: Part): Line => say(`part.${part}`);

/** First piece and then every so many; every piece where the plant says nothing. */
export const often = (desk: Desk): Line => {
  const { every } = desk.row;
  return every && desk.use(every).value > 1
    ? say('common.first-and-every', { count: desk.figure(every) })
    : say('common.every-piece');
};

/** The numbered points of this station, as labels for boxes and drawings. */
export function pointLabels(desk: Desk): readonly Literal[] {
  const id = `points.${desk.station}`;
  const count = desk.has(id) ? (desk.use.fact(id) as readonly number[]).length / 2 : 1;
  return Array.from({ length: count }, (_, i) => ({ kind: 'literal', of: 'point', text: String(i + 1) }));
}

/** A thickness measured with the station's gauge of that role, at its numbered points. */
export function thicknessCheck(desk: Desk, what: Line, ref: Ref, role: string): Check {
  return {
    what,
    limits: desk.limits(ref, role),
    gauge: desk.gauge(role).name,
    often: often(desk),
    boxes: pointLabels(desk),
  };
}

/** The thickness of every part after a stage, checked. */
export const partChecks = (desk: Desk, station: 'planing' | 'sizing', stage: 'planed' | 'sized'): readonly Check[] =>
  desk.route.parts.map((part) =>
    thicknessCheck(
      desk,
      say(`${station}.check.thickness`, { part: partName(part) }),
      `thickness.part.${part}.${stage}`,
      'thickness',
    ),
  );

/** Where the blade cannot turn, short cuts go in first. */
export const reliefSteps = (desk: Desk, which: 'rough' | 'trim'): readonly Line[] =>
  desk.use.fact(`saw.${which}.cut`).reliefs.length > 0 ? [say('common.reliefs')] : [];

export const byEye = (desk: Desk, what: Line, gauge: Check['gauge'] = say('common.by-eye')): Check => ({
  what,
  gauge,
  often: often(desk),
  boxes: [one],
});

export const one: Literal = { kind: 'literal', of: 'point', text: '' };

export const key = (label: Line, value: KeyNumber['value']): KeyNumber => ({ label, value });

/** Out of limits: another pass where wood is left, else set aside; who decides. */
export const thickOrThin = (desk: Desk): readonly Line[] => [
  say('when-out.thick'),
  say('when-out.thin', { who: desk.name(desk.row.decides) }),
];

type Hazard =
  | 'rotating'
  | 'blade'
  | 'feed'
  | 'belt'
  | 'field'
  | 'press'
  | 'vacuum'
  | 'glue'
  | 'tacks'
  | 'rollers'
  | 'lifting'
  | 'metal'
  | 'lockout'
  | 'stopped'
  | 'first-cut';

const signals: Readonly<Record<Hazard, Caution['signal']>> = {
  rotating: 'warning',
  blade: 'warning',
  feed: 'warning',
  belt: 'warning',
  field: 'danger',
  press: 'warning',
  vacuum: 'warning',
  glue: 'caution',
  tacks: 'caution',
  rollers: 'warning',
  lifting: 'caution',
  metal: 'warning',
  lockout: 'warning',
  stopped: 'warning',
  'first-cut': 'warning',
};

/** Hazards of making chips and dust. */
const cutting: ReadonlySet<Hazard> = new Set(['rotating', 'blade', 'belt']);

/** The hazards of a station, then the dust of the woods in hand, then whose word comes first. */
export function cautions(desk: Desk, ...hazards: readonly Hazard[]): readonly Caution[] {
  return [
    ...hazards.map((hazard) => ({ signal: signals[hazard], line: say(`cautions.${hazard}`) })),
    ...(hazards.some((hazard) => cutting.has(hazard)) ? dust(desk) : []),
    { signal: 'notice', line: say('cautions.manual') },
  ];
}

function dust(desk: Desk): readonly Caution[] {
  const { spec, plant } = desk.subject;
  const species = new Set(desk.route.parts.map((part) => desk.use(boardOf(spec, part).species)));
  return [...species].flatMap((id) => {
    const { title, warning } = row(plant.species, id, 'plant.species');
    const wood = desk.name(title);
    return warning
      ? [
          {
            signal: 'warning',
            line: say('cautions.species', { wood, warning: desk.name(warning) }),
          } as const,
        ]
      : [{ signal: 'warning', line: say('cautions.dust', { wood }) } as const];
  });
}
