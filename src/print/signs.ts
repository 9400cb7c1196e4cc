/**
 * Signs beside the signal words, drawn after the shapes of ISO 7010 (a triangle warns) without claiming conformity.
 * Each differs by shape and weight, so that a print in black loses nothing. NOTICE is no injury and has no triangle.
 */
import type { Caution } from '../cards/card.ts';
import { markup, type Markup } from './markup.ts';

const TRIANGLE = 'M12 2.5L22.5 21H1.5Z';
const MARK = '<path d="M10.7 8.5h2.6l-.5 6.6h-1.6z"/><circle cx="12" cy="17.6" r="1.4"/>';

const DRAWN: Readonly<Record<Caution['signal'], string>> = {
  danger: `<path d="${TRIANGLE}" stroke="#000" stroke-width="2" stroke-linejoin="round"/><g fill="#fff">${MARK}</g>`,
  warning: `<path d="${TRIANGLE}" fill="#ffd400" stroke="#000" stroke-width="2.4" stroke-linejoin="round"/>${MARK}`,
  caution: `<path d="${TRIANGLE}" fill="#fff" stroke="#000" stroke-width="1.6" stroke-linejoin="round"/>${MARK}`,
  notice:
    '<rect x="2" y="2" width="20" height="20" rx="2" fill="#fff" stroke="#000" stroke-width="1.6"/>' +
    '<circle cx="12" cy="7" r="1.6"/><path d="M10.6 10.4h2.8V18h-2.8z"/>',
};

export function signMarkup(signal: Caution['signal']): Markup {
  return markup(
    `<svg class="sign" xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24" aria-hidden="true">${DRAWN[signal]}</svg>`,
  );
}
