/** Bookmatch and joint: halves opened like a book, boards put edge to edge, edges jointed. */
import { boardOf, capOf } from '../../facts/parts.ts';
import { row } from '../../facts/row.ts';
import { byEye, cautions, key, partName } from '../common.ts';
import { plan } from '../drawing/plan.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'jointing',
  on: ({ parts, pieces }) => parts.some((part) => (pieces[part] ?? 1) > 1),
  after: ['conditioning'],
  machines: ['jointer'],
  card: (desk) => {
    const { spec } = desk.subject;
    const parts = jointed(desk);
    const slip = parts.includes('cap') && desk.use(capOf(spec).match) === 'slip';
    const book = parts.includes('cap') && desk.use(capOf(spec).match) === 'book';
    return {
      keyNumbers: parts
        .flatMap((part) => [
          key(say('jointing.key.pieces', { part: partName(part) }), desk.figure(`blank.${part}.pieces`)),
          key(
            say('jointing.key.width', { part: partName(part) }),
            desk.figure(`blank.${part}.piece-width`, { decimals: 0, least: true }),
          ),
        ])
        .concat(key(say('jointing.key.length'), desk.figure('blank.length', { decimals: 0, least: true }))),
      steps: [
        say('jointing.step.order'),
        ...resawn(desk).map(({ part, into, saw, leaf }) =>
          say('jointing.step.resaw', { part: partName(part), into, saw, leaf }),
        ),
        ...(book ? [say('jointing.step.open'), say('jointing.step.pair-id')] : []),
        ...(slip ? [say('jointing.step.slip'), say('jointing.step.pair-id')] : []),
        ...(parts.some((part) => part !== 'cap') ? [say('jointing.step.boards')] : []),
        say('jointing.step.joint'),
        say('jointing.step.prove'),
        ...(book ? [say('jointing.step.seam')] : []),
      ],
      tools: [
        { role: say('tool.machine'), name: desk.machine() },
        ...resawn(desk).map(({ saw }) => ({ role: say('tool.resaw'), name: saw })),
        { role: say('tool.straightedge'), name: desk.gauge('straightedge').name },
        { role: say('tool.width'), name: desk.gauge('width').name },
      ],
      checks: [
        byEye(desk, say('jointing.check.gap'), desk.gauge('straightedge').name),
        ...parts.map((part) =>
          byEye(
            desk,
            say('jointing.check.width', {
              part: partName(part),
              width: desk.figure(`blank.${part}.piece-jointed`, { decimals: 0, least: true }),
            }),
            desk.gauge('width').name,
          ),
        ),
        ...(book ? [byEye(desk, say('jointing.check.figure'))] : []),
      ],
      whenOut: [say('jointing.out.gap'), say('jointing.out.narrow')],
      cautions: cautions(
        desk,
        'rotating',
        ...(resawn(desk).length > 0 ? (['blade'] as const) : []),
        'feed',
        'lockout',
        'stopped',
      ),
      drawings: [
        plan(desk, {
          caption: say(book ? 'caption.bookmatch' : 'caption.boards'),
          view: 'top',
          rough: true,
          blank: true,
          seam: true,
          pairs: book || slip,
        }),
      ],
      tables: [],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.pieces', 'sheet-column.piece-width', 'sheet-column.length'],
    cells: (desk) => [
      {
        kind: 'series',
        items: jointed(desk).map((part) =>
          say('sheet-cell.part-value', { part: partName(part), value: desk.figure(`blank.${part}.pieces`) }),
        ),
      },
      {
        kind: 'series',
        items: jointed(desk).map((part) =>
          say('sheet-cell.part-value', {
            part: partName(part),
            value: desk.figure(`blank.${part}.piece-width`, { decimals: 0, least: true }),
          }),
        ),
      },
      desk.figure('blank.length', { decimals: 0, least: true }),
    ],
  },
};
export default station;

const jointed = (desk: Desk) => desk.route.parts.filter((part) => (desk.route.pieces[part] ?? 1) > 1);

/** Parts whose boards are sawn into leaves first, and how thick a leaf must come out. */
function resawn(desk: Desk) {
  const { spec, plant } = desk.subject;
  return desk.route.parts.flatMap((part) => {
    const { resawn: cut } = row(plant.stock, desk.use(boardOf(spec, part).stock), 'plant.stock');
    if (!cut) return [];
    return [
      {
        part,
        into: desk.figure(cut.into),
        saw: desk.name(row(plant.machines, desk.use(cut.saw), 'plant.machines').title),
        leaf: desk.figure(`stock.${part}.needed`, { decimals: 1, least: true }),
      },
    ];
  });
}
