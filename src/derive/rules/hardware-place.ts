/** Parts where they are fitted: what of each lies behind the panel or in its cavity, what lies on the face, where it takes holes. */
import { cutId } from '../../facts/cuts.ts';
import type { CutId } from '../../facts/cuts.ts';
import type { SetupId } from '../../facts/cutting-order.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { fittedId, placedOf } from '../../facts/fitted.ts';
import type { Fitted, FittedId, MountPlace } from '../../facts/fitted.ts';
import { hole } from '../../facts/leaf.ts';
import { namesOf, wanted } from '../../facts/row.ts';
import type { Model, Plant } from '../../facts/spec.generated.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Point } from '../../geometry/axes.ts';
import type { Region } from '../../geometry/polygon.ts';
import { shapePolygon } from '../../geometry/shape.ts';
import { mirror, rotate } from '../../geometry/transform.ts';
import { cavityUnder, cutOf, hardwareRow } from '../cavity-of.ts';
import { lengthOfMm, toMm } from '../lengths.ts';
import { setupOf } from '../surfaces.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts {
    /** Seen from the top; nothing where the row of the part has none. */
    [id: `fitted.${FittedId}.body`]: Region | undefined;
    [id: `fitted.${FittedId}.on-face`]: Region | undefined;
    /** The face it lies on or is let in from; nothing of what lies inside the body. */
    [id: `fitted.${FittedId}.face`]: 'top' | 'back' | undefined;
    /** The cavity behind a panel that it hangs in with its body. */
    [id: `fitted.hole.${string}.cavity`]: CutId | undefined;
    [id: `fitted.fitting.${string}.mounts`]: readonly MountPlace[];
  }
}

const rule: Rule = (subject) => placedOf(subject.spec).flatMap((fitted) => ofPart(subject, fitted));
export default rule;

function ofPart(subject: Subject, fitted: Fitted) {
  const id = fittedId(fitted);
  const name = `part at ${fitted.kind} ${fitted.id}`;
  return [
    derivation({
      id: `fitted.${id}.body`,
      label: `${name}: its body`,
      formula: 'outline of its row, placed where it is fitted; mirrored for the left hand',
      source: byDefinition,
      value: (use) => drawn(subject, use, fitted, hardwareRow(subject, use, fitted).body),
    }),
    derivation({
      id: `fitted.${id}.on-face`,
      label: `${name}: what of it lies on the face`,
      formula: 'its flange, else its washer; of one that lies on a face, its body',
      source: byDefinition,
      value: (use) => onFace(subject, use, fitted),
    }),
    derivation({
      id: `fitted.${id}.face`,
      label: `${name}: the face it is fitted from`,
      formula: 'where its hole or cavity opens, or as given',
      source: byDefinition,
      value: (use) => faceOf(subject, use, fitted),
    }),
    ...(fitted.kind === 'hole'
      ? [
          derivation({
            id: `fitted.hole.${fitted.id}.cavity`,
            label: `${name}: the cavity its body hangs in`,
            formula: 'the one its hole is meant to run into, where it has a body behind the panel',
            source: byDefinition,
            value: (use) => {
              const { body } = hardwareRow(subject, use, fitted);
              const cavity = body && cavityUnder(subject, use, fitted.id);
              return cavity && cutId(cavity);
            },
          }),
        ]
      : []),
    ...(fitted.kind === 'fitting'
      ? [
          derivation({
            id: `fitted.fitting.${fitted.id}.mounts`,
            label: `${name}: where it takes holes`,
            formula: 'places of its row, turned and moved with it; the hole drawn nearest to each on that face',
            source: byDefinition,
            value: (use) => mounts(subject, use, fitted),
          }),
        ]
      : []),
  ];
}

/** Round ends of parts and of what they go into are drawn so fine that their room is right to a hundredth, mm. */
export const FINE_CHORD_MM = 0.001;

type Outline = NonNullable<Plant.OutlineOfPart>;

interface Placement {
  readonly xMm: number;
  readonly yMm: number;
  readonly angleDeg: number;
}

