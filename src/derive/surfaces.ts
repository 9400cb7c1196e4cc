/**
 * Surfaces of a body and what holds them apart.
 *
 * z runs from the back to the top of the body, in nanometres; 0 is the back the second set-up rests on. Every edge is a true
 * statement about two surfaces: how far apart they are and why that may be off. Two surfaces may be joined by several ways;
 * each bounds their distance, so the narrowest way is the bound. Set-ups only say which surfaces share a zero: changing one
 * never edits a requirement, it changes the ways.
 */
import type { SetupId } from '../facts/cutting-order.ts';
import type { Use } from '../facts/facts.ts';
import { hole } from '../facts/leaf.ts';
import type { BodyPoint } from '../facts/parts.ts';
import { facesBack, highestPoint, partsOf, pointsOf } from '../facts/parts.ts';
import { row, wanted } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import type { Cause, Length } from '../units/quantity.ts';
import { add, scale, subtract, withCauses } from '../units/arithmetic.ts';

/** A surface by name: `blank-back`, `back-face`, `blank-face`, `machined-top@crown`, `floor@cavity.controls`. */
export type SurfaceId = string;

export interface Edge {
  readonly a: SurfaceId;
  readonly b: SurfaceId;
  /** z of b less z of a, with why it may be off; of a cut whose depth is asked for, only the why counts. */
  readonly apart: Length;
}

const OVER = 'machined-top@over.';

/** The machined top where it is lowest over a cavity that is cut from the back. */
export const overCut = (id: string): SurfaceId => `${OVER}${id}`;

/** Thickness of the machined body at a place of its top: a named point, or the lowest over a cavity. */
function machinedAt(use: Use, surface: SurfaceId): Length {
  if (surface.startsWith(OVER)) return use.fact(`thickness.over.${surface.slice(OVER.length)}`);
  return use.fact(`thickness.body.machined.${surface.slice('machined-top@'.length) as BodyPoint}`);
}

const isTop = (surface: SurfaceId): boolean => surface.startsWith('machined-top@');

/** What a spec calls a surface, as this body has it. */
export function surfaceOf(spec: Subject['spec'], name: string, point: BodyPoint = highestPoint(spec)): SurfaceId {
  if (name === 'cap-face' || name === 'slab-face') return 'blank-face';
  if (name === 'back-face') return facesBack(spec) ? 'back-face' : 'blank-back';
  return name === 'machined-top' ? `machined-top@${point}` : name;
}

/** Nominal z of every surface that is not the floor of a cut. */
export function surfaceHeight(subject: Subject, use: Use, surface: SurfaceId): Length {
  const { spec } = subject;
  const blank = () => use.fact('thickness.blank');
  const faced = facesBack(spec);
  if (surface === 'blank-face') return faced ? use.fact('thickness.body.back-faced') : blank();
  if (isTop(surface)) return machinedAt(use, surface);
  const zero = scale(blank(), 0);
  const blankBack = faced ? subtract(use.fact('thickness.body.back-faced'), blank()) : zero;
  if (surface === 'glue-face') return add(blankBack, use.fact('thickness.part.back.sized'));
  return surface === 'blank-back' ? blankBack : zero;
}

/** A set-up of the model; the one on the glue face only where the model has it. */
export const setupOf = (spec: Subject['spec'], id: SetupId) => wanted(spec.setups[id], `setups.${id}`);

/** Where Z is zero in a set-up. */
export function zeroOf({ spec }: Subject, use: Use, setup: SetupId): SurfaceId {
  const { 'z-zero': zero, 'rests-on': rests } = setupOf(spec, setup);
  if (use(zero) === 'fixture') return surfaceOf(spec, use(rests));
  return setup === 'back' ? 'blank-back' : setup === 'top' ? 'blank-face' : 'glue-face';
}

/** How far one cut of a set-up's machine may be off in Z: an occasion of its own for each cut. */
export function cutError({ spec, plant }: Subject, use: Use, setup: SetupId, cut: string): Length {
  const machine = use(setupOf(spec, setup).machine);
  const error = row(plant.machines, machine, 'plant.machines')['depth-error'];
  const q = use(wanted(error, `plant.machines.${machine}.depth-error`));
  return withCauses(q, onOccasion(q.causes, cut));
}

