/**
 * The shape of a face by the distance from a line: land, recurve and crown of an arch, a bevel, a ledge for binding.
 *
 * A height is not stored but a share: of the way from the low named height (land) to the high one (crown, face). So it is
 * known how far a point moves when either of them does. What is drawn as a depth of its own, the hollow of a recurve, is a
 * drop below that.
 */
export type Ease =
  /** In a straight line: a bevel. */
  | 'straight'
  /** In half a cosine, level at both ends: what a carved arch runs in. */
  | 'cosine';

/** From the end of the piece before to `toMm` from the line. */
export interface Piece {
  readonly toMm: number;
  readonly ease: Ease;
  /** At the end of the piece; 0 at the low height, 1 at the high one. */
  readonly share: number;
  /** Below that, at the end of the piece, ≥ 0. */
  readonly dropMm: number;
}

/** Starts at the line itself with the low height; beyond its last piece it stays as it ends there. */
export interface Profile {
  readonly startShare: number;
  readonly pieces: readonly Piece[];
}

export interface Height {
  readonly share: number;
  readonly dropMm: number;
}

/** A face with no shape: all of it at the high height. */
export const FLAT: Profile = { startShare: 1, pieces: [] };

export function profileAt({ startShare, pieces }: Profile, distanceMm: number): Height {
  let from: Height & { readonly toMm: number } = { toMm: 0, share: startShare, dropMm: 0 };
  for (const piece of pieces) {
    if (distanceMm < piece.toMm) {
      const t = eased(piece.ease, (distanceMm - from.toMm) / (piece.toMm - from.toMm));
      return {
        share: from.share + t * (piece.share - from.share),
        dropMm: from.dropMm + t * (piece.dropMm - from.dropMm),
      };
    }
    from = piece;
  }
  return { share: from.share, dropMm: from.dropMm };
}

/** From this distance on nothing changes any more, mm. */
export const reachOf = ({ pieces }: Profile): number => pieces.at(-1)?.toMm ?? 0;

/** The end of any piece, also of those a faulty spec has out of order, mm. */
export function furthestOf({ pieces }: Profile): number {
  let furthest = 0;
  for (const { toMm } of pieces) furthest = Math.max(furthest, toMm);
  return furthest;
}

function eased(ease: Ease, t: number): number {
  return ease === 'straight' ? t : (1 - Math.cos(Math.PI * t)) / 2;
}

/** A flat land, then a straight bevel up to the high height. */
export function bevel(landMm: number, bevelMm: number): Profile {
  return {
    startShare: 0,
    pieces: [
      { toMm: landMm, ease: 'straight', share: 0, dropMm: 0 },
      { toMm: landMm + bevelMm, ease: 'straight', share: 1, dropMm: 0 },
    ],
  };
}

export interface Arch {
  /** Width of the flat land at the edge. */
  readonly landMm: number;
  /** Distance of the recurve's lowest line from the edge, and how far it lies below the land; absent: none. */
  readonly recurve?: { readonly atMm: number; readonly depthMm: number };
  /** Distance from the edge at which the crown's height is reached. */
  readonly crownMm: number;
}

/** Land, hollow and rise to the crown; each runs into the next without a step in slope. */
export function arch({ landMm, recurve, crownMm }: Arch): Profile {
  const land: Piece = { toMm: landMm, ease: 'cosine', share: 0, dropMm: 0 };
  const hollow: Piece[] = recurve ? [{ toMm: recurve.atMm, ease: 'cosine', share: 0, dropMm: recurve.depthMm }] : [];
  return { startShare: 0, pieces: [land, ...hollow, { toMm: crownMm, ease: 'cosine', share: 1, dropMm: 0 }] };
}

export interface Steepest {
  /** mm up for each mm along. */
  readonly slope: number;
  /** Where it bulges most: 1/ρ, 1/mm. */
  readonly bendPerMm: number;
}

/**
 * Of a profile with that rise from the low height to the high one. Half a cosine over w that rises by Δ is steepest in its
 * middle, π · Δ ÷ 2w, and bulges most at its upper end, π² · Δ ÷ 2w². The kink where a bevel begins is no bend.
 */
export function steepestOf({ startShare, pieces }: Profile, riseMm: number): Steepest {
  let [slope, bendPerMm] = [0, 0];
  let from = { toMm: 0, heightMm: startShare * riseMm };
  for (const { toMm, ease, share, dropMm } of pieces) {
    const heightMm = share * riseMm - dropMm;
    const [rise, width] = [Math.abs(heightMm - from.heightMm), toMm - from.toMm];
    if (width > 0) {
      slope = Math.max(slope, (rise / width) * (ease === 'straight' ? 1 : Math.PI / 2));
      if (ease === 'cosine') bendPerMm = Math.max(bendPerMm, (rise * Math.PI ** 2) / (2 * width ** 2));
    }
    from = { toMm, heightMm };
  }
  return { slope, bendPerMm };
}
