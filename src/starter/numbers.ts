/**
 * Thicknesses of a first spec: as thick as the stock allows, every stage as much thinner than the one before as the line
 * asks for at the worst. All in nanometres, nominals rounded down to 0.05 mm.
 */
import type { Use } from '../facts/facts.ts';
import { wanted } from '../facts/row.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Part } from '../facts/parts.ts';

const MM = 1_000_000;
const STEP = 0.05 * MM;
export const LIMITS = { sized: 0.1 * MM, faced: 0.1 * MM, machined: 0.12 * MM, white: 0.15 * MM };

type Line = NonNullable<PlantSpec['lines']>[string];
type LeastRemoval = Line['blank'];

const down = (nm: number): number => Math.floor(nm / STEP) * STEP;

const least = (use: Use, removal: LeastRemoval): number =>
  use(removal.flatness).value + use(removal.marks).value + use(removal.floor).value;

/** Nominal of a sized part cut from boards delivered down to `boardNm`. */
export function sized(use: Use, line: Line, part: Part, boardNm: number): number {
  const { rough, planed } = wanted(line[part], `allowances of the line for a ${part}`);
  const over = use(planed.over);
  const roughOver = use(rough.over);
  // Planing cleans it up, and the board is no thinner than the rough stage.
  const cleaned = least(use, rough['least-removal']) + (over.high ?? over.value);
  const staged = (roughOver.low ?? roughOver.value) + over.value;
  return down(boardNm - Math.max(cleaned, staged));
}

/** No wood of the published tables moves more than this, as a share, for each 1 % of moisture. */
const MOST_MOVEMENT = 0.004;

/** How much thinner the blank may have become by machining, as its moisture drifts. */
function drifting(use: Use, line: Line, blankNm: number): number {
  if (!line.drift) return 0;
  const { value, low = value } = use(line.drift);
  return blankNm * MOST_MOVEMENT * 100 * Math.abs(low);
}

export interface BodyNumbers {
  readonly faced: number;
  readonly machined: number;
  readonly white: number;
}

/** Stages of the body under a blank that is `blankNm` at its thinnest. `errorNm`: how far the machine may be off. */
export function body(use: Use, line: Line, blankNm: number, errorNm: number): BodyNumbers {
  const limit = (nm: number) => Math.max(nm, errorNm);
  const faced = down(blankNm - drifting(use, line, blankNm) - least(use, line.blank) - limit(LIMITS.faced));
  const machined = down(faced - limit(LIMITS.faced) - least(use, line['back-faced']) - limit(LIMITS.machined));
  const white = down(machined - limit(LIMITS.machined) - least(use, line.machined) - LIMITS.white);
  return { faced, machined, white };
}
