/** Room of parts: to the walls of their cavity, to each other, and how far a ring or flange covers the edge it lies over. */
import type { Cut } from '../../facts/cuts.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { cavityOfPart, fittedId, insideOf, placedOf } from '../../facts/fitted.ts';
import type { Beside, Fitted, FittedId } from '../../facts/fitted.ts';
import { namesOf } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { clearBetween, roomInside } from '../../geometry/inside.ts';
import type { Room } from '../../geometry/inside.ts';
import { bounds } from '../../geometry/measure.ts';
import type { Region } from '../../geometry/polygon.ts';
import { shapePolygon } from '../../geometry/shape.ts';
import { mirror, rotate } from '../../geometry/transform.ts';
import { withCauses } from '../../units/arithmetic.ts';
import type { Cause, Length } from '../../units/quantity.ts';
import { cavityOf, cutOf, hardwareRow } from '../cavity-of.ts';
import { lengthOfMm } from '../lengths.ts';
import { apartCauses, sideOf } from '../location.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { drawnAt } from './cut-outline.ts';
import { FINE_CHORD_MM } from './hardware-place.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** Least, all round; less than nothing where it stands in the wall. Nothing of what has no body or lies in no cavity. */
    [id: `fitted.${FittedId}.room`]: Length | undefined;
    /** Most, on its widest side; only where the row says how much it may be. */
    [id: `fitted.${FittedId}.most-room`]: Length | undefined;
    /** How far its flange reaches over the edge, at least. */
    [id: `fitted.${FittedId}.lip`]: Length | undefined;
    'hardware.beside.body': readonly Beside[];
    'hardware.beside.on-face': readonly Beside[];
  }
}

const rule: Rule = (subject) => [
  ...insideOf(subject.spec).flatMap((fitted) => ofPart(subject, fitted)),
  ...(placedOf(subject.spec).length > 1 ? (['body', 'on-face'] as const) : []).map((what) =>
    derivation({
      id: `hardware.beside.${what}`,
      label: what === 'body' ? 'parts that lie in one cavity' : 'parts that lie on one face',
      formula: 'least distance of the outlines of every two; holes that a part takes are not beside it',
      source: practice('tolerance graph, no source'),
      value: (use) => besides(subject, use, what),
    }),
  ),
];
export default rule;

function ofPart(subject: Subject, fitted: Fitted) {
  const id = fittedId(fitted);
  const name = `part at ${fitted.kind} ${fitted.id}`;
  return [
    derivation({
      id: `fitted.${id}.room`,
      label: `${name}: room to the wall of its cavity`,
      formula:
        'least distance of its outline from the cavity’s, corner radii included; a hole’s place against the cavity’s by machine and location',
      source: practice('tolerance graph, no source'),
      value: (use) => room(subject, use, fitted),
    }),
    derivation({
      id: `fitted.${id}.most-room`,
      label: `${name}: room on its widest side`,
      formula: 'between the boxes round part and cavity, turned with the part',
      source: byDefinition,
      value: (use) => widest(subject, use, fitted),
    }),
    derivation({
      id: `fitted.${id}.lip`,
      label: `${name}: how far its flange covers the edge`,
      formula: 'least distance of the hole’s or cavity’s edge from the flange’s',
      source: byDefinition,
      value: (use) => {
        if (!hardwareRow(subject, use, fitted).flange) return undefined;
        const over = use.fact(`fitted.${id}.on-face`);
        const own = regionOf(subject, use, cutOf(subject, use, fitted));
        if (!over || !own) return undefined;
        return lengthOf(roomInside(own, over).mm);
      },
    }),
  ];
}

/** As drawn, with finer chords than the solid needs; nothing of a channel. */
function regionOf(subject: Subject, use: Use, cut: Cut | undefined): Region | undefined {
  const { spec, hand } = subject;
  if (cut?.kind === 'cavity') {
    const drawn = drawnAt(subject, use, spec.cavities![cut.id]!, `cavities.${cut.id}`, FINE_CHORD_MM);
    return drawn.ok ? [drawn.polygon] : undefined;
  }
  if (cut?.kind !== 'hole') return undefined;
  const spot = use.fact(`hole.${cut.id}.spot`);
  // The left hand's is the mirror image of the right's, corner by corner.
  const at = hand === 'left' ? { ...spot, xMm: -spot.xMm } : spot;
  const made = shapePolygon({ kind: 'circle', diameterMm: spot.diameterMm }, at, FINE_CHORD_MM);
  return made.ok ? [hand === 'left' ? mirror(made.polygon) : made.polygon] : undefined;
}

