/** Screws in their pilots: what the wood asks of the pilot, and where the point of the screw comes to lie. */
import type { CutId } from '../../facts/cuts.ts';
import { cutId, cutsOf, isCavity } from '../../facts/cuts.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice, publishedIn } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { highestPoint, partsOf } from '../../facts/parts.ts';
import type { Part } from '../../facts/parts.ts';
import { namesOf, row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { regionContains } from '../../geometry/nearness.ts';
import { depthOn } from '../../geometry/solid/face.ts';
import { floorAt } from '../../geometry/solid/solid.ts';
import type { Lead } from '../../reference/screws.ts';
import * as published from '../../reference/screws.ts';
import { mergedCauses, scaledCauses, subtract, withCauses } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { gaugeRow, rootOf, shankOf } from '../screw-rows.ts';
import { setupOf, surfaceHeight } from '../surfaces.ts';

/** Where the root of a screw was taken from. */
export type RootFrom = 'plant' | 'table' | 'two-thirds';

type ScrewLength = 'shank' | 'root' | 'least-pilot' | 'most-pilot' | 'shank-hole' | 'smooth' | 'beyond' | 'grip';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    [id: `screw.${string}.${ScrewLength}`]: Length;
    [id: `screw.${string}.root-from`]: RootFrom;
    [id: `screw.${string}.wood`]: Part;
    [id: `screw.${string}.lead`]: Lead;
    /** The seat of a cover it stands in; nothing where what it holds lies on the face. */
    [id: `screw.${string}.seat`]: CutId | undefined;
  }
}

const rule: Rule = (subject) =>
  namesOf(subject.spec.holes)
    .filter((id) => subject.spec.holes![id]!.screw !== undefined)
    .flatMap((id) => ofHole(subject, id));
export default rule;

const leads = publishedIn(published.LEAD_SOURCE);

const ofHole = (subject: Subject, id: string) => [
  derivation({
    id: `screw.${id}.shank`,
    label: `screw of ${id}: shank, outside of its thread`,
    formula: 'row of its gauge',
    source: publishedIn(published.SHANK_SOURCE),
    value: (use) => {
      return shankOf(use, screwOf(subject, use, id));
    },
  }),
  derivation({
    id: `screw.${id}.root-from`,
    label: `screw of ${id}: where its root is taken from`,
    formula: 'measured by the plant, else the table, else two-thirds of the shank',
    source: byDefinition,
    value: (use) => {
      const screw = screwOf(subject, use, id);
      if (screw.root) return 'plant';
      return gaugeRow(use, screw).of.rootIn === undefined ? 'two-thirds' : 'table';
    },
  }),
  derivation({
    id: `screw.${id}.root`,
    label: `screw of ${id}: root of its thread`,
    formula: 'as said where its root is taken from',
    source: publishedIn(`${published.ROOT_SOURCE}; else ${published.TWO_THIRDS_SOURCE}`),
    value: (use) => rootOf(use, screwOf(subject, use, id)),
  }),
  derivation({
    id: `screw.${id}.wood`,
    label: `screw of ${id}: the wood it stands in`,
    formula: 'the part its pilot is drilled into',
    source: byDefinition,
    value: (use) => {
      const [outer, inner] = partsOf(subject.spec);
      return opensTo(subject, use, id) === 'back' ? (inner ?? outer!) : outer!;
    },
  }),
  derivation({
    id: `screw.${id}.lead`,
    label: `screw of ${id}: what its wood asks of a lead hole`,
    formula:
      'by specific gravity on an ovendry basis, G = G12/(1 − 0.108·G12): over 0.6, 90 % of the root, at most the root; over 0.5, 70 % and at most 7/8; else none required, at most 7/8',
    source: leads,
    value: (use) =>
      published.leadOf(published.ovendryGravity(use.fact(`density.${use.fact(`screw.${id}.wood`)}`).value)),
  }),
  ...(['least', 'most'] as const).map((which) =>
    derivation({
      id: `screw.${id}.${which}-pilot`,
      label: `screw of ${id}: pilot, at ${which}`,
      formula: 'its share of the root',
      source: leads,
      value: (use) => share(use.fact(`screw.${id}.root`), use.fact(`screw.${id}.lead`)[which]),
    }),
  ),
  derivation({
    id: `screw.${id}.shank-hole`,
    label: `screw of ${id}: hole its smooth shank would need`,
    formula: 'its share of the shank',
    source: leads,
    value: (use) => share(use.fact(`screw.${id}.shank`), use.fact(`screw.${id}.lead`).shank),
  }),
  derivation({
    id: `screw.${id}.grip`,
    label: `screw of ${id}: how deep it goes into the wood`,
    formula: 'its length less what it holds down',
    source: byDefinition,
    value: (use) => {
      const { length, holds } = screwOf(subject, use, id);
      return subtract(use(length), use(holds));
    },
  }),
  derivation({
    id: `screw.${id}.smooth`,
    label: `screw of ${id}: smooth shank in the wood`,
    formula: 'what goes into the wood less its thread',
    source: byDefinition,
    value: (use) => {
      const { thread } = screwOf(subject, use, id);
      // One that is threaded to its head has none.
      return thread ? subtract(use.fact(`screw.${id}.grip`), use(thread)) : lengthOfMm(0, 2);
    },
  }),
  derivation({
    id: `screw.${id}.seat`,
    label: `screw of ${id}: the seat it stands in`,
    formula: 'the recess of its own face that its pilot lies in',
    source: byDefinition,
    value: (use) => seatOf(subject, use, id),
  }),
  derivation({
    id: `screw.${id}.beyond`,
    label: `screw of ${id}: its point beyond the end of its pilot`,
    formula:
      'depth of the seat + length in the wood − depth of the pilot, from the face; below nothing where it ends before',
    source: practice('limits of seat and pilot at worst; no source'),
    value: (use) => beyond(subject, use, id),
  }),
];

