/**
 * A vacuum zone under a body: whether its gasket seals, and which hollow of the body lets air in when.
 *
 * A zone counts with all of its area while it is sealed, pockets over it included: the air outside pushes on what roofs them.
 * Once air gets in, by whatever way, none of it counts. Pure geometry and a search of ways; seen from the top, mm.
 */
import { intersection, difference, offset } from '../geometry/offset.ts';
import { regionArea } from '../geometry/measure.ts';
import type { Polygon, Region } from '../geometry/polygon.ts';
import { forEachEdge } from '../geometry/polygon.ts';

/** Regions that only touch share an area of rounding, mm². */
const TOUCHING_MM2 = 1e-2;

export const areOneOnOther = (a: Region, b: Region): boolean => Math.abs(regionArea(intersection(a, b))) > TOUCHING_MM2;

/** Where a zone lies: the area inside the gasket, and the gasket with it. */
export interface ZonePlace {
  readonly inside: Polygon;
  readonly gasketMm: number;
  readonly whole: Region;
}

export const zonePlace = (inside: Polygon, gasketMm: number): ZonePlace => ({
  inside,
  gasketMm,
  whole: offset([inside], gasketMm),
});

/** Why a gasket does not seal, and where. */
export interface Leak {
  readonly kind: 'edge' | 'hollow-face' | 'mouth';
  /** Of a mouth: what opens there. */
  readonly id?: string;
  readonly xMm: number;
  readonly yMm: number;
}

/** What opens to the face the body lies on. */
export interface Mouth {
  readonly id: string;
  readonly region: Region;
}

export interface Underside {
  readonly outline: Polygon;
  /** How far the face that lies on the fixture is from it at a place, mm. */
  readonly awayMm: (x: number, y: number) => number;
  readonly mouths: readonly Mouth[];
}

/** A gasket is pressed a few tenths together at the least: what is less than this away is sealed. Common practice, no source. */
const PRESSED_MM = 0.05;
/** Places along a gasket are looked at so far apart, mm. */
const ALONG_MM = 1;

/** All of the gasket must lie on flat wood: within the body, clear of every mouth. */
export function leaksOf(
  { inside, gasketMm, whole }: ZonePlace,
  { outline, awayMm, mouths }: Underside,
): readonly Leak[] {
  const leaks: Leak[] = [];
  const [over] = difference(whole, [outline]);
  if (over && Math.abs(regionArea(difference(whole, [outline]))) > TOUCHING_MM2) {
    leaks.push({ kind: 'edge', ...middleOf(over) });
  }
  const band = difference(whole, [inside]);
  for (const { id, region } of mouths) {
    const shared = intersection(band, region);
    const [first] = shared;
    if (first && Math.abs(regionArea(shared)) > TOUCHING_MM2) leaks.push({ kind: 'mouth', id, ...middleOf(first) });
  }
  const lines = [[inside], offset([inside], gasketMm / 2), whole].flat();
  const away = lines.flatMap((line) => along(line)).find(({ xMm, yMm }) => awayMm(xMm, yMm) > PRESSED_MM);
  if (away && leaks.every(({ kind }) => kind !== 'edge')) leaks.push({ kind: 'hollow-face', ...away });
  return leaks;
}

function middleOf(ring: Polygon): { readonly xMm: number; readonly yMm: number } {
  let [x, y] = [0, 0];
  for (let i = 0; i < ring.length; i += 2) {
    x += ring[i]!;
    y += ring[i + 1]!;
  }
  return { xMm: (2 * x) / ring.length, yMm: (2 * y) / ring.length };
}

function along(line: Polygon): readonly { readonly xMm: number; readonly yMm: number }[] {
  const places: { xMm: number; yMm: number }[] = [];
  forEachEdge(line, (x0, y0, x1, y1) => {
    const steps = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / ALONG_MM));
    for (let i = 0; i < steps; i++) {
      places.push({ xMm: x0 + ((x1 - x0) * i) / steps, yMm: y0 + ((y1 - y0) * i) / steps });
    }
  });
  return places;
}

/** What lets air in: the side of the body, the face that looks up, or the fixture beside the zones. */
export type Way = 'side' | 'face' | 'under';

/** Something hollow in the body: from which step on it is there, and from which on it has air of its own. */
export interface Hollow {
  readonly id: string;
  /** Index of the step that cuts it; −1: there before the first. */
  readonly from: number;
  readonly air?: { readonly from: number; readonly way: Way } | undefined;
  /** Where it opens to the face the body lies on. */
  readonly mouth?: Region | undefined;
  /** Ids of the hollows it meets. */
  readonly meets: readonly string[];
}

/** When a zone no longer holds, and the way the air takes: from what opens in the zone to what has the air. */
export interface Opened {
  /** Index of the step; −1: before the first. */
  readonly step: number;
  readonly way: Way;
  readonly by: readonly string[];
}

/**
 * Of each sealed zone, the first step after which air gets in; nothing where it holds to the end. Hollows whose mouth lies in no
 * sealed zone have the air that stands under the body beside them. A hollow in two zones ties them.
 */
export function openedBy(
  zones: readonly { readonly id: string; readonly place: ZonePlace }[],
  hollows: readonly Hollow[],
): ReadonlyMap<string, Opened> {
  const mouths = hollows.map(({ id, mouth }) => ({
    id,
    zones: mouth ? zones.filter(({ place }) => areOneOnOther(mouth, place.whole)).map((zone) => zone.id) : undefined,
  }));
  const zonesOf = new Map(mouths.map(({ id, zones: own }) => [id, own]));
  const airOf = (hollow: Hollow) =>
    hollow.air ?? (zonesOf.get(hollow.id)?.length === 0 ? ({ from: hollow.from, way: 'under' } as const) : undefined);
  const times = [...new Set(hollows.flatMap((one) => [one.from, airOf(one)?.from ?? -1]))].toSorted((a, b) => a - b);
  const opened = new Map<string, Opened>();
  for (const step of times) {
    const there = hollows.filter(({ from }) => from <= step);
    // Breadth first, from the air inward: the shortest way is the one named.
    const reached = new Map<string, Omit<Opened, 'step'>>();
    let edge = there.flatMap((hollow) => {
      const air = airOf(hollow);
      return air && air.from <= step ? [{ hollow, way: air.way, by: [hollow.id] }] : [];
    });
    for (const { hollow, way, by } of edge) reached.set(hollow.id, { way, by });
    while (edge.length > 0) {
      edge = edge.flatMap(({ hollow, way, by }) => {
        const own = zonesOf.get(hollow.id) ?? [];
        for (const zone of own) if (!opened.has(zone)) opened.set(zone, { step, way, by });
        return there
          .filter((other) => isNext(hollow, other) || own.some((zone) => zonesOf.get(other.id)?.includes(zone)))
          .filter((other) => !reached.has(other.id))
          .map((other) => {
            const next = { way, by: [other.id, ...by] };
            reached.set(other.id, next);
            return { hollow: other, ...next };
          });
      });
    }
  }
  return opened;
}

const isNext = (a: Hollow, b: Hollow): boolean => a.meets.includes(b.id) || b.meets.includes(a.id);
