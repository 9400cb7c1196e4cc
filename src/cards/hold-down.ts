/** What holds a body under a set-up: its zones, what opens each of them, and the force that is left. */
import { cutsOf, cutId, tableOf } from '../facts/cuts.ts';
import { machineSteps } from '../facts/cutting-order.ts';
import { namesOf } from '../facts/row.ts';
import type { DerivedFacts } from '../facts/facts.ts';
import type { Arg, Line, Literal, Table } from './card.ts';
import type { SetupId } from './cutting-order.ts';
import { cutTitle, fixtureOf, leastVacuum, setupOf } from './machining.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';
import { stepTitle } from './step-title.ts';

type Opened = DerivedFacts[`zones.${SetupId}.opened`][number];

/** The zones under a set-up, by the letter in the plan; none where something else holds it. */
export function lettersOfZones(desk: Desk, id: SetupId): ReadonlyMap<string, Literal> {
  const zones = desk.use(setupOf(desk, id).hold) === 'vacuum' ? namesOf(fixtureOf(desk, id).zones) : [];
  // From the end of the alphabet: cavities have the letters from its beginning.
  return new Map(zones.map((zone, i) => [zone, { kind: 'literal', of: 'point', text: String.fromCharCode(90 - i) }]));
}

const zoneTitle = (desk: Desk, id: SetupId, zone: string): Arg => desk.name(fixtureOf(desk, id).zones![zone]!.title);

/** One step for each cut that opens a zone. What opens none is not said. */
export function openingSteps(desk: Desk, id: SetupId): readonly Line[] {
  const zones = [...lettersOfZones(desk, id).keys()];
  if (zones.length === 0) return [];
  const opened = desk.use.fact(`zones.${id}.opened`);
  const steps = machineSteps(desk.subject.spec, desk.use, id)
    .map(({ key }) => key)
    .filter((key) => opened.some(({ step }) => step === key));
  return steps.map((step) =>
    say('machining.step.opens', {
      cut: stepTitle(desk, step),
      zones: {
        kind: 'series',
        items: opened.filter((one) => one.step === step).map(({ zone }) => zoneTitle(desk, id, zone)),
      },
    }),
  );
}

export function holdTables(desk: Desk, id: SetupId): readonly Table[] {
  const letters = lettersOfZones(desk, id);
  if (letters.size === 0) return [];
  const opened = desk.use.fact(`zones.${id}.opened`);
  const columns = (...ids: string[]) => ids.map((column) => say(`hold.column.${column}`));
  const single = { single: true } as const;
  const down = { worst: true } as const;
  const rows = [...letters].map(([zone, letter]): Arg[] => {
    const own = opened.find((one) => one.zone === zone);
    return [
      letter,
      zoneTitle(desk, id, zone),
      desk.figure(`zone.${id}.${zone}.area`, { decimals: 0, worst: true }),
      desk.figure(`zone.${id}.${zone}.force`, down),
      own ? openedBy(desk, own) : say('hold.to-the-end'),
      own ? through(desk, own) : say('running.nothing'),
      own ? desk.figure(`hold.${id}.left.${zone}`, down) : say('running.nothing'),
    ];
  });
  const nearest = desk.use.fact(`hold.${id}.nearest`);
  return [
    {
      title: say('hold.zones', { difference: leastVacuum(desk, id) }),
      columns: columns('letter', 'zone', 'area', 'force', 'opened-by', 'through', 'left'),
      rows,
    },
    {
      title: say('hold.through-the-cuts'),
      columns: columns('start', 'end', 'nearest', 'nearest-force', 'holds', 'side'),
      rows: [
        [
          desk.figure(`hold.${id}.start`, down),
          desk.figure(`hold.${id}.least`, down),
          ...(nearest
            ? [
                stepTitle(desk, nearest.step),
                desk.figure(`hold.${id}.nearest.force`, down),
                desk.figure(`hold.${id}.nearest.holds`, down),
                desk.figure(`hold.${id}.nearest.side`, { ...single, least: true }),
              ]
            : [say('common.none'), say('common.none'), say('common.none'), say('common.none')]),
        ],
      ],
    },
  ];
}

const openedBy = (desk: Desk, { step }: Opened): Arg => (step === 'start' ? say('hold.never') : stepTitle(desk, step));

/** From the zone outward. */
function through(desk: Desk, { by }: Opened): Arg {
  const cuts = cutsOf(desk.subject.spec);
  const items = by.flatMap((id) => {
    const cut = cuts.find((one) => cutId(one) === id);
    return cut ? [cutTitle(desk, tableOf(cut), cut.id)] : [];
  });
  return items.length === 0 ? say('common.none') : { kind: 'series', items };
}
