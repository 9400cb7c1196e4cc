/** Text on its way into HTML and SVG: everything that came from a spec is escaped here or by the template engine. */
import Handlebars from 'handlebars';
import type { Segment } from './say.ts';

/** Markup this program made itself: the template engine prints it as it is. All else it escapes. */
export type Markup = Handlebars.SafeString;

export function markup(html: string): Markup {
  return new Handlebars.SafeString(html);
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Safe in HTML and XML, as text or in a quoted attribute; control characters, which XML forbids, become blanks. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ENTITIES[character] ?? '').replace(/[\p{Cc}\ufffe\uffff]/gu, ' ');
}

export function segmentsMarkup(segments: readonly Segment[]): Markup {
  return markup(
    segments
      .map(({ text, figure, language }) => {
        const set = figure ? `<span class="fig">${escaped(text)}</span>` : escaped(text);
        return language === undefined ? set : `<span lang="${escaped(language)}">${set}</span>`;
      })
      .join(''),
  );
}

/** A string of CSS: whatever could end it, or the style element around it, is written as a code point. */
export const cssString = (text: string): string => `"${cssText(text)}"`;

/** The same without its quotes, for a place inside a string. */
export function cssText(text: string): string {
  return text.replace(/[^ A-Za-z0-9.,:·–-]/gu, (character) => `\\${character.codePointAt(0)?.toString(16) ?? ''} `);
}

/** A name fit for a CSS identifier or an element's id. */
export function identifier(...parts: readonly string[]): string {
  return parts.join('-').replace(/[^A-Za-z0-9-]/g, (character) => `_${character.codePointAt(0)?.toString(16) ?? ''}`);
}
