/** Printing in one language: its words, and the templates filled with them. */
import type { PrintAssets } from './input.ts';
import type { Tell } from './say.ts';
import { speech } from './speech.ts';
import type { Speech } from './speech.ts';
import { ownOf, templateSet } from './templates.ts';
import type { Render } from './templates.ts';
import type { Words } from './words.ts';

/** A language: how it speaks, and the templates filled with its words. */
export interface Tongue {
  readonly talk: Speech;
  readonly render: Render;
  /** With the templates of a station's own. */
  readonly renderAt: (station: string) => Render;
}

export function tongue({ templates }: PrintAssets, words: Words, tell: Tell): Tongue {
  const render = templateSet(templates, words, tell);
  const own = new Map<string, Render>();
  const renderAt = (station: string): Render => {
    if (ownOf(station, templates).length === 0) return render;
    const made = own.get(station) ?? templateSet(templates, words, tell, station);
    own.set(station, made);
    return made;
  };
  return { talk: speech(words, tell), render, renderAt };
}
