/** A picture on a card, as plain data. */
import type { Literal, Name } from './card.ts';

/** The engineer's own picture: its file is no part of the card, its fingerprint is. */
export interface Picture {
  readonly kind: 'picture';
  readonly id: string;
  /** Its number on this card, by which steps refer to it. */
  readonly number: Literal;
  /** Numbers of the steps it belongs to; empty where it belongs to none. */
  readonly steps: readonly Literal[];
  readonly caption: Name;
  /** Media type. */
  readonly type: 'image/png' | 'image/jpeg' | 'image/svg+xml';
  /** Of the bytes of its file, in hexadecimal digits. */
  readonly sha256: string;
}
