/** Every wall keeps, at worst, the least wood the line wants; only a neck pocket, or what starts outside, goes through the side. */
import { isCavity } from '../../facts/cuts.ts';
import type { Use } from '../../facts/facts.ts';
import { contains } from '../../geometry/nearness.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import type { Thin } from '../thin.ts';
import { cutName, intoOf, leastWanted, nameOf, woodsOf } from '../thin.ts';
import { notesOfCauses, say, sayPoint } from '../say.ts';
import { across, cut, cuts, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'wall-too-thin',
  stage: 'derived',
  severity: 'error',
  why: 'The wall breaks out under the cutter, or later under a screw.',
  mend: 'Move one of the two, make it smaller, or say with `into` that they are meant to meet.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'least-wall: 2.0',
    fails: 'least-wall: 3.5',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 8, to: 29, depth: 12 }), cut({ from: 31, to: 52, depth: 9 })),
    across(5, 29, 31),
  ),
  run: (bench) => {
    const least = look(bench.facts, (use) => leastWanted(bench, use, 'least-wall'));
    if (!least) return [];
    return woodsOf(bench, 'wall')
      .filter(({ worst }) => worst < least.value)
      .filter((thin) => !opensAtSide(bench, thin))
      .map((thin) => fault(bench, thin, least));
  },
};
export default check;

/** What is off the body altogether is another check's. */
function opensAtSide({ subject: { spec }, facts }: Bench, { cut, other, wood }: Thin): boolean {
  if (other !== 'side') return false;
  if (cut.kind === 'channel') return look(facts, (use) => startsOutside(use, cut.id)) ?? true;
  const neck = isCavity(cut) && look(facts, (use) => use(spec.cavities![cut.id]!.purpose)) === 'neck';
  return neck || wood.value <= 0;
}

/** A bore is drilled in from the edge, and runs out there. */
function startsOutside(use: Use, id: string): boolean {
  const own = use.fact(`channel.${id}.void`);
  return own.kind === 'tube' && !contains(use.fact('outline.polygon'), own.from.xMm, own.from.yMm);
}

function fault(
  { subject }: Bench,
  { cut, other, wood, worst, at, fact }: Thin,
  least: { at: string; value: number },
): Fault {
  const left = worst > 0 ? `${say(wood, worst)} of wood are left` : 'no wood is left';
  const drawn = wood.value < 0 ? `They overlap by ${say(wood, -wood.value)}` : `It is ${say(wood, wood.value)}`;
  return {
    at: placeOf(cut),
    what: `Between ${cutName(cut)} and ${nameOf(other)} ${left} at worst, near ${sayPoint(at, subject.hand)}. ${drawn} as drawn. At least ${say(wood, least.value)} must be left.`,
    mend: `Move ${cut.id} ${say(wood, least.value - worst)} away, or make it smaller.`,
    against: [
      ...(typeof other === 'string' ? [] : [{ at: placeOf(other), text: `where ${other.id} lies` }]),
      { at: least.at, text: 'the least wood that must be left' },
      ...(worst < wood.value ? notesOfCauses(wood.causes ?? []) : []),
    ],
    hangsOn: [fact, ...intoOf(cut), ...(typeof other === 'string' ? [] : intoOf(other))],
  };
}

/** Where a cut is placed. */
const placeOf = (cut: Thin['cut']): string => cut.place.id;
