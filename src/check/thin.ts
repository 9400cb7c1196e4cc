/** Wood that is too thin: what two checks have in common, one where some is left at worst and one where none is. */
import type { Facts, Use } from '../facts/facts.ts';
import type { Cut } from '../facts/cuts.ts';
import { cutId, cutsOf, meantToMeet, pairsOf, tableOf } from '../facts/cuts.ts';
import type { Leaf } from '../facts/leaf.ts';
import { row } from '../facts/row.ts';
import type { Length } from '../units/quantity.ts';
import type { Bench, Fault } from './check.ts';
import { look } from './check.ts';
import { say, offBy, sayPoint, capital, drawnAndWorst } from './say.ts';
import { shapedAt } from './shaped.ts';

/** Wood between a cut and a face, or another cut, that they are not meant to run into. */
export interface Thin {
  readonly cut: Cut;
  readonly other: Cut | 'top' | 'back' | 'side';
  readonly fact: `left.${string}`;
  readonly wood: Length;
  readonly worst: number;
  readonly at: { readonly x: number; readonly y: number };
  readonly through: 'floor' | 'wall';
}

/** Whether a cut goes through to what the body rests on: a finding of its own. */
export function goesThrough({ facts }: Bench, { cut, other }: Thin): boolean {
  if (typeof other !== 'string' || cut.kind === 'channel') return false;
  const id = cutId(cut);
  return look(facts, (use) => (use.fact(`${id}.deep`).high ?? 0) >= use.fact(`${id}.through`).value) ?? false;
}

/** Everything upright or across, whatever its thickness, less what opens to the same face or is meant to meet. */
export function woodsOf({ subject: { spec }, facts }: Bench, through: 'floor' | 'wall'): Thin[] {
  const faces = cutsOf(spec).flatMap((cut) =>
    (['top', 'back', 'side'] as const).flatMap((other) => thinAt(facts, cut, other, `left.${cutId(cut)}.${other}`)),
  );
  const pairs = pairsOf(spec).flatMap(({ a, b, left }) =>
    look(facts, (use) => meantToMeet(use, a, b)) === false ? thinAt(facts, a, b, left) : [],
  );
  return [...faces, ...pairs].filter((thin) => thin.through === through);
}

function thinAt(facts: Facts, cut: Cut, other: Thin['other'], fact: Thin['fact']): Thin[] {
  const found = look(facts, (use) => use.fact(fact));
  if (!found || found.left.mm === -Infinity) return [];
  const { wood, left } = found;
  return [
    { cut, other, fact, wood, worst: wood.low ?? wood.value, at: { x: left.xMm, y: left.yMm }, through: left.through },
  ];
}

/** The least the line wants in a floor or a wall; nothing where it does not say. */
export function leastWanted({ subject: { spec, plant } }: Bench, use: Use, what: 'least-floor' | 'least-wall') {
  const leaf = row(plant.lines, use(spec.line), 'plant.lines')[what];
  return leaf && { at: leaf.id, value: use(leaf).value };
}

/** The number of a cut that says how deep it goes. */
const depthLeaf = ({ spec }: Cut): Leaf<Length> | undefined => spec.floor ?? spec.depth;

/** Of two cuts the one that is cut into the other's wood: the one whose depth is given; of two such the deeper. */
function blamed(facts: Facts, { cut, other }: Thin): readonly [Cut, Thin['other']] {
  if (typeof other === 'string') return [cut, other];
  const deep = (one: Cut) => look(facts, (use) => use.fact(`${cutId(one)}.deep`).value) ?? 0;
  const first = cut.spec.depth && other.spec.depth ? deep(cut) > deep(other) : cut.spec.depth && !other.spec.depth;
  return first ? [cut, other] : [other, cut];
}

export const nameOf = (other: Thin['other']): string =>
  typeof other === 'string' ? (other === 'side' ? 'the side of the body' : `the ${other}`) : cutName(other);

/** `the cavity battery`: what kind of cut it is, and its name. */
export const cutName = ({ kind, id }: Pick<Cut, 'kind' | 'id'>): string => `the ${kind} ${id}`;

