/** What is hollow in a body while a set-up cuts it, and what it meets: the ways air may take to a vacuum zone. */
import type { Use } from '../facts/facts.ts';
import type { Cut } from '../facts/cuts.ts';
import { cutId, cutsOf } from '../facts/cuts.ts';
import type { SetupId } from '../facts/cutting-order.ts';
import { machineSteps, setupOrder } from '../facts/cutting-order.ts';
import type { Subject } from '../facts/subject.ts';
import type { Region } from '../geometry/polygon.ts';
import { footprint, leftBetween } from '../geometry/solid/wood-left.ts';
import type { Pocket, Void } from '../geometry/solid/solid.ts';
import { setupOf } from './surfaces.ts';
import type { Hollow, Mouth } from './zones.ts';
import { areOneOnOther } from './zones.ts';

/** A hole of the drilling jig among the hollows. */
export const jigHole = (id: string): string => `location.${id}`;

/** The face that lies on the fixture, by the one that looks up. */
type Rest = 'top' | 'back';

function facesOf({ spec }: Subject, use: Use, setup: SetupId) {
  const up = use(setupOf(spec, setup).up);
  return { up, rest: up === 'back' ? 'top' : 'back' } as const;
}

const setupOfCut = (use: Use, cut: Cut): SetupId => use(cut.spec.setup) as SetupId;

const isBefore = (use: Use, cut: Cut, setup: SetupId): boolean =>
  setupOrder.indexOf(setupOfCut(use, cut)) < setupOrder.indexOf(setup);

/** At worst nothing is left there. */
function isThrough(use: Use, left: `left.${string}`): boolean {
  const wood = use.fact(left)?.wood;
  return wood !== undefined && (wood.low ?? wood.value) <= 0;
}

/** What opens to the face on the fixture before the first cut. A channel has no mouth of its own. */
export function mouthsUnder(subject: Subject, use: Use, setup: SetupId): readonly Mouth[] {
  const { rest } = facesOf(subject, use, setup);
  const own = cutsOf(subject.spec)
    .filter((cut) => cut.kind !== 'channel' && isBefore(use, cut, setup))
    .flatMap((cut): Mouth[] => {
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

/** One thing that is hollow, before it is known what it meets. */
interface One {
  readonly hollow: Omit<Hollow, 'meets' | 'air'>;
  readonly own: Void;
  readonly cut: Cut | undefined;
}

/**
 * Everything hollow that is joined to a zone, with the step it is there from, the air it has of its own, and what it meets. What
 * is joined to none of them is not looked at.
 */
export function hollowsOf(subject: Subject, use: Use, setup: SetupId, zones: readonly Region[]): readonly Hollow[] {
  const { up, rest } = facesOf(subject, use, setup);
  const all = onesIn(subject, use, setup, { rest, zones });
  const steps = machineSteps(subject.spec, use, setup).map(({ key }) => key);
  const shaped = steps.findIndex((key) => /\.(?:face|carve)$|^contour\./.test(key));
  const joined = all.filter(({ hollow }) => zones.some((zone) => hollow.mouth && areOneOnOther(hollow.mouth, zone)));
  const found: Hollow[] = [];
  // From the zones outward; the list grows while it is walked.
  for (const one of joined) {
    const next = all.filter((other) => other !== one && doMeet(subject, use, one, other));
    for (const other of next) if (!joined.includes(other)) joined.push(other);
    const { hollow, cut } = one;
    const from = hollow.from === 0 && cut ? steps.indexOf(cutId(cut)) : -1;
    found.push({
      ...hollow,
      from,
      air: airOf(use, one, { up, from, shaped }),
      meets: next.map(({ hollow: { id } }) => id),
    });
  }
  return found;
}

/** Cuts of the set-ups before, those of this one, marked with a step of 0, and holes of the drilling jig. */
function onesIn(
  subject: Subject,
  use: Use,
  setup: SetupId,
  { rest, zones }: { readonly rest: Rest; readonly zones: readonly Region[] },
): readonly One[] {
  const cuts = cutsOf(subject.spec).flatMap((cut): One[] => {
    const here = setupOfCut(use, cut) === setup;
    if (!here && !isBefore(use, cut, setup)) return [];
    const own = use.fact(`${cutId(cut)}.void`);
    return [{ hollow: { id: cutId(cut), from: here ? 0 : -1, mouth: mouthOf(use, own, rest, zones) }, own, cut }];
  });
  const holes = use.fact('location.holes').map((own): One => ({
    hollow: { id: jigHole(own.id), from: -1, mouth: opensTo(own, rest) ? own.region : undefined },
    own,
    cut: undefined,
  }));
  return [...cuts, ...holes];
}

/** What comes out below over a zone cuts into it, wherever it lies. */
function mouthOf(use: Use, own: Void, rest: Rest, zones: readonly Region[]): Region | undefined {
  if (own.kind === 'pocket' && own.opens === rest) return own.region;
  const shadow = footprint(own);
  const isOver = zones.some((zone) => areOneOnOther(shadow, zone));
  return isOver && isThrough(use, `left.${own.id}.${rest}`) ? shadow : undefined;
}

function doMeet({ spec }: Subject, use: Use, a: One, b: One): boolean {
  if (!a.cut || !b.cut) return (leftBetween(a.own, b.own)?.mm ?? Infinity) <= 0;
  const order = cutsOf(spec).map(cutId);
  const [first, second] = order.indexOf(cutId(a.cut)) < order.indexOf(cutId(b.cut)) ? [a, b] : [b, a];
  return isThrough(use, `left.${first.own.id}.${second.own.id}`);
}

function airOf(
  use: Use,
  { own, cut }: One,
  { up, from, shaped }: { readonly up: string; readonly from: number; readonly shaped: number },
): Hollow['air'] {
  if (!cut) return opensTo(own as Pocket, up) ? { from, way: 'face' } : undefined;
  if (from >= 0 && own.kind === 'pocket') return { from, way: 'face' };
  if (isThrough(use, `left.${own.id}.side`)) return { from, way: 'side' };
  if (up === 'glue-face' || !isThrough(use, `left.${own.id}.${up}`)) return undefined;
  // Its roof is taken off by what shapes the face that looks up: by the first of them, to be safe.
  return { from: Math.max(from, shaped), way: 'face' };
}
