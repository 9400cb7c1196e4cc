/** A number of a spec or of the plant in words, for sentences: `floor of controls`, `router, error in depth`. */

/** Where the key alone would not be understood. */
const WORDS: Readonly<Record<string, string>> = {
  'depth-error': 'error in depth',
  'place-error': 'error sideways',
  'blade-width': 'width of its blade',
  'first-play': 'play on its first pin',
  'second-play': 'play on its second pin',
  panel: 'wood it is mounted through',
  face: '',
};

const wordOf = (key: string): string => WORDS[key] ?? key.replaceAll('-', ' ');

/** `id`: of a given fact, without the occasion that may stand after a #. */
export function inWords(id: string): string {
  const [table = '', name = '', ...rest] = id.replace(/#.*/, '').split('.');
  if (table === 'plant') {
    const [of, ...keys] = rest;
    return of === undefined ? wordOf(name) : [of, keys.map(wordOf).join(' ')].filter((part) => part !== '').join(', ');
  }
  // Of a set-up on its pins.
  if (table === 'location') return `set-up ${name}, ${rest.map(wordOf).join(' ')}`;
  if (table === 'stages') {
    const [stage = '', ...points] = rest;
    const point = points.map(wordOf).join(' ');
    return `${wordOf(stage)} ${name}${point === '' ? '' : `, ${point}`}`;
  }
  const keys = rest.map(wordOf).filter((word) => word !== '');
  if (keys.length === 0) return name === '' ? wordOf(table) : `${wordOf(name)} of ${wordOf(table)}`;
  return `${keys.join(' ')} of ${name}`;
}
