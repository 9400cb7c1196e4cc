/** Parts that are fitted later, with what they find here: tried in at sign-off, and one row for those that find the same. */
import { cavityOfPart, fittedId, fittedOf } from '../facts/fitted.ts';
import type { Fitted, FittedId } from '../facts/fitted.ts';
import { namesOf, row } from '../facts/row.ts';
import type { Arg, Check, Line, Name, Table } from './card.ts';
import { byEye } from './common.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

const rowOf = (desk: Desk, { hardware }: Fitted) =>
  row(desk.subject.plant.hardware, desk.use(hardware), 'plant.hardware');

export function hardwareTable(desk: Desk): readonly Table[] {
  const alike = new Map<string, { where: Arg[]; cells: readonly Arg[] }>();
  for (const fitted of fittedOf(desk.subject.spec)) {
    const found = numbers(desk, fitted);
    // A bridge is tried over its holes: of it there is no number to say.
    if (!found.some(({ kind }) => kind === 'figure')) continue;
    const cells = [desk.name(rowOf(desk, fitted).title), ...found];
    const key = JSON.stringify(cells, (name, value: unknown) => (name === 'fact' ? undefined : value));
    const met = alike.get(key);
    if (met) met.where.push(where(desk, fitted));
    else alike.set(key, { where: [where(desk, fitted)], cells });
  }
  if (alike.size === 0) return [];
  const rows = [...alike.values()].map(({ where: places, cells: [title, ...rest] }): Arg[] => [
    title!,
    { kind: 'series', items: places },
    ...rest,
  ]);
  const columns = ['part', 'fitted-at', 'hole-needed', 'depth-worst', 'room-worst', 'to-cover-worst', 'ring-covers'];
  return [{ title: say('sign-off.hardware'), columns: columns.map((column) => say(`column.${column}`)), rows }];
}

/** The cavity, hole or channel by its title; of a fitting, its own. */
function where({ use, name, subject: { spec } }: Desk, { kind, id, title, hardware }: Fitted): Arg {
  if (title) return name(title);
  const inside = kind === 'fitting' ? spec.fittings![id]!.in : undefined;
  const cavity = inside && spec.cavities![use(inside)]!.title;
  return cavity ? name(cavity) : { kind: 'name', text: id.replace(/-/g, ' '), fact: hardware.id };
}

function numbers(desk: Desk, fitted: Fitted): readonly Arg[] {
  const { hole, depth } = rowOf(desk, fitted);
  const nothing = say('running.nothing');
  const its = hole ? desk.figure(hole, { fraction: true }) : nothing;
  const onFace = fitted.kind === 'fitting' && desk.subject.spec.fittings![fitted.id]!.in === undefined;
  if (fitted.kind === 'channel' || onFace) return [its, nothing, nothing, nothing, nothing];
  const id = fittedId(fitted);
  const found = (
    fact: `fitted.${FittedId}.${'room-worst' | 'depth-worst' | 'lip'}` | `fitted.hole.${string}.to-cover-worst`,
  ) => (desk.use.fact(fact) ? desk.figure(fact, { decimals: 2, worst: true, single: true }) : nothing);
  return [
    its,
    depth ? found(`fitted.${id}.depth-worst`) : nothing,
    found(`fitted.${id}.room-worst`),
    fitted.kind === 'hole' ? found(`fitted.hole.${fitted.id}.to-cover-worst`) : nothing,
    found(`fitted.${id}.lip`),
  ];
}

/** Go/no-go with the parts themselves: what drops in, what goes through a panel, what stands on its holes. */
export function partsTried(desk: Desk, gauge: Check['gauge']): readonly Check[] {
  const through = (fitted: Fitted) => fitted.kind === 'hole' && rowOf(desk, fitted).panel !== undefined;
  const lies = (fitted: Fitted) =>
    fitted.kind !== 'channel' && cavityOfPart(desk.subject.spec, desk.use, fitted) !== undefined;
  const stands = (fitted: Fitted) => namesOf(rowOf(desk, fitted).mounts).length > 0;
  const line = (id: string, which: (fitted: Fitted) => boolean): readonly Line[] => {
    const titles = titlesOf(desk, which);
    return titles.length > 0 ? [say(id, { parts: { kind: 'series', items: titles } })] : [];
  };
  return [
    ...line('sign-off.check.drops-in', (fitted) => fitted.kind !== 'hole' && lies(fitted)),
    ...line('sign-off.check.goes-through', through),
    ...line('sign-off.check.stands', stands),
  ].map((what) => byEye(desk, what, gauge));
}

function titlesOf(desk: Desk, which: (fitted: Fitted) => boolean): readonly Name[] {
  const titles = fittedOf(desk.subject.spec)
    .filter(which)
    .map((fitted) => desk.name(rowOf(desk, fitted).title));
  return titles.filter(({ fact }, i) => titles.findIndex((other) => other.fact === fact) === i);
}
