/**
 * Where computed numbers of this trade usually lie. Outside of a band nothing is forbidden: somebody should look at the
 * inputs once more. All from memory, common practice, no source, unless a line says otherwise.
 */
export interface Likely {
  /** The fact; `{part}` stands for each part of the body. */
  readonly fact: string;
  /** In the base unit of the fact. */
  readonly low: number;
  readonly high: number;
  /** What lies outside. */
  readonly says: string;
  /** Where wood of one piece has no such number. */
  readonly onlyGlued?: boolean;
}

export const likely: readonly Likely[] = [
  {
    fact: 'planing.knife-pitch',
    low: 0.3e6,
    high: 3e6,
    says: 'Knife marks closer than this burn, wider ones show',
  },
  {
    fact: 'edge.{part}.power',
    low: 2e4,
    high: 40e4,
    says: 'With less the glue stays wet, with more it boils and the seam scorches',
    onlyGlued: true,
  },
  {
    fact: 'edge.{part}.clamp-gauge',
    low: 1e5,
    high: 10e5,
    says: 'Shop air usually lies between',
    onlyGlued: true,
  },
  { fact: 'room.equilibrium', low: 0.04, high: 0.14, says: 'Wood for use indoors rests between' },
];
