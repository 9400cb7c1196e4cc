/** What cards say of the tacks between cap and back. */
import { namesOf, row } from '../facts/row.ts';
import type { Figure, Line, Table } from './card.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

/** In the order of their numbers on the drawing. */
export function tackIds({ subject: { spec }, use }: Desk): readonly string[] {
  const own = namesOf(spec.tacks);
  return own.length > 0 ? own : Array.from({ length: use.fact('tacks.count').value }, (_, i) => String(i + 1));
}

const kindOf = ({ subject: { plant } }: Desk, id: string) => row(plant.tacks, id, 'plant.tacks');

/** Kinds with how many of each, in the order they are met. */
function kinds(desk: Desk): readonly { readonly id: string; readonly count: Figure }[] {
  const all = tackIds(desk).map((id) => desk.use.fact(`tack.${id}.spot`).kind);
  return [...new Set(all)].map((id) => ({ id, count: desk.figure(`tacks.of.${id}`) }));
}

/** Set before the glue: headless pins in the back. */
export const pinSteps = (desk: Desk): readonly Line[] => steps(desk, true);

/** Set once the cap lies on the glue. */
export const tackSteps = (desk: Desk): readonly Line[] => [...steps(desk, false), ...stripSteps(desk)];

function steps(desk: Desk, pins: boolean): readonly Line[] {
  return kinds(desk)
    .filter(({ id }) => (desk.use(kindOf(desk, id).face) === 'glue-face') === pins)
    .map(({ id, count }) => {
      const kind = kindOf(desk, id);
      const common = {
        count,
        kind: desk.name(kind.title),
        material: say(`lamination.material.${desk.use(kind.material)}`),
        length: desk.figure(kind.length, { single: true }),
      };
      return pins
        ? say('lamination.step.pins', { ...common, bite: desk.figure(kind.bite, { single: true }) })
        : say('lamination.step.tack', { ...common, face: say(`lamination.face.${desk.use(kind.face)}`) });
    });
}

/** Kinds that stand in the waste. */
export function kindsInWaste(desk: Desk): readonly string[] {
  const spots = tackIds(desk).map((id) => desk.use.fact(`tack.${id}.spot`));
  return [...new Set(spots.filter(({ inBody }) => !inBody).map(({ kind }) => kind))];
}

function stripSteps(desk: Desk): readonly Line[] {
  // Where a blade cannot follow the outline, the strip runs as its line does: further out.
  const straysOut = (['rough', 'trim'] as const).some((saw) => desk.use.fact(`saw.${saw}.cut`).reliefs.length > 0);
  return kindsInWaste(desk).map((kind) =>
    say(`lamination.step.${straysOut ? 'strip-bays' : 'strip'}`, {
      kind: desk.name(kindOf(desk, kind).title),
      from: desk.figure(`tacks.from.${kind}`, { decimals: 1, single: true }),
      to: desk.figure(`tacks.to.${kind}`, { decimals: 1, single: true }),
    }),
  );
}

/** Counted in, and when they come out again. */
export function countSteps(desk: Desk): readonly Line[] {
  if (tackIds(desk).length === 0) return [say('lamination.step.no-tacks')];
  const out = kinds(desk).flatMap(({ id, count }): readonly Line[] => {
    const { out: leaf, title } = kindOf(desk, id);
    if (!leaf) return [];
    const when = say(`lamination.when.${desk.use(leaf)}`);
    return [say('lamination.step.count-out', { kind: desk.name(title), count, when })];
  });
  const stay = desk.use.fact('tacks.stay').value > 0;
  return [...out, ...(stay ? [say('lamination.step.count-stay', { count: desk.figure('tacks.stay') })] : [])];
}

/** Place of each tack; none where there are none. */
export function tackTable(desk: Desk): readonly Table[] {
  const ids = tackIds(desk);
  if (ids.length === 0) return [];
  return [
    {
      title: say('lamination.table'),
      columns: ['tack', 'x', 'y', 'tack-kind'].map((column) => say(`column.${column}`)),
      rows: ids.map((id, i) => [
        { kind: 'literal', of: 'point', text: String(i + 1) },
        desk.figure(`tack.${id}.x`, { decimals: 1 }),
        desk.figure(`tack.${id}.y`, { decimals: 1 }),
        desk.name(kindOf(desk, desk.use.fact(`tack.${id}.spot`).kind).title),
      ]),
    },
  ];
}
