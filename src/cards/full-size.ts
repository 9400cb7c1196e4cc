/**
 * The faces of a body at full size, to check by and to make patterns from: outline, axes, cuts with their names, holes with
 * their centres. The top, and whatever other face something is cut from. No card: it has no code, and binds nobody.
 */
import type { Facts } from '../facts/facts.ts';
import { setupOrder } from '../facts/cutting-order.ts';
import type { SetupId } from '../facts/cutting-order.ts';
import { namesOf } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import { bounds } from '../geometry/measure.ts';
import type { FullSize, Mark, NamedSpot } from './card.ts';
import { blankRecord, deskAt } from './desk.ts';
import { hundredth } from './drawing/coordinates.ts';
import { locationHoles, plan } from './drawing/plan.ts';
import { STATION_OF_SETUP } from '../facts/setup-stations.ts';
import { channelsOf, contoursOf, cutTitle, holesOf, setupOf } from './machining.ts';
import { cavitiesOf } from './cutting-order.ts';
import { all } from './stations/all.generated.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

/** How far the bridge line is drawn past the outline, mm. */
const PAST_MM = 4;

/** Of a model without errors, the top first. */
export function fullSizes(subject: Subject, facts: Facts): readonly FullSize[] {
  const made = facts.read((use) =>
    setupOrder.toReversed().flatMap((face) => {
      const station = all.find(({ id }) => id === STATION_OF_SETUP[face])!;
      const desk = deskAt(station, subject, facts, use, blankRecord());
      return face === 'top' || isCut(desk, face) ? [templateOf(desk, face)] : [];
    }),
  );
  if (!made.ok) throw new Error(`no error was found, yet there is no ${made.missing.join(', ')}`);
  return made.value;
}

const isCut = (desk: Desk, face: SetupId): boolean =>
  [cavitiesOf, holesOf, channelsOf, contoursOf].some((of) => of(desk, face).length > 0);

function templateOf(desk: Desk, face: SetupId): FullSize {
  const { spec, hand } = desk.subject;
  const view = face === 'back' ? 'back' : 'top';
  const flip = face === 'back' ? -1 : 1;
  const pins = setupOf(desk, face).pins ? locationHoles(desk, flip) : [];
  const { marks } = plan(desk, { caption: say(`full-size.face.${face}`), view, setup: face, bare: true });
  return {
    model: desk.use(spec.model),
    hand,
    face,
    title: desk.name(spec.title),
    size: say('full-size.size', {
      length: desk.figure('outline.length', { decimals: 1 }),
      width: desk.figure('outline.width', { decimals: 1 }),
    }),
    marks: [...marks, bridgeLine(desk, flip), ...pins],
    names: [
      ...axes(desk, flip),
      ...pins.map(({ x, y, radius }) => ({ x, y, radius, text: say('full-size.location-hole'), own: true })),
      ...holes(desk, face, flip),
      ...cavities(desk, face, flip),
      ...channels(desk, face, flip),
    ],
  };
}

/** The line all places are counted from: across the centreline at the origin. */
function bridgeLine({ use }: Desk, flip: number): Mark {
  const { minX, maxX } = bounds(use.fact('outline.polygon'))!;
  const points = [(minX - PAST_MM) * flip, 0, (maxX + PAST_MM) * flip, 0].map(hundredth);
  return { kind: 'line', line: 'centre', points, closed: false };
}

/** On the bass side of the body and towards its tail, where fewer cuts lie. */
function axes({ use }: Desk, flip: number): readonly NamedSpot[] {
  const { minX, minY } = bounds(use.fact('outline.polygon'))!;
  const spot = (x: number, y: number, id: string): NamedSpot => ({
    x: hundredth(x),
    y: hundredth(y),
    radius: 0,
    text: say(`full-size.${id}`),
    own: true,
  });
  return [spot((minX / 2) * flip, 0, 'bridge-line'), spot(0, minY * 0.9, 'centreline')];
}

/** Those cut from this face; the others are named where they are cut. */
const holes = (desk: Desk, face: SetupId, flip: number): readonly NamedSpot[] =>
  holesOf(desk, face).map((id) => {
    const { xMm, yMm, diameterMm } = desk.use.fact(`hole.${id}.spot`);
    return {
      x: hundredth(xMm * flip),
      y: hundredth(yMm),
      radius: hundredth(diameterMm / 2),
      text: cutTitle(desk, 'holes', id),
      own: true,
    };
  });

function cavities(desk: Desk, face: SetupId, flip: number): readonly NamedSpot[] {
  const { cavities: table } = desk.subject.spec;
  return namesOf(table).flatMap((id) => {
    const drawn = desk.use.fact(`cavity.${id}.drawn`);
    const box = drawn.ok && bounds(drawn.polygon);
    if (!box) return [];
    const [x, y] = [(flip * (box.minX + box.maxX)) / 2, (box.minY + box.maxY) / 2].map(hundredth);
    const own = desk.use(table![id]!.setup) === face;
    const edge = [...drawn.polygon].map((mm, i) => hundredth(i % 2 === 0 ? mm * flip : mm));
    return [{ x: x!, y: y!, radius: 0, edge, text: cutTitle(desk, 'cavities', id), own }];
  });
}

const channels = (desk: Desk, face: SetupId, flip: number): readonly NamedSpot[] =>
  channelsOf(desk, face).flatMap((id) => {
    const tube = desk.use.fact(`channel.${id}.void`);
    if (tube.kind !== 'tube') return [];
    const { from, to } = tube;
    const [x, y] = [(flip * (from.xMm + to.xMm)) / 2, (from.yMm + to.yMm) / 2].map(hundredth);
    return [{ x: x!, y: y!, radius: 0, text: cutTitle(desk, 'channels', id), own: true }];
  });
