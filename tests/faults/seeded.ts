/** Chance that is the same every time. */
export interface Seeded {
  /** 0 up to, not including, 1. */
  readonly next: () => number;
  /** 0 up to, not including, `below`. */
  readonly whole: (below: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  readonly shuffle: <T>(list: readonly T[]) => T[];
}

/** Mulberry32, a 32-bit generator in the public domain: good enough to choose by, and short. */
export function seeded(seed: number): Seeded {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (below: number): number => Math.floor(next() * below);
  const shuffle = <T>(list: readonly T[]): T[] => {
    const mixed = [...list];
    for (let i = mixed.length - 1; i > 0; i--) {
      const j = whole(i + 1);
      [mixed[i], mixed[j]] = [mixed[j]!, mixed[i]!];
    }
    return mixed;
  };
  return { next, whole, pick: (from) => from[whole(from.length)]!, shuffle };
}

/** A number for a text, to seed by a name (FNV-1a). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const char of text) hash = Math.imul(hash ^ char.codePointAt(0)!, 0x01000193);
  return hash >>> 0;
}

/** Normal by the polar way of Box and Muller. */
export function normal(chance: Seeded, mean: number, deviation: number): number {
  for (;;) {
    const [x, y] = [2 * chance.next() - 1, 2 * chance.next() - 1];
    const s = x * x + y * y;
    if (s > 0 && s < 1) return mean + deviation * x * Math.sqrt((-2 * Math.log(s)) / s);
  }
}
