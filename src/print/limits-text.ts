/** Limits of a card in words, each once: what they are of and what stands there. */
import type { Card, Limits } from '../cards/card.ts';
import type { PrintAssets } from './input.ts';
import { speech } from './speech.ts';

export interface LimitsText {
  readonly fact: string;
  readonly what: string;
  readonly text: string;
}

export function limitsTexts(card: Card, assets: PrintAssets): readonly LimitsText[] {
  const talk = speech(assets.words, () => undefined);
  const named = [
    ...card.checks.map(({ what, limits }) => ({ what, limits })),
    ...card.keyNumbers.map(({ label, value }) => ({
      what: label,
      limits: value.kind === 'limits' ? value : undefined,
    })),
  ];
  const texts = new Map<string, LimitsText>();
  for (const { what, limits } of named) {
    if (!limits || texts.has(limits.fact)) continue;
    texts.set(limits.fact, { fact: limits.fact, what: talk.plain(what), text: talk.plain(bare(limits)) });
  }
  return [...texts.values()];
}

/** In the unit of the gauge alone. */
function bare({ second: _second, acceptance: _acceptance, ...limits }: Limits): Limits {
  return limits;
}
