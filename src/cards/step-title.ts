/** A step of a set-up as people call it: a cut by its title, a face or the perimeter by its word. */
import type { StepKey } from '../facts/cutting-order.ts';
import type { Arg } from './card.ts';
import { contourTitle, cutTitle } from './machining.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

export function stepTitle(desk: Desk, key: StepKey): Arg {
  const [kind, id] = [key.slice(0, key.indexOf('.')), key.slice(key.indexOf('.') + 1)];
  if (kind === 'contour') return contourTitle(desk, id);
  if (kind === 'cavity') return cutTitle(desk, 'cavities', id);
  if (kind === 'hole') return cutTitle(desk, 'holes', id);
  if (kind === 'channel') return cutTitle(desk, 'channels', id);
  return say(`running.part.${id}`);
}
