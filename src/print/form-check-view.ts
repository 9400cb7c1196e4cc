/** A check on a form as its templates see it. */
import type { FormCheck } from '../cards/card.ts';
import type { Speech } from './speech.ts';

/** More boxes than these take a line of their own. */
const MOST_BESIDE = 2;

export function formCheckView({ what, limits, gauge, often, boxes, how }: FormCheck, talk: Speech) {
  return {
    what: talk.html(what),
    limits: limits ? talk.number(limits) : null,
    gauge: talk.html(gauge),
    often: talk.html(often),
    ticked: how === 'ticked',
    boxes: boxes.map(({ text }) => text),
    wide: how === 'written' && boxes.length > MOST_BESIDE,
  };
}
