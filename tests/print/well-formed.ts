/** Walks the tags of markup: opened and closed in order, attributes quoted, text free of stray brackets and ampersands. */
const VOID = new Set(['meta', 'link', 'br']);
const TAG = /<(\/?)([A-Za-z][A-Za-z0-9]*)((?:\s+[A-Za-z-]+(?:="[^"<]*")?)*)\s*(\/?)>/y;
const TEXT = /(?:[^<>&]|&(?:amp|lt|gt|quot|#39|#x27|#x3D|#x60);)+/y;

/** Names of the elements met; throws at the first place that is not well formed. */
export function elements(source: string, html = false): string[] {
  const markup = html ? source.replace(/^\s*<!doctype html>/, '').replace(/<style>[^<]*<\/style>/g, '') : source;
  const open: string[] = [];
  const met: string[] = [];
  for (let at = 0; at < markup.length;) {
    const pattern = markup[at] === '<' ? TAG : TEXT;
    pattern.lastIndex = at;
    const match = pattern.exec(markup);
    if (!match) throw new Error(`not well formed at ${at}: ${markup.slice(at, at + 60)}`);
    at = pattern.lastIndex;
    if (pattern === TEXT) continue;
    const [, closing, name = '', , single] = match;
    if (closing) {
      const last = open.pop();
      if (last !== name) throw new Error(`</${name}> closes <${last ?? ''}> at ${at}`);
    } else {
      met.push(name);
      if (!single && !(html && VOID.has(name))) open.push(name);
    }
  }
  if (open.length > 0) throw new Error(`left open: ${open.join(', ')}`);
  return met;
}

/** What a reader sees: the text between the tags, style and script left out. */
export function readable(html: string): string {
  const entities: Record<string, string> = {
    amp: '&',
    lt: '<',
    gt: '>',
    quot: '"',
    '#39': "'",
    '#x27': "'",
    '#x3D': '=',
    '#x60': '`',
  };
  return html
    .replace(/<style>[^<]*<\/style>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&([#\w]+);/g, (_, name: string) => entities[name] ?? '?');
}
