/** Sections: along the centreline, and across through the thinnest place; wood hatched as cap, back or slab. */
import type { DerivedFacts } from '../../facts/facts.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Polygon } from '../../geometry/polygon.ts';
import type { SectionLine } from '../../geometry/solid/section.ts';
import { floorAt } from '../../geometry/solid/solid.ts';
import { sectionBetween, sectionOf } from '../../geometry/solid/section.ts';
import type { Drawing, Hatch, Mark } from '../card.ts';
import type { Desk } from '../station.ts';
import { hundredth } from './coordinates.ts';
import { say } from '../station.ts';

/** Along the centreline, the neck to the right. */
export const lengthwise = (desk: Desk): Drawing => ({
  id: 'section-lengthwise',
  caption: say('caption.section-lengthwise'),
  scale: 2,
  marks: wood(desk, { along: 'y', atMm: 0 }),
});

/** Across, as seen from the tail, through the place where the body is thinnest; nothing where there is no such place. */
export function across(desk: Desk): readonly Drawing[] {
  const thinnest = desk.use.fact('body.thinnest');
  if (!thinnest) return [];
  const { xMm, yMm } = thinnest.left;
  const line = { along: 'x', atMm: yMm } as const;
  const [x, z] = [hundredth(xMm), hundredth(heightOf(desk, thinnest) + thinnest.left.mm / 2)];
  return [
    {
      id: 'section-across',
      caption: say('caption.section-across', { left: desk.figure('body.least-left', { decimals: 1 }) }),
      scale: 2,
      marks: [
        ...wood(desk, line),
        { kind: 'circle', line: 'leader', x, y: z, radius: 5 },
        { kind: 'label', x, y: z + LABEL_MM, text: say('drawing.thinnest'), anchor: 'middle' },
      ],
    },
  ];
}

/** How far above the thinnest place its word stands. */
const LABEL_MM = 16;

/** z of the floor at the thinnest place, or of the face it opens to from below. */
function heightOf({ use }: Desk, { cut, against, left }: Thinnest): number {
  const own = use.fact(`${cut}.void`);
  if (own.kind === 'tube' || own.opens === 'back')
    return own.kind === 'tube' ? own.from.zMm : floorAt(own.floor, left.yMm);
  return against === 'top' ? own.roofMm! : floorAt(own.floor, left.yMm) - left.mm;
}

type Thinnest = NonNullable<DerivedFacts['body.thinnest']>;

function wood(desk: Desk, line: SectionLine): readonly Mark[] {
  const all = sectionOf(desk.use.fact('body.solid'), line);
  const region = (hatch: Hatch, rings: readonly Polygon[]): readonly Mark[] =>
    rings.length === 0 ? [] : [{ kind: 'region', hatch, rings: rings.map((ring) => [...ring].map(hundredth)) }];
  if (partsOf(desk.subject.spec)[0] === 'slab') return region('slab', all);
  const glue = desk.use.fact('glue.height').value / 1e6;
  return [...region('back', sectionBetween(all, -1, glue)), ...region('cap', sectionBetween(all, glue, FAR_MM))];
}

/** Above every body. */
const FAR_MM = 500;
