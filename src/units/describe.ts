import type { Kind } from './quantity.ts';

const NAMES: Readonly<Record<Kind, string>> = {
  length: 'a length',
  angle: 'an angle',
  time: 'a time',
  mass: 'a mass',
  force: 'a force',
  pressure: 'a pressure',
  temperature: 'a temperature',
  'temperature-difference': 'a temperature difference',
  fraction: 'a percentage',
  speed: 'a speed',
  rotation: 'a speed of rotation',
  spread: 'a glue spread',
  area: 'an area',
  'timber-volume': 'a volume of timber',
  volume: 'a volume',
  density: 'a density',
  power: 'a power',
  'power-density': 'a power on an area',
  count: 'a plain number',
};

/** Name of a kind for people, with its article. */
export function kindName(kind: Kind): string {
  return NAMES[kind];
}
