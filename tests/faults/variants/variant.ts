/** A way to write or move a sound model so that it stays sound. */
import type { Seeded } from '../seeded.ts';
import type { Sound } from '../sound.ts';

export interface Way {
  readonly name: string;
  /** It says the same in another way: the cards must not change. */
  readonly same: boolean;
  /** The files after it; undefined where there is nothing to do it to. */
  readonly apply: (sound: Sound, chance: Seeded) => Record<string, string> | undefined;
}
