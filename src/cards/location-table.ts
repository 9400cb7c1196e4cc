/** What locates a set-up, in numbers: play at its two pins, how far the body may turn, and how far off its farthest cut lies. */
import type { Arg, Table } from './card.ts';
import type { SetupId } from './cutting-order.ts';
import { cutTitle, offByLocation } from './machining.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

export function locationTable(desk: Desk, id: SetupId): readonly Table[] {
  const datums = desk.use.fact(`location.${id}.datums`);
  const off = offByLocation(desk, id);
  if (!datums || !off) return [];
  const columns = ['first-pin', 'play', 'second-pin', 'play', 'turns', 'farthest', 'lies-off'];
  const play = (which: 'first' | 'second') =>
    desk.figure(`location.${id}.${which}-most-play`, { decimals: 2, least: true });
  return [
    {
      title: say(datums[0].drilled ? 'machining.located-on-holes' : 'machining.located-on-pins'),
      columns: columns.map((column) => say(`column.${column}`)),
      rows: [
        [
          holeName(desk, id, 0),
          play('first'),
          holeName(desk, id, 1),
          play('second'),
          desk.figure(`location.${id}.rotation`, { decimals: 3, least: true }),
          off.cut,
          desk.figure(`location.${id}.most-off`, { decimals: 2, least: true }),
        ],
      ],
    },
  ];
}

/** The hole a pin goes into: one of the body by its title, one of the jig by its name in the pattern. */
function holeName(desk: Desk, setup: SetupId, which: 0 | 1): Arg {
  const fact = `location.${setup}.datums` as const;
  const { id, drilled } = desk.use.fact(fact)![which];
  return drilled ? cutTitle(desk, 'holes', id) : { kind: 'name', text: id.replace(/-/g, ' '), fact };
}
