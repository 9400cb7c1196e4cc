/** Pilots of a set-up and the screws that go into them later: one row a screw, with what its wood asks of the pilot. */
import type { Arg, Table } from './card.ts';
import type { SetupId } from './cutting-order.ts';
import { cutTitle, holesOf } from './machining.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';
import { row, wanted } from '../facts/row.ts';

export function screwTable(desk: Desk, id: SetupId): readonly Table[] {
  const { spec, plant } = desk.subject;
  const screwed = holesOf(desk, id).filter((name) => spec.holes![name]!.screw !== undefined);
  // Pilots of one screw and one diameter are alike: the wood of a set-up is one.
  const alike = new Map<string, string[]>();
  for (const name of screwed) {
    const { screw, diameter } = spec.holes![name]!;
    const key = `${desk.use(wanted(screw, `holes.${name}.screw`))} ${desk.use(diameter).value}`;
    alike.set(key, [...(alike.get(key) ?? []), name]);
  }
  if (alike.size === 0) return [];
  const rows = [...alike.values()].map((names): Arg[] => {
    const first = names[0]!;
    const { screw, diameter } = spec.holes![first]!;
    const least = desk.use.fact(`screw.${first}.least-pilot`).value;
    return [
      desk.name(row(plant.screws, desk.use(screw!), 'plant.screws').title),
      { kind: 'series', items: names.map((name) => cutTitle(desk, 'holes', name)) },
      desk.figure(diameter, { fraction: true }),
      least > 0 ? desk.figure(`screw.${first}.least-pilot`, { decimals: 2, least: true }) : say('common.none'),
      desk.figure(`screw.${first}.most-pilot`, { decimals: 2, worst: true }),
      desk.figure(`screw.${first}.root`),
      say(`machining.root-from-${desk.use.fact(`screw.${first}.root-from`)}`),
    ];
  });
  const columns = ['screw', 'pilots', 'diameter', 'pilot-least', 'pilot-most', 'root', 'root-from'];
  return [{ title: say('machining.screws'), columns: columns.map((column) => say(`column.${column}`)), rows }];
}
