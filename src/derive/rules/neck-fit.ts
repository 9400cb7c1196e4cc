/** The neck in its pocket: play at its sides, and how far the screws through the body bite into it. */
import { cutsOf } from '../../facts/cuts.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition, publishedIn } from '../../facts/facts.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf, row, wanted } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { SHANK_SOURCE } from '../../reference/screws.ts';
import { floorAt } from '../../geometry/solid/solid.ts';
import { depthOn } from '../../geometry/solid/face.ts';
import { subtract, withCauses } from '../../units/arithmetic.ts';
import type { Length } from '../../units/quantity.ts';
import { lengthOfMm } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { shankOf } from '../screw-rows.ts';
import { causesUpright } from '../wood.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** Pocket less heel or tenon, both sides together. */
    'neck.play': Length;
    /** Wood under the floor of the pocket that the screws go through. */
    'neck.through': Length;
    /** Thread in the heel. */
    'neck.bite': Length;
    /** Outside of the screws' thread. */
    'neck.screw-shank': Length;
    /** Holes of the screws, by name. */
    'neck.screw-holes': readonly string[];
  }
}

const rule: Rule = (subject) => {
  const neck = subject.spec.neck as typeof subject.spec.neck | undefined;
  return [
    ...(neck?.width === undefined
      ? []
      : [
          derivation({
            id: 'neck.play',
            label: 'play of the neck in its pocket, both sides together',
            formula: 'width of the pocket − width of heel or tenon, each within its limits',
            source: byDefinition,
            value: (use) => {
              const shape = pocketOf(subject, use).shape;
              const name = use(wanted(subject.spec.neck.pocket, 'neck.pocket'));
              const width = use(wanted(shape.width, `cavities.${name}.shape.width`));
              return subtract(width, use(wanted(subject.spec.neck.width, 'neck.width')));
            },
          }),
        ]),
    ...(neck?.screws === undefined
      ? []
      : [
          derivation({
            id: 'neck.screw-holes',
            label: 'holes of the neck screws',
            formula: 'holes for screws that run into the pocket',
            source: byDefinition,
            value: (use) => screwHoles(subject, use),
          }),
          derivation({
            id: 'neck.screw-shank',
            label: 'neck screws, outside of their thread',
            formula: 'row of their gauge',
            source: publishedIn(SHANK_SOURCE),
            value: (use) =>
              shankOf(
                use,
                row(subject.plant.screws, use(wanted(subject.spec.neck.screws, 'neck.screws').row), 'plant.screws'),
              ),
          }),
          derivation({
            id: 'neck.through',
            label: 'wood the neck screws go through',
            formula: 'at each of its screws the floor of the pocket over the back; the least of them',
            source: byDefinition,
            value: (use) => through(subject, use),
          }),
          derivation({
            id: 'neck.bite',
            label: 'how far the neck screws bite into the heel',
            formula: 'length of the screw − plate − wood it goes through',
            source: byDefinition,
            value: (use) => {
              const { row: screw, plate } = wanted(subject.spec.neck.screws, 'neck.screws');
              const { length } = row(subject.plant.screws, use(screw), 'plant.screws');
              const bite = subtract(use(length), use(plate), use.fact('neck.through'));
              return { ...bite, unit: 'mm', decimals: 2 };
            },
          }),
        ]),
  ];
};
export default rule;

const pocketOf = ({ spec }: Subject, use: Use) =>
  row(spec.cavities, use(wanted(spec.neck.pocket, 'neck.pocket')), 'cavities');

function screwHoles({ spec }: Subject, use: Use): readonly string[] {
  const pocket = use(wanted(spec.neck.pocket, 'neck.pocket'));
  return namesOf(spec.holes).filter((id) => {
    const { use: what, into } = spec.holes![id]!;
    return use(what) === 'screw' && (into ?? []).some((leaf) => use(leaf) === pocket);
  });
}

/** Where the screws are: at the mouth of the pocket a rounded edge, or a contour, leaves less, and no screw goes through it. */
function through(subject: Subject, use: Use): Length {
  const name = use(wanted(subject.spec.neck.pocket, 'neck.pocket'));
  const cut = cutsOf(subject.spec).find(({ kind, id }) => kind === 'cavity' && id === name);
  const own = use.fact(`cavity.${name}.void`);
  const back = use.fact('face.back');
  const [least] = use
    .fact('neck.screw-holes')
    .map((id) => {
      const { xMm, yMm } = use.fact(`hole.${id}.spot`);
      return { xMm, yMm, mm: own.kind === 'pocket' ? floorAt(own.floor, yMm) - depthOn(back, xMm, yMm) : 0 };
    })
    .toSorted((a, b) => a.mm - b.mm);
  // A cavity of the back leaves none there: no neck stands in it. Without holes there is nothing to go through.
  if (!cut || own.kind !== 'pocket' || own.opens === 'back' || !least) return use(hole('neck.through'));
  const at = { ...least, through: 'floor', sharedMm2: 0, up: 1 } as const;
  return withCauses(lengthOfMm(least.mm, 2), causesUpright(subject, use, 'back', { cut }, at));
}
