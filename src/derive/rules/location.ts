/** What the pins of each set-up leave open: play at each of the two, rotation, and how far the cut farthest off may lie. */
import type { CutId } from '../../facts/cuts.ts';
import { cutId } from '../../facts/cuts.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import { cutsInOrder, setupOrder } from '../../facts/cutting-order.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice, publishedIn } from '../../facts/facts.ts';
import type { Subject } from '../../facts/subject.ts';
import { acrossError, rotationError } from '../../geometry/two-pin.ts';
import { forEachEdge } from '../../geometry/polygon.ts';
import { FITS_SOURCE } from '../../reference/fits.ts';
import { withCauses, worstCase } from '../../units/arithmetic.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Place, Which } from '../location.ts';
import { setupCauses } from '../location.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { Datum } from '../seats.ts';
import { clearanceOf, datumPair, seatOf } from '../seats.ts';

/** The place of a set-up's cuts that its location moves most. */
export interface Farthest extends Place {
  readonly cut: CutId;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`location.${SetupId}.datums`, readonly [Datum, Datum] | undefined>,
      /** Hole less pin; nothing where the fixture does not say what pins it has. */
      Record<`location.${SetupId}.${Which}-play`, Length | undefined>,
      Record<`location.${SetupId}.${Which}-most-play`, Length | undefined>,
      Record<`location.${SetupId}.spacing`, Length | undefined>,
      Record<`location.${SetupId}.rotation`, Quantity<'angle'> | undefined>,
      Record<`location.${SetupId}.farthest`, Farthest | undefined>,
      Record<`location.${SetupId}.off`, Length | undefined>,
      Record<`location.${SetupId}.most-off`, Length | undefined>,
      Record<`location.${SetupId}.play-across`, Length | undefined> {}
}

const two = practice(
  'round and diamond pin, a rigid body: across the line of the pins e(a) = c1/2·|1 − a/L| + c2/2·|a/L|, rotation (c1 + c2)/(2L); derived here, no source',
);

const rule: Rule = (subject) =>
  setupOrder.filter((setup) => subject.spec.setups[setup] !== undefined).flatMap((setup) => ofSetup(subject, setup));
export default rule;

const ofSetup = (subject: Subject, setup: SetupId) => [
  derivation({
    id: `location.${setup}.datums`,
    label: `set-up ${setup}: the two holes that locate it`,
    formula: 'of all it is pinned through, the two farthest apart; the one with the round pin first',
    source: byDefinition,
    value: (use) => datumPair(subject, use, setup),
  }),
  ...(['first', 'second'] as const).map((which) =>
    derivation({
      id: `location.${setup}.${which}-play`,
      label: `set-up ${setup}: play at the ${which} pin`,
      formula: 'diameter of the hole less diameter of the pin, each within its limits',
      source: publishedIn(FITS_SOURCE),
      value: (use) => playOf(subject, use, setup, which),
    }),
  ),
  ...(['first', 'second'] as const).map((which) =>
    derivation({
      id: `location.${setup}.${which}-most-play`,
      label: `set-up ${setup}: play at the ${which} pin, at most`,
      formula: 'upper limit of it',
      source: publishedIn(FITS_SOURCE),
      value: (use) => {
        const play = use.fact(`location.${setup}.${which}-play`);
        return play && { ...lengthOfMm(0, 2), value: play.high ?? play.value };
      },
    }),
  ),
  derivation({
    id: `location.${setup}.spacing`,
    label: `set-up ${setup}: distance between its pins`,
    formula: 'distance of the two holes',
    source: byDefinition,
    value: (use) => {
      const datums = use.fact(`location.${setup}.datums`);
      return datums && lengthOfMm(Math.hypot(datums[0].xMm - datums[1].xMm, datums[0].yMm - datums[1].yMm));
    },
  }),
  derivation({
    id: `location.${setup}.rotation`,
    label: `set-up ${setup}: how far the body may turn on its pins`,
    formula: '(play at the first + play at the second, at most) / twice their distance',
    source: two,
    value: (use) => {
      const [plays, spacing] = [playsOf(use, setup), use.fact(`location.${setup}.spacing`)];
      if (!plays || !spacing) return undefined;
      const turn = (rotationError(plays, spacing.value) * 180) / Math.PI;
      return { kind: 'angle', value: turn, unit: 'deg', decimals: 3 };
    },
  }),
  derivation({
    id: `location.${setup}.farthest`,
    label: `set-up ${setup}: the cut its location moves most`,
    formula: 'of all corners of its cuts, the one with the largest error',
    source: two,
    value: (use) => farthestOf(subject, use, setup),
  }),
  derivation({
    id: `location.${setup}.off`,
    label: `set-up ${setup}: how far its farthest cut may lie off by location`,
    formula:
      'half the play at either pin and how far off its hole was drilled, each times how much further the place moves',
    source: two,
    value: (use) => {
      const farthest = use.fact(`location.${setup}.farthest`);
      return farthest && withCauses(lengthOfMm(0, 2), setupCauses(subject, use, setup, farthest));
    },
  }),
  derivation({
    id: `location.${setup}.most-off`,
    label: `set-up ${setup}: how far its farthest cut may lie off by location, at most`,
    formula: 'upper limit of it',
    source: two,
    value: (use) => {
      const off = use.fact(`location.${setup}.off`);
      return off && { ...lengthOfMm(0, 2), value: off.high ?? 0 };
    },
  }),
  derivation({
    id: `location.${setup}.play-across`,
    label: `set-up ${setup}: how far its farthest cut may lie off across the line of the pins, by their play alone`,
    formula: 'e(a) = c1/2·|1 − a/L| + c2/2·|a/L|',
    source: two,
    value: (use) => playAcross(use, setup),
  }),
];

