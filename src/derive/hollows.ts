/** What is hollow in a body while a set-up cuts it, and what it meets: the ways air may take to a vacuum zone. */
import type { Use } from '../facts/facts.ts';
import type { Cut } from '../facts/cuts.ts';
import { cutId, cutsOf, pairsOf } from '../facts/cuts.ts';
import type { SetupId, StepKey } from '../facts/cutting-order.ts';
import { machineSteps, setupOrder } from '../facts/cutting-order.ts';
import type { Subject } from '../facts/subject.ts';
import { footprint, leftBetween } from '../geometry/solid/wood-left.ts';
import type { Pocket } from '../geometry/solid/solid.ts';
import { setupOf } from './surfaces.ts';
import type { Hollow, Mouth, Way } from './zones.ts';

/** A hole of the drilling jig among the hollows. */
export const jigHole = (id: string): string => `location.${id}`;

/** The face that lies on the fixture, by the one that looks up. */
type Rest = 'top' | 'back';
const restOf = (up: string): Rest => (up === 'back' ? 'top' : 'back');

interface Side {
  readonly up: 'back' | 'top' | 'glue-face';
  readonly rest: Rest;
  readonly steps: readonly StepKey[];
  /** Cuts of the set-ups before, and of this one. */
  readonly cuts: readonly { readonly cut: Cut; readonly from: number }[];
}

function sideOf({ spec }: Subject, use: Use, setup: SetupId): Side {
  const up = use(setupOf(spec, setup).up);
  const steps = machineSteps(spec, use, setup).map(({ key }) => key);
  const place = setupOrder.indexOf(setup);
  const cuts = cutsOf(spec).flatMap((cut) => {
    const own = use(cut.spec.setup) as SetupId;
    if (setupOrder.indexOf(own) > place) return [];
    return [{ cut, from: own === setup ? steps.indexOf(cutId(cut)) : -1 }];
  });
  return { up, rest: restOf(up), steps, cuts };
}

/** At worst nothing is left there. */
function isThrough(use: Use, left: `left.${string}`): boolean {
  const wood = use.fact(left)?.wood;
  return wood !== undefined && (wood.low ?? wood.value) <= 0;
}

/** What opens to the face on the fixture before the first cut. */
export function mouthsUnder(subject: Subject, use: Use, setup: SetupId): readonly Mouth[] {
  const { rest, cuts } = sideOf(subject, use, setup);
  const own = cuts.flatMap(({ cut, from }): Mouth[] => {
    if (from >= 0) return [];
    const what = use.fact(`${cutId(cut)}.void`);
    return what.kind === 'pocket' && what.opens === rest ? [{ id: cutId(cut), region: what.region }] : [];
  });
  const jig = use
    .fact('location.holes')
    .filter((hole) => opensTo(hole, rest))
    .map(({ id, region }) => ({ id: jigHole(id), region }));
  return [...own, ...jig];
}

/** Drilled from the top: to the back only where it goes right through. */
const opensTo = ({ floor }: Pocket, face: string): boolean => face === 'top' || (face === 'back' && floor.zMm <= 0);

/** Everything hollow, with the step it is there from, the air it has of its own, and what it meets. */
export function hollowsOf(subject: Subject, use: Use, setup: SetupId): readonly Hollow[] {
  const side = sideOf(subject, use, setup);
  const met = new Map<string, string[]>();
  const there = new Set(side.cuts.map(({ cut }) => cutId(cut)));
  for (const { a, b, left } of pairsOf(subject.spec)) {
    if (!there.has(cutId(a)) || !there.has(cutId(b)) || !isThrough(use, left)) continue;
    met.set(cutId(a), [...(met.get(cutId(a)) ?? []), cutId(b)]);
  }
  return [
    ...side.cuts.map(({ cut, from }): Hollow => {
      const id = cutId(cut);
      return {
        id,
        from,
        air: airOf(use, side, cut, from),
        mouth: mouthOf(use, side, cut),
        meets: met.get(id) ?? [],
      };
    }),
    ...use.fact('location.holes').map((hole): Hollow => ({
      id: jigHole(hole.id),
      from: -1,
      air: opensTo(hole, side.up) ? { from: -1, way: 'face' } : undefined,
      mouth: opensTo(hole, side.rest) ? hole.region : undefined,
      meets: side.cuts
        .map(({ cut }) => cutId(cut))
        .filter((id) => (leftBetween(hole, use.fact(`${id}.void`))?.mm ?? Infinity) <= 0),
    })),
  ];
}

function airOf(use: Use, { up, steps }: Side, cut: Cut, from: number): Hollow['air'] {
  const id = cutId(cut);
  const own = use.fact(`${id}.void`);
  const at = (step: number, way: Way) => ({ from: step, way });
  if (from >= 0 && own.kind === 'pocket') return at(from, 'face');
  if (isThrough(use, `left.${id}.side`)) return at(from, 'side');
  if (up === 'glue-face' || !isThrough(use, `left.${id}.${up}`)) return undefined;
  // Its roof is taken off by what shapes the face that looks up: by the first of them, to be safe.
  return at(Math.max(from, steps.findIndex(isShaping)), 'face');
}

const isShaping = (key: StepKey): boolean => /\.(?:face|carve)$|^contour\./.test(key);

function mouthOf(use: Use, { rest }: Side, cut: Cut): Hollow['mouth'] {
  const own = use.fact(`${cutId(cut)}.void`);
  if (own.kind === 'pocket' && own.opens === rest) return own.region;
  // One that comes out below: wherever it lies over a zone, that zone is cut into.
  return isThrough(use, `left.${cutId(cut)}.${rest}`) ? footprint(own) : undefined;
}
