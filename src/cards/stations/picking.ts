/** Picking: the right wood for the finish, neither too poor nor too good, marked with its order. */
import { boardOf, capOf } from '../../facts/parts.ts';
import { namesOf, row } from '../../facts/row.ts';
import { byEye, cautions, key, partName } from '../common.ts';
import { plan } from '../drawing/plan.ts';
import type { Name, Series } from '../card.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'picking',
  on: () => true,
  after: ['conditioning'],
  card: (desk) => {
    const { spec, plant } = desk.subject;
    const { parts } = desk.route;
    return {
      keyNumbers: bands(desk).map(({ finish, band }) => key(say('picking.key.band', { finish }), band)),
      steps: [
        say('picking.step.order'),
        say('picking.step.finish'),
        say('picking.step.pair'),
        say('picking.step.flaws'),
        say('picking.step.label'),
        say('picking.step.write'),
        say('picking.step.too-good', { who: desk.name(desk.row.decides) }),
      ],
      tools: parts.map((part) => ({
        role: partName(part),
        name: desk.name(row(plant.species, desk.use(boardOf(spec, part).species), 'plant.species').title),
      })),
      checks: [
        byEye(desk, say('picking.check.band')),
        byEye(desk, say('picking.check.flaws')),
        ...(parts.includes('cap') ? [byEye(desk, say('picking.check.pair'))] : []),
        byEye(desk, say('picking.check.number')),
      ],
      whenOut: [say('picking.out.poor'), say('picking.out.good', { who: desk.name(desk.row.decides) })],
      cautions: cautions(desk, 'lifting'),
      drawings: [
        plan(desk, {
          caption: say('caption.flaws'),
          view: 'top',
          rough: true,
          blank: true,
          seam: true,
          flaws: true,
          pairs: parts.includes('cap') && desk.use(capOf(spec).match) !== 'none',
        }),
      ],
      tables: [
        {
          title: say('picking.table'),
          columns: [
            say('column.part'),
            say('column.pieces'),
            say('column.piece-width'),
            say('column.length'),
            say('column.bought'),
          ],
          rows: parts.map((part) => [
            partName(part),
            desk.figure(`blank.${part}.pieces`),
            desk.figure(`blank.${part}.piece-width`, { decimals: 0, least: true }),
            desk.figure('blank.length', { decimals: 0, least: true }),
            desk.figure(`blank.${part}.bought`, { single: true }),
          ]),
        },
        {
          title: say('picking.stock'),
          columns: ['part', 'stock', 'boards', 'needed', 'standard', 'surfaced'].map((id) => say(`column.${id}`)),
          rows: parts.map((part) => [
            partName(part),
            desk.name(row(plant.stock, desk.use(boardOf(spec, part).stock), 'plant.stock').title),
            desk.figure(`stock.${part}.boards`),
            desk.figure(`stock.${part}.board`, { decimals: 1, least: true }),
            desk.figure(`stock.${part}.rough`, { single: true, fraction: true }),
            desk.figure(`stock.${part}.surfaced`, { single: true, fraction: true }),
          ]),
        },
      ],
      signOff: [],
    };
  },
  sheet: {
    columns: ['sheet-column.bands'],
    cells: (desk) => [
      {
        kind: 'series',
        items: bands(desk).map(({ finish, band }) => say('sheet-cell.part-value', { part: finish, value: band })),
      },
    ],
  },
};
export default station;

/** Permitted steps of every scale under each finish. */
function bands({ subject: { spec, plant }, use, name }: Desk): { finish: Name; band: Series }[] {
  return spec.finishes.map((leaf) => {
    const id = use(leaf);
    const band = row(spec.grades, id, 'grades');
    const items = namesOf(band).map((scale) => {
      const { title, steps } = row(plant.grades, scale, 'plant.grades');
      // From the poorest to the best, as the scale has them.
      const rank = steps.map((step) => use(step));
      const allowed = band[scale]!.toSorted((a, b) => rank.indexOf(use(a)) - rank.indexOf(use(b)));
      return say('picking.scale', { scale: name(title), steps: { kind: 'series', items: allowed.map(name) } });
    });
    return { finish: name(row(plant.finishes, id, 'plant.finishes').title), band: { kind: 'series', items } };
  });
}