/** How far one cut of a set-up's machine may lie off sideways: an occasion of its own too; nothing where its row does not say. */
export function placeError({ spec, plant }: Subject, use: Use, setup: SetupId, cut: string): readonly Cause[] {
  const error = row(plant.machines, use(setupOf(spec, setup).machine), 'plant.machines')['place-error'];
  return error ? onOccasion(use(error).causes, cut) : [];
}

const onOccasion = (causes: readonly Cause[] = [], cut: string): readonly Cause[] =>
  causes.map((cause) => ({ ...cause, cause: `${cause.cause}#${cut}` }));

/** What the blank, the facing of the back and the carve make; of the top, its named points and the ends asked about. */
function fixedEdges(subject: Subject, use: Use, ends: readonly SurfaceId[]): Edge[] {
  const { spec } = subject;
  const rests = surfaceOf(spec, use(spec.setups.top['rests-on']));
  const edges: Edge[] = [{ a: 'blank-back', b: 'blank-face', apart: use.fact('thickness.blank') }];
  if (partsOf(spec).includes('back')) {
    edges.push({ a: 'blank-back', b: 'glue-face', apart: use.fact('thickness.part.back.sized') });
  }
  if (facesBack(spec)) edges.push({ a: 'back-face', b: 'blank-face', apart: use.fact('thickness.body.back-faced') });
  for (const top of topsOf(spec, ends)) edges.push({ a: rests, b: top, apart: machinedAt(use, top) });
  return edges;
}

const topsOf = (spec: Subject['spec'], ends: readonly SurfaceId[]): readonly SurfaceId[] => [
  ...new Set([...pointsOf(spec, 'machined').map((point) => `machined-top@${point}`), ...ends.filter(isTop)]),
];

/** Edges of one cut: to the zero of its set-up, and to whatever else that set-up cuts from the same zero. */
function cutEdges(
  subject: Subject,
  use: Use,
  setup: SetupId,
  { cut, end }: { readonly cut: SurfaceId; readonly end: SurfaceId },
): Edge[] {
  const { spec } = subject;
  const error = cutError(subject, use, setup, cut);
  const edges: Edge[] = [{ a: zeroOf(subject, use, setup), b: cut, apart: error }];
  if (setupOf(spec, setup).faces !== undefined) edges.push({ a: 'back-face', b: cut, apart: error });
  if (setup === 'top') for (const top of topsOf(spec, [end])) edges.push({ a: top, b: cut, apart: error });
  return edges;
}

/** Why the distance from a cut to another surface may be off: the causes of the narrowest way between them. */
export function causesBetween(
  subject: Subject,
  use: Use,
  cut: { setup: SetupId; surface: SurfaceId },
  end: SurfaceId,
): readonly Cause[] {
  const own = cutEdges(subject, use, cut.setup, { cut: cut.surface, end });
  return narrowest(use, [...fixedEdges(subject, use, [end]), ...own], cut.surface, end);
}

/**
 * Why the distance between two surfaces may be off. `edges`: what else is known to hold, such as the limits a cut's depth is
 * passed by.
 */
export function causesApart(
  subject: Subject,
  use: Use,
  from: SurfaceId,
  to: SurfaceId,
  edges: readonly Edge[] = [],
): readonly Cause[] {
  const met = edges.flatMap(({ a, b }) => [a, b]);
  return narrowest(use, [...fixedEdges(subject, use, [from, to, ...met]), ...edges], from, to);
}

/** All ways are tried: there are never more than a few surfaces. A surface that cannot be reached has no causes to give. */
function narrowest(use: Use, edges: readonly Edge[], from: SurfaceId, to: SurfaceId): readonly Cause[] {
  let best: { width: number; causes: readonly Cause[] } | undefined;
  const walk = (at: SurfaceId, way: Length | undefined, seen: readonly SurfaceId[]): void => {
    if (at === to) {
      const width = (way?.high ?? 0) - (way?.low ?? 0);
      if (!best || width < best.width) best = { width, causes: way?.causes ?? [] };
      return;
    }
    for (const edge of edges) {
      const next = edge.a === at ? edge.b : edge.b === at ? edge.a : undefined;
      if (next === undefined || seen.includes(next)) continue;
      const step = edge.a === at ? edge.apart : scale(edge.apart, -1);
      walk(next, way ? add(way, step) : step, [...seen, next]);
    }
  };
  walk(from, undefined, [from]);
  // A surface the body does not have, or one that a set-up ties to itself.
  return best ? best.causes : use(hole(`a way from ${from} to ${to}`));
}