const screwOf = ({ spec, plant }: Subject, use: Use, id: string) =>
  row(plant.screws, use(wanted(spec.holes![id]!.screw, `holes.${id}.screw`)), 'plant.screws');

const share = (q: Length, of: number): Length => ({ ...lengthOfMm(0, 2), value: Math.round(q.value * of) });

const opensTo = ({ spec }: Subject, use: Use, id: string): string =>
  use(setupOf(spec, use(spec.holes![id]!.setup) as SetupId).up);

function seatOf(subject: Subject, use: Use, id: string): CutId | undefined {
  const { spec } = subject;
  const { xMm, yMm } = use.fact(`hole.${id}.spot`);
  const up = opensTo(subject, use, id);
  return cutsOf(spec)
    .filter((cut) => isCavity(cut) && use(spec.cavities![cut.id]!.purpose) === 'recess')
    .map(cutId)
    .find((cut) => {
      const own = use.fact(`${cut}.void`);
      return own.kind === 'pocket' && own.opens === up && regionContains(own.region, xMm, yMm);
    });
}

function beyond(subject: Subject, use: Use, id: string): Length {
  const { spec } = subject;
  const own = use.fact(`hole.${id}.void`);
  const { xMm, yMm } = use.fact(`hole.${id}.spot`);
  const back = opensTo(subject, use, id) === 'back';
  const seat = use.fact(`screw.${id}.seat`);
  const seatVoid = seat && use.fact(`${seat}.void`);
  if (own.kind !== 'pocket') return use<Length>(hole(`holes.${id}`));
  const faceMm = () =>
    back
      ? toMm(surfaceHeight(subject, use, 'back-face'))
      : toMm(use.fact(`thickness.body.machined.${highestPoint(spec)}`)) - depthOn(use.fact('face.top'), xMm, yMm);
  const standsMm = seatVoid?.kind === 'pocket' ? floorAt(seatVoid.floor, yMm) : faceMm();
  const grip = use.fact(`screw.${id}.grip`);
  const pilotMm = floorAt(own.floor, yMm);
  const mm = back ? standsMm + toMm(grip) - pilotMm : pilotMm - (standsMm - toMm(grip));
  const cut = seat && cutsOf(spec).find((one) => cutId(one) === seat)!.spec;
  const seatCauses = cut ? (use(wanted(cut.depth ?? cut.floor, `${seat}.depth`)).causes ?? []) : [];
  const pilotCauses = use(spec.holes![id]!.depth).causes ?? [];
  return withCauses(
    lengthOfMm(mm, 2),
    mergedCauses([
      ...scaledCauses(seatCauses, cut?.depth ? 1 : -1),
      ...scaledCauses(pilotCauses, -1),
      ...(grip.causes ?? []),
    ]),
  );
}
