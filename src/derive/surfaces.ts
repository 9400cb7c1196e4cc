/**
 * Surfaces of a body and what holds them apart.
 *
 * z runs from the back to the top of the body, in nanometres; 0 is the back the second set-up rests on. Every edge is a true
 * statement about two surfaces: how far apart they are and why that may be off. Two surfaces may be joined by several ways;
 * each bounds their distance, so the narrowest way is the bound. Set-ups only say which surfaces share a zero: changing one
 * never edits a requirement, it changes the ways.
 */
import type { Use } from '../facts/facts.ts';
import { hole } from '../facts/leaf.ts';
import type { BodyPoint } from '../facts/parts.ts';
import { facesBack, highestPoint, partsOf, pointsOf } from '../facts/parts.ts';
import { row, wanted } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import type { Cause, Length } from '../units/quantity.ts';
import { add, scale, subtract, withCauses } from '../units/arithmetic.ts';

export type SetupId = 'glue-face' | 'back' | 'top';

/** A surface by name: `blank-back`, `back-face`, `blank-face`, `machined-top@crown`, `floor@controls`, `end@stud`. */
export type SurfaceId = string;

interface Edge {
  readonly a: SurfaceId;
  readonly b: SurfaceId;
  /** z of b less z of a, with why it may be off; of a cut whose depth is asked for, only the why counts. */
  readonly apart: Length;
}

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
  if (surface.startsWith('machined-top@')) {
    return use.fact(`thickness.body.machined.${surface.slice('machined-top@'.length) as BodyPoint}`);
  }
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
  return withCauses(
    q,
    (q.causes ?? []).map((cause) => ({ ...cause, cause: `${cause.cause}#${cut}` })),
  );
}

function fixedEdges(subject: Subject, use: Use): Edge[] {
  const { spec } = subject;
  const rests = surfaceOf(spec, use(spec.setups.top['rests-on']));
  const edges: Edge[] = [{ a: 'blank-back', b: 'blank-face', apart: use.fact('thickness.blank') }];
  if (partsOf(spec).includes('back')) {
    edges.push({ a: 'blank-back', b: 'glue-face', apart: use.fact('thickness.part.back.sized') });
  }
  if (facesBack(spec)) edges.push({ a: 'back-face', b: 'blank-face', apart: use.fact('thickness.body.back-faced') });
  for (const point of pointsOf(spec, 'machined')) {
    edges.push({ a: rests, b: `machined-top@${point}`, apart: use.fact(`thickness.body.machined.${point}`) });
  }
  return edges;
}

/** Edges of one cut: to the zero of its set-up, and to whatever else that set-up cuts from the same zero. */
function cutEdges(subject: Subject, use: Use, setup: SetupId, cut: SurfaceId): Edge[] {
  const { spec } = subject;
  const error = cutError(subject, use, setup, cut);
  const edges: Edge[] = [{ a: zeroOf(subject, use, setup), b: cut, apart: error }];
  if (setupOf(spec, setup).faces !== undefined) edges.push({ a: 'back-face', b: cut, apart: error });
  if (setup === 'top') {
    for (const point of pointsOf(spec, 'machined')) edges.push({ a: `machined-top@${point}`, b: cut, apart: error });
  }
  return edges;
}

/** Why the distance from a cut to another surface may be off: the causes of the narrowest way between them. */
export function causesBetween(
  subject: Subject,
  use: Use,
  cut: { setup: SetupId; surface: SurfaceId },
  end: SurfaceId,
): readonly Cause[] {
  return narrowest(
    use,
    [...fixedEdges(subject, use), ...cutEdges(subject, use, cut.setup, cut.surface)],
    cut.surface,
    end,
  );
}

/** Why the distance between two surfaces that are no cuts may be off. */
export function causesApart(subject: Subject, use: Use, from: SurfaceId, to: SurfaceId): readonly Cause[] {
  return narrowest(use, fixedEdges(subject, use), from, to);
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
