/** Cutters, drills, screws, pins and what holds the work, in section. */
import type { At, SketchMark } from '../../findings/sketch.ts';
import { along, BACK, disc, line, polygon, rect, shape } from './wood.ts';

/** A cutter that stands on its tip at `x`, `tip`: flutes, shank, and a holder from `holder` upward. */
export function cutter({
  x,
  tip,
  width,
  flutes = 8,
  shank = width,
  holder = -6,
  ball = false,
}: {
  readonly x: number;
  readonly tip: number;
  readonly width: number;
  /** Length of the flutes. */
  readonly flutes?: number;
  readonly shank?: number;
  readonly holder?: number;
  readonly ball?: boolean;
}): SketchMark[] {
  const r = width / 2;
  const top = tip - flutes;
  const end = ball ? `V ${tip - r} A ${r} ${r} 0 0 1 ${x - r} ${tip - r}` : `V ${tip} H ${x - r}`;
  const turns = [0.2, 0.55, 0.9].map((part) => tip - (ball ? r : 0) - part * (flutes - (ball ? r : 0)));
  return [
    ...shape(rect(x - shank / 2, holder, x + shank / 2, top), 'metal', 'edge'),
    ...shape(`M ${x - r} ${top} H ${x + r} ${end} Z`, 'metal', 'edge'),
    ...line(turns.map((y) => `M ${x - r} ${y} L ${x + r} ${Math.max(y - width * 0.5, top)}`).join(' '), 'thin'),
    ...shape(
      polygon(
        [x - 3.6, -9],
        [x + 3.6, -9],
        [x + 3.6, holder - 1.4],
        [x + 2.4, holder],
        [x - 2.4, holder],
        [x - 3.6, holder - 1.4],
      ),
      'metal',
      'edge',
    ),
  ];
}

/** A drill along a line; its point at `to`. */
export function drill(from: At, to: At, width: number): SketchMark[] {
  const place = along(from, to);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const r = width / 2;
  const body = length - r * 0.6;
  const turns: string[] = [];
  for (let far = body; far > width; far -= width * 0.8) {
    turns.push(`M ${place(far, -r)} L ${place(far - width * 0.6, r)}`);
  }
  return [
    ...shape(
      `M ${place(0, -r)} L ${place(body, -r)} L ${place(length, 0)} L ${place(body, r)} L ${place(0, r)} Z`,
      'metal',
      'edge',
    ),
    ...line(turns.join(' '), 'thin'),
  ];
}

/** A wood screw along a line: from the top of its head to its point. `bare`: how much of it has no thread. */
export function screw(
  from: At,
  to: At,
  { width = 3.4, head = 7, bare = 1 }: { readonly width?: number; readonly head?: number; readonly bare?: number } = {},
): SketchMark[] {
  const place = along(from, to);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [crest, root] = [width / 2, width * 0.33];
  const cone = (head / 2 - root) * 0.8;
  const start = cone + bare;
  const point = width * 1.1;
  const pitch = 1.7;
  const count = Math.max(1, Math.floor((length - point - start) / pitch));
  const teeth = Array.from({ length: count }, (_, i) => start + i * pitch);
  const flank = (side: 1 | -1) =>
    (side === 1 ? teeth : teeth.toReversed())
      .map((far) =>
        side === 1
          ? `L ${place(far, root)} L ${place(far + pitch / 2, crest)} L ${place(far + pitch, root)}`
          : `L ${place(far + pitch, -root)} L ${place(far + pitch / 2, -crest)} L ${place(far, -root)}`,
      )
      .join(' ');
  return shape(
    `M ${place(0, -head / 2)} L ${place(0, head / 2)} L ${place(cone, root)} ${flank(1)} ` +
      `L ${place(length, 0)} ${flank(-1)} L ${place(cone, -root)} Z`,
    'metal',
    'thin',
  );
}

/** A pin from its foot to its rounded tip, upright. */
export function pin(x: number, foot: number, tip: number, width = 4): SketchMark[] {
  const r = width / 2;
  const up = tip < foot ? 1 : -1;
  const c = r * 0.6;
  return shape(
    `M ${x - r} ${foot} V ${tip + up * c} L ${x - r + c} ${tip} H ${x + r - c} L ${x + r} ${tip + up * c} V ${foot} Z`,
    'metal',
    'edge',
  );
}

/** A tack, or a headless pin, driven downward: its point at `to`. */
export const tack = (x: number, from: number, to: number, headed = false): SketchMark[] => [
  ...shape(
    polygon([x - 0.6, from], [x + 0.6, from], [x + 0.6, to - 1.6], [x, to], [x - 0.6, to - 1.6]),
    'metal',
    'thin',
  ),
  ...(headed ? shape(rect(x - 1.8, from - 0.6, x + 1.8, from + 0.2), 'metal', 'thin') : []),
];

/** A plate on a face: a cover, a ring. */
export const plate = (from: number, to: number, y = 0, thick = 1.4): SketchMark[] =>
  shape(rect(from, y - thick, to, y), 'metal', 'edge');

/** The fixture that a body lies on. */
export const bed = (top = BACK, from = 1, to = 59): SketchMark[] =>
  shape(rect(from, top, to, top + 4.4), 'bed', 'edge');

/** Pressed in between body and fixture. */
export const gasket = (x: number, top = BACK, height = 2): SketchMark[] =>
  shape(rect(x - 1.4, top, x + 1.4, top + height, 0.6), 'soft', 'edge');

/** A bushing in a jig: two cheeks round its hole, a flange on top. */
export const bushing = (x: number, top: number, bottom: number, outer = 10, inner = 5): SketchMark[] =>
  ([-1, 1] as const).flatMap((s) =>
    shape(
      `M ${x + (s * inner) / 2} ${top} H ${x + s * (outer / 2 + 1.4)} V ${top + 1.6} H ${x + (s * outer) / 2} V ${bottom} H ${x + (s * inner) / 2} Z`,
      'metal',
      'edge',
    ),
  );

/** A feed roller, or a cutter head with its knives. */
export const roller = (x: number, y: number, r: number): SketchMark[] => [
  ...shape(disc(x, y, r), 'metal', 'edge'),
  ...shape(disc(x, y, 0.7), 'air', 'thin'),
];

/** A depth gauge: its foot on a face, its rod down to `tip`. */
export const depthGauge = (x: number, tip: number, from: number, to: number): SketchMark[] => [
  ...shape(rect(from, -3, to, -0.3), 'metal', 'edge'),
  ...shape(rect(x - 1.1, -7, x + 1.1, tip), 'metal', 'edge'),
];
