/** Whether a part that was set aside can become a part of another model: the rule of the set-aside rack and of a run. */

/** A part as it stands at its sized stage. */
export interface Piece {
  readonly model: string;
  /** Species, and how it is sawn. */
  readonly wood: string;
  readonly pieces: number;
  readonly lengthNm: number;
  readonly widthNm: number;
  readonly thickNm: number;
}

/** A seam more or less shows; a piece that is thinner than wanted is no use. */
export const serves = (own: Piece, wanted: Piece): boolean =>
  wanted.model !== own.model &&
  wanted.wood === own.wood &&
  wanted.pieces === own.pieces &&
  wanted.lengthNm <= own.lengthNm &&
  wanted.widthNm <= own.widthNm &&
  wanted.thickNm < own.thickNm;
