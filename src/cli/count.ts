/** `1 card`, `2 cards`; `2 bodies` where the plural is another word. */
export const counted = (count: number, noun: string, nouns = `${noun}s`): string =>
  `${count} ${count === 1 ? noun : nouns}`;
