/** A surface as people call it: the point of the top goes with its name. */
import type { Line } from './card.ts';
import { say } from './station.ts';

export const surfaceName = (surface: string): Line => say(`surface.${surface.replace('@', '-')}`);