/** `They overlap by 1.70 mm as drawn, and that may be off by …: they overlap by 3.00 mm at worst`; of two cuts, or a cut and a face. */
export const sayLeft = (wood: Length): string =>
  capital(drawnAndWorst(wood, (size, past) => (past ? `they overlap by ${size}` : `${size} of wood are left`)));

/** A fault with the place, what is left, why, and the depth that passes. */
export function thinFault(bench: Bench, thin: Thin, leastNm: number, limitAt: string | undefined): Fault {
  const { subject, facts } = bench;
  const [cut, other] = blamed(facts, thin);
  const { wood, worst } = thin;
  const leaf = depthLeaf(cut);
  const place = sayPoint(thin.at, subject.hand);
  const left = worst > 0 ? `${say(wood, worst)} of wood are left` : 'no wood is left';
  const drawn = worst > 0 ? `: ${say(wood, wood.value)} as drawn${offBy(wood)}` : `. ${sayLeft(wood)}`;
  const least = leastNm > 0 ? ` At least ${say(wood, leastNm)} must be left.` : '';
  return {
    at: leaf?.id ?? cut.spec.setup.id,
    what: `Between ${cutName(cut)} and ${nameOf(other)} ${left} at worst, at ${place}${drawn}.${least}`,
    mend:
      (leaf && mendOf(facts, cut, leaf, leastNm - worst)) ??
      `Move one of them: ${say(wood, leastNm - worst)} more is needed.`,
    against: [
      ...(typeof other === 'string' ? [] : [depthNote(other)]),
      ...meantNote(cut),
      ...(worst > 0 ? [] : placeNotes(cut, other)),
      ...(other === 'top' || other === 'back' ? shapedAt(bench, other, thin.at.x, thin.at.y) : []),
      ...(limitAt === undefined ? [] : [{ at: limitAt, text: 'the least wood that must be left' }]),
    ],
    hangsOn: [thin.fact, ...intoOf(cut), ...(typeof other === 'string' ? [] : intoOf(other))],
  };
}

/** How deep the other of the two goes; of one that says no depth, which face it is cut from. */
const depthNote = (cut: Cut): Fault['against'][number] => {
  const leaf = depthLeaf(cut);
  return leaf
    ? { at: leaf.id, text: `how deep ${cut.id} is cut` }
    : { at: cut.spec.setup.id, text: `which set-up cuts ${cut.id}` };
};

/** What it says it is meant to run into: the name that is missing may be the mistake. */
const meantNote = ({ id, spec: { into } }: Cut): Fault['against'] => {
  const [first] = into ?? [];
  return first ? [{ at: first.id, text: `what ${id} is meant to run into` }] : [];
};

/** Where nothing is left between two cuts, one may lie where it should not. */
const placeNotes = (cut: Cut, other: Thin['other']): Fault['against'] =>
  typeof other === 'string'
    ? []
    : [
        { at: cut.place.id, text: `where ${cut.id} lies` },
        { at: other.place.id, text: `where ${other.id} lies` },
      ];

/** Where a cut says what it is meant to meet. */
export const intoOf = (cut: Cut): readonly string[] => [`${tableOf(cut)}.${cut.id}.into`];

/** A depth is given to this, in either system. */
const STEP_NM = { mm: 50_000, in: 50_800 } as const;

/** The nearest depth, or wood left, that would pass. */
function mendOf(facts: Facts, cut: Cut, leaf: Leaf<Length>, lackNm: number): string | undefined {
  const given = look(facts, (use) => use(leaf));
  if (!given) return undefined;
  const step = given.unit === 'in' ? STEP_NM.in : STEP_NM.mm;
  // A double may miss the step by a hair; nothing at all is not enough.
  const steps = Math.max(1, Math.ceil(lackNm / step - 1e-6));
  if (cut.kind === 'channel') return `Move it, or drill it ${say(given, steps * step)} further away.`;
  const value = cut.spec.floor ? given.value + steps * step : given.value - steps * step;
  return cut.spec.floor
    ? `Leave ${say(given, value)} of wood under the floor of ${cut.id}.`
    : value > 0
      ? `Cut ${cut.id} no deeper than ${say(given, value)}, or move it.`
      : undefined;
}
