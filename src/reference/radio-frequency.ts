/** Curing an edge joint under a radio-frequency field. The adhesive's data sheet and the machine's manual come first. */
import type { Certainty } from './certainty.ts';

/** Three pulses of three seconds on each of two faces; common practice of the trade, no source. */
export const EDGE_PULSES = { pulses: 3, pulseS: 3, faces: 2 } as const;
export const EDGE_PULSES_SOURCE = 'three pulses of three seconds on each face; common practice, no source';
export const EDGE_PULSES_CERTAINTY: Certainty = 'unverified';

/** Power on the glued area under an electrode at which a joint is likely to cure and not to scorch, W/m²; from memory. */
export const EDGE_POWER = { low: 2e4, high: 40e4 } as const;