/** To the nearest hundredth: chords take off less than that. */
const lengthOf = (mm: number): Length => lengthOfMm(Math.round(mm * 100) / 100, 2);

function room(subject: Subject, use: Use, fitted: Fitted): Length | undefined {
  const cavity = cavityOf(subject, use, fitted);
  const body = use.fact(`fitted.${fittedId(fitted)}.body`);
  const region = regionOf(subject, use, cavity);
  if (!cavity || !body || !region) return undefined;
  const found = roomInside(body, region);
  return withCauses(lengthOf(found.mm), sidewaysCauses(subject, use, fitted, cavity, found));
}

/** What is put in by hand finds its middle; what hangs in a hole lies where the hole is drilled. */
function sidewaysCauses(subject: Subject, use: Use, fitted: Fitted, cavity: Cut, { at }: Room): readonly Cause[] {
  const drilled = fitted.kind === 'hole' ? cutOf(subject, use, fitted) : undefined;
  if (!drilled) return [];
  return apartCauses(subject, use, sideOf(use, drilled), sideOf(use, cavity), { xMm: at.x, yMm: at.y });
}

function widest(subject: Subject, use: Use, fitted: Fitted): Length | undefined {
  // What hangs in a hole asks for none.
  if (!hardwareRow(subject, use, fitted)['most-room']) return undefined;
  const body = use.fact(`fitted.${fittedId(fitted)}.body`);
  const region = regionOf(subject, use, cavityOf(subject, use, fitted));
  if (!body || !region) return undefined;
  const turn = turnOf(subject, use, fitted);
  const [own, cavity] = [body, region].map(([ring]) => bounds(rotate(ring!, -turn))!);
  const sides = [
    own!.minX - cavity!.minX,
    cavity!.maxX - own!.maxX,
    own!.minY - cavity!.minY,
    cavity!.maxY - own!.maxY,
  ];
  return lengthOf(Math.max(...sides));
}

/** Degrees counter-clockwise, as it lies for this hand. */
function turnOf({ spec, hand }: Subject, use: Use, { kind, id }: Fitted): number {
  const angle =
    kind === 'cavity' ? spec.cavities![id]!.angle : kind === 'fitting' ? spec.fittings![id]!.angle : undefined;
  return angle ? use(angle).value * (hand === 'left' ? -1 : 1) : 0;
}

function besides(subject: Subject, use: Use, what: 'body' | 'on-face'): readonly Beside[] {
  const { spec } = subject;
  const parts = placedOf(spec).flatMap((fitted) => {
    const id = fittedId(fitted);
    const region = use.fact(`fitted.${id}.${what}`);
    const where = region && (what === 'body' ? cavityOfPart(spec, use, fitted) : use.fact(`fitted.${id}.face`));
    return where === undefined ? [] : [{ fitted, id, region: region!, where }];
  });
  const taken = (what === 'body' ? [] : namesOf(spec.fittings)).flatMap((name) =>
    use.fact(`fitted.fitting.${name}.mounts`).map(({ hole }) => `fitting.${name} hole.${hole}`),
  );
  return parts.flatMap((a, i) =>
    parts.slice(i + 1).flatMap((b): Beside[] => {
      if (a.where !== b.where || taken.includes(`${b.id} ${a.id}`)) return [];
      const clear = clearBetween(a.region, b.region);
      const causes = drilledApart(subject, use, [a.fitted, b.fitted], clear);
      return [{ a: a.id, b: b.id, apart: withCauses(lengthOf(clear.mm), causes) }];
    }),
  );
}

/** Two that hang in holes lie as far off as those do. */
function drilledApart(subject: Subject, use: Use, fitted: readonly Fitted[], { at }: Room): readonly Cause[] {
  const [a, b] = fitted.map((one) => (one.kind === 'hole' ? cutOf(subject, use, one) : undefined));
  if (!a || !b) return [];
  return apartCauses(subject, use, sideOf(use, a), sideOf(use, b), { xMm: at.x, yMm: at.y });
}