/** Where its middle lies, as drawn for the right hand. A round hole turns nothing. */
function placement({ spec }: Subject, use: Use, { kind, id }: Fitted): Placement {
  const at = (point: Point2, angle: Model.Cavity['angle']) => ({
    xMm: toMm(use(point.x)),
    yMm: toMm(use(point.y)),
    angleDeg: angle ? use(angle).value : 0,
  });
  const turned = kind === 'fitting' ? spec.fittings![id]! : kind === 'cavity' ? spec.cavities![id]! : undefined;
  if (turned) return at(turned.at, turned.angle);
  return at(wanted(spec.holes?.[id], `holes.${id}`).at, undefined);
}

type Point2 = NonNullable<Subject['spec']['holes']>[string]['at'];

function drawn(subject: Subject, use: Use, fitted: Fitted, outline: Outline | undefined): Region | undefined {
  if (!outline) return undefined;
  const mm = (key: 'length' | 'width') => toMm(use(wanted(outline[key], `plant.hardware.${key}`)));
  const shape = outline.diameter
    ? ({ kind: 'circle', diameterMm: toMm(use(outline.diameter)) } as const)
    : ({
        kind: 'rectangle',
        lengthMm: mm('length'),
        widthMm: mm('width'),
        cornerMm: outline.corner ? toMm(use(outline.corner)) : 0,
      } as const);
  return placed(subject, use, fitted, shape);
}

function placed(subject: Subject, use: Use, fitted: Fitted, shape: Parameters<typeof shapePolygon>[0]): Region {
  const made = shapePolygon(shape, placement(subject, use, fitted), FINE_CHORD_MM);
  if (!made.ok) return use<Region>(hole(`plant.hardware.${use(fitted.hardware)}.body`));
  return [subject.hand === 'left' ? mirror(made.polygon) : made.polygon];
}

function onFace(subject: Subject, use: Use, fitted: Fitted): Region | undefined {
  const { flange, washer, body } = hardwareRow(subject, use, fitted);
  if (flange) return drawn(subject, use, fitted, flange);
  if (washer) return placed(subject, use, fitted, { kind: 'circle', diameterMm: toMm(use(washer)) });
  const lies = fitted.kind === 'fitting' && subject.spec.fittings![fitted.id]!.on !== undefined;
  return lies ? drawn(subject, use, fitted, body) : undefined;
}

function faceOf(subject: Subject, use: Use, fitted: Fitted): 'top' | 'back' | undefined {
  const on = fitted.kind === 'fitting' ? subject.spec.fittings![fitted.id]!.on : undefined;
  if (on) return use(on);
  const cut = cutOf(subject, use, fitted);
  const up = cut && use(setupOf(subject.spec, use(cut.spec.setup) as SetupId).up);
  return up === 'glue-face' ? undefined : up;
}

function mounts(subject: Subject, use: Use, fitted: Fitted): readonly MountPlace[] {
  const { spec, hand } = subject;
  const { mounts: places } = hardwareRow(subject, use, fitted);
  if (namesOf(places).length === 0) return [];
  const { xMm: x0, yMm: y0, angleDeg } = placement(subject, use, fitted);
  const face = use.fact(`fitted.${fittedId(fitted)}.face`);
  const spots = namesOf(spec.holes)
    .filter((id) => use(setupOf(spec, use(spec.holes![id]!.setup) as SetupId).up) === face)
    .map((id) => ({ id, ...use.fact(`hole.${id}.spot`) }));
  return namesOf(places).map((mount) => {
    const { x, y } = places![mount]!;
    const [px, py] = rotate(Float64Array.of(toMm(use(x)), toMm(use(y))), angleDeg);
    const place: Point = { x: (x0 + px!) * (hand === 'left' ? -1 : 1), y: y0 + py! };
    const away = (spot: (typeof spots)[number]) => Math.hypot(spot.xMm - place.x, spot.yMm - place.y);
    const [near] = spots.toSorted((a, b) => away(a) - away(b));
    const off = near && lengthOfMm(away(near), 2);
    return { mount, xMm: place.x, yMm: place.y, hole: near?.id, off };
  });
}
