/** Speeds and chips of a turning cutter, pure arithmetic (textbook of milling). */

const S_PER_MIN = 60;

/** m of feed for each cutting edge: f = v ÷ (n · z). Feed in m/s, turns in 1/min. */
export const chipLoad = (feed: number, turns: number, flutes: number): number => (feed * S_PER_MIN) / (turns * flutes);

/** m/s of the edge: v = π · D · n. Diameter in m, turns in 1/min. */
export const surfaceSpeed = (diameter: number, turns: number): number => (Math.PI * diameter * turns) / S_PER_MIN;

/** Turns, 1/min, at which the edge runs that fast: n = v ÷ (π · D). */
export const turnsFor = (speed: number, diameter: number): number => (speed * S_PER_MIN) / (Math.PI * diameter);

/** Degrees of its turn that an edge is in the wood on a straight path: acos(1 − a ÷ R). Half a turn is the whole width. */
export const engagement = (stepOver: number, diameter: number): number =>
  (Math.acos(Math.max(-1, 1 - (2 * stepOver) / diameter)) * 180) / Math.PI;

/** The thickest its chip gets, as a share of the chip load: the sine of the engagement, and 1 from a quarter turn on. */
export const chipShare = (engagementDeg: number): number =>
  engagementDeg >= 90 ? 1 : Math.sin((engagementDeg * Math.PI) / 180);
