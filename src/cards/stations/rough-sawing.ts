/** Location holes through a jig, then the first saw cut, which leaves room. */
import { capOf } from '../../facts/parts.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Check } from '../card.ts';
import { byEye, cautions, key, reliefSteps } from '../common.ts';
import { patternId, plan } from '../drawing/plan.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'rough-sawing',
  on: () => true,
  after: ['picking'],
  machines: ['bandsaw'],
  card: (desk) => {
    const { spec, plant } = desk.subject;
    const holes = patternHoles(desk);
    const cap = desk.route.parts.includes('cap');
    return {
      keyNumbers: [
        key(say('rough-sawing.key.line'), desk.figure('saw.rough.distance', { fraction: true })),
        key(say('rough-sawing.key.holes'), {
          kind: 'series',
          items: holes.map(({ id, hole }) =>
            say('rough-sawing.hole', {
              hole: { kind: 'name', text: id, fact: hole.diameter.id },
              diameter: desk.figure(hole.diameter, { fraction: true }),
            }),
          ),
        }),
      ],
      steps: [
        say('rough-sawing.step.number'),
        say(cap ? 'rough-sawing.step.jig-seam' : 'rough-sawing.step.jig', { jig: jigName(desk) }),
        say('rough-sawing.step.drill'),
        say('rough-sawing.step.prove'),
        say('rough-sawing.step.line', { line: desk.figure('saw.rough.distance', { fraction: true }) }),
        ...reliefSteps(desk, 'rough'),
        say('rough-sawing.step.saw'),
        say('rough-sawing.step.rewrite'),
      ],
      tools: [
        { role: say('tool.jig'), name: jigName(desk) },
        { role: say('tool.machine'), name: desk.machine() },
        { role: say('tool.line'), name: desk.gauge('line').name },
      ],
      checks: [
        byEye(desk, say('rough-sawing.check.pattern'), say('common.go-pin')),
        ...seamCheck(desk),
        byEye(desk, say('rough-sawing.check.line'), desk.gauge('line').name),
        byEye(desk, say('rough-sawing.check.number')),
      ],
      whenOut: [say('rough-sawing.out.line'), say('rough-sawing.out.hole')],
      cautions: cautions(desk, 'blade', 'rotating', 'metal', 'lockout'),
      drawings: [
        plan(desk, {
          caption: say('caption.rough'),
          view: 'top',
          rough: true,
          reliefs: 'rough',
          blank: true,
          seam: cap,
          pattern: true,
        }),
      ],
      tables: [
        {
          title: say('rough-sawing.table', {
            pattern: desk.name(row(plant.patterns, patternId(desk) ?? '', 'plant.patterns').title),
          }),
          columns: [say('column.hole'), say('column.x'), say('column.y'), say('column.diameter'), say('column.deep')],
          rows: holes.map(({ id, hole }) => [
            { kind: 'name', text: id, fact: hole.diameter.id },
            desk.figure(hole.at.x, { fraction: false }),
            desk.figure(hole.at.y, { fraction: false }),
            desk.figure(hole.diameter, { fraction: true }),
            spec.location.depth ? desk.figure(spec.location.depth) : say('rough-sawing.through'),
          ]),
        },
        {
          title: say('rough-sawing.blank'),
          columns: [say('column.length'), say('column.width'), say('column.body-length'), say('column.body-width')],
          rows: [
            [
              desk.figure('blank.length', { decimals: 0, least: true }),
              desk.figure('blank.width', { decimals: 0, least: true }),
              desk.figure('outline.length', { decimals: 0 }),
              desk.figure('outline.width', { decimals: 0 }),
            ],
          ],
        },
      ],
      signOff: [],
    };

    function jigName(at: Desk) {
      return at.name(row(plant.jigs, at.use(spec.location.jig), 'plant.jigs').title);
    }
  },
  sheet: {
    columns: ['sheet-column.jig', 'sheet-column.rough-line'],
    cells: (desk) => {
      const { spec, plant } = desk.subject;
      return [
        desk.name(row(plant.jigs, desk.use(spec.location.jig), 'plant.jigs').title),
        desk.figure('saw.rough.distance', { fraction: true }),
      ];
    },
  },
};
export default station;

function patternHoles(desk: Desk) {
  const { holes } = row(desk.subject.plant.patterns, patternId(desk) ?? '', 'plant.patterns');
  return namesOf(holes).map((id) => ({ id, hole: holes[id]! }));
}

/** The seam of a matched cap becomes the centreline: at both ends it lies on it. */
function seamCheck(desk: Desk): readonly Check[] {
  const { spec, plant } = desk.subject;
  if (!desk.route.parts.includes('cap') || desk.use(capOf(spec).match) === 'none') return [];
  const within = row(plant.lines, desk.use(spec.line), 'plant.lines')['seam-off'];
  return within ? [byEye(desk, say('rough-sawing.check.seam', { within: desk.figure(within) }))] : [];
}
