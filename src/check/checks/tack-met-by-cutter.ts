/** A pin that stays in the body is never met: by no cutter, by no face as it is cut, at worst. */
import { cutId, cutsOf } from '../../facts/cuts.ts';
import type { DerivedFacts } from '../../facts/facts.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint } from '../say.ts';
import { cut, cuts, cutter, ring, section, slab, tack } from '../sketch.ts';
import type { Tack } from '../tacks.ts';
import { kindNamed, nameOf, rowOf, tacksToLookAt } from '../tacks.ts';
import { sayLeft } from '../thin.ts';

const check: Check = {
  id: 'tack-met-by-cutter',
  stage: 'derived',
  severity: 'error',
  why: 'A cutter that runs into metal breaks, and its pieces fly. What is left of the pin shows, or works through the finish.',
  mend: 'Move the pin to where nothing is cut, take a shorter one, or put tacks in the waste.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'pin-b: { at: { x: -70, y: -130 }, kind: pin-14 }',
    fails: 'pin-b: { at: { x: 80, y: -100 }, kind: pin-14 }',
  },
  sketch: section(
    slab({ glue: 6 }),
    cuts(cut({ from: 10, to: 34, depth: 12 })),
    tack(35, 1.4, 13.6),
    cutter({ x: 30, tip: 12, width: 8, flutes: 12 }),
    ring(34.6, 5, 3.6),
  ),
  run: (bench) => tacksToLookAt(bench).flatMap((tack) => fault(bench, tack)),
};
export default check;

function fault(bench: Bench, tack: Tack): Fault[] {
  const { subject, facts } = bench;
  const seen = look(facts, (use) => {
    const row = rowOf(bench, use, tack);
    // One driven through a face of the body is refused for its hole: another check's business.
    const left = use(row.face) === 'glue-face' ? use.fact(`tack.${tack.id}.left`) : [];
    return {
      left,
      edge: use(row.edge),
      edgeId: row.edge.id,
      length: row.length.id,
      offMark: row['off-mark'].id,
      kind: kindNamed(bench, use, tack),
    };
  });
  if (!seen) return [];
  const { edge } = seen;
  const needed = edge.high ?? edge.value;
  const worst = seen.left.toSorted((a, b) => leastOf(a) - leastOf(b))[0];
  if (!worst || leastOf(worst) >= needed) return [];
  const { wood, left } = worst;
  const least = leastOf(worst);
  const there = least > 0 ? `${say(wood, least)} of wood are left` : 'no wood is left';
  const place = sayPoint({ x: left.xMm, y: left.yMm }, subject.hand);
  const cut = cutsOf(subject.spec).find((one) => cutId(one) === worst.against);
  return [
    {
      at: tack.at,
      what: `Between ${nameOf(tack).toLowerCase()} and ${againstName(worst.against)} ${there} at worst, near ${place}. ${sayLeft(wood)}. At least ${say(edge, needed)} must be left.`,
      mend: `Move it to where at least ${say(edge, needed)} of wood are left round it, or take a shorter one.`,
      against: [
        ...(cut ? [{ at: cut.place.id, text: `where ${cut.id} lies` }] : []),
        { at: seen.edgeId, text: 'the least wood round the pin' },
        { at: seen.length, text: 'how long the pin is' },
        { at: seen.offMark, text: 'how far off its mark it may stand' },
        { at: seen.kind, text: 'which kind of pin it is' },
      ],
      hangsOn: [`tack.${tack.id}.left`],
    },
  ];
}

type Wood = DerivedFacts[`tack.${string}.left`][number];

const leastOf = ({ wood }: Wood): number => wood.low ?? wood.value;

const FACES: Readonly<Record<string, string>> = {
  top: 'the top as it is cut',
  back: 'the back',
  side: 'the side of the body',
};

const againstName = (against: string): string => FACES[against] ?? `the ${against.replace('.', ' ')}`;