function playOf(subject: Subject, use: Use, setup: SetupId, which: Which): Length | undefined {
  const datum = use.fact(`location.${setup}.datums`)?.[which === 'first' ? 0 : 1];
  const seat = datum && seatOf(subject, use, setup, datum.id);
  return seat?.pin && clearanceOf(use, seat);
}

function playsOf(use: Use, setup: SetupId) {
  const [first, second] = [use.fact(`location.${setup}.first-play`), use.fact(`location.${setup}.second-play`)];
  return first && second && { first: Math.max(0, first.high!), second: Math.max(0, second.high!) };
}

function playAcross(use: Use, setup: SetupId): Length | undefined {
  const [plays, datums] = [playsOf(use, setup), use.fact(`location.${setup}.datums`)];
  const farthest = use.fact(`location.${setup}.farthest`);
  const spacing = use.fact(`location.${setup}.spacing`);
  if (!plays || !datums || !farthest || !spacing) return undefined;
  const [first, second] = datums;
  const apart = toMm(spacing);
  const along =
    ((farthest.xMm - first.xMm) * (second.xMm - first.xMm) + (farthest.yMm - first.yMm) * (second.yMm - first.yMm)) /
    apart;
  return { ...lengthOfMm(0, 3), value: acrossError(plays, along, apart) };
}

function farthestOf(subject: Subject, use: Use, setup: SetupId): Farthest | undefined {
  if (!use.fact(`location.${setup}.datums`)) return undefined;
  let most: { readonly at: Farthest; readonly off: number } | undefined;
  for (const cut of cutsInOrder(subject.spec, use, setup)) {
    const id = cutId(cut);
    for (const at of cornersOf(use, id)) {
      const off = worstCase(setupCauses(subject, use, setup, at)).plus;
      if (!most || off > most.off) most = { at: { cut: id, ...at }, off };
    }
  }
  return most?.at;
}

/** Corners of what a cut takes, seen from the top; of a channel, its ends. */
function cornersOf(use: Use, id: CutId): readonly Place[] {
  const own = use.fact(`${id}.void`);
  if (own.kind === 'tube') return [own.from, own.to].map(({ xMm, yMm }) => ({ xMm, yMm }));
  const corners: Place[] = [];
  for (const polygon of own.region) forEachEdge(polygon, (xMm, yMm) => corners.push({ xMm, yMm }));
  return corners;
}
