/**
 * A drawing in SVG, as far as a card needs to know it: its sides, and that it is a drawing and nothing more. Scripts, handlers,
 * movement and whatever is fetched from elsewhere are named, and the drawing is refused for them.
 */
import type { PictureForm } from '../../facts/pictures.ts';
import { xmlEvents } from './xml.ts';

const TYPE = 'image/svg+xml';
const NAMESPACE = 'http://www.w3.org/2000/svg';
const XHTML = 'http://www.w3.org/1999/xhtml';

/** What runs, moves, or shows another document; by local name, in small letters. */
const ACTING: Readonly<Record<string, string>> = {
  ...Object.fromEntries(['script', 'handler', 'listener'].map((name) => [name, 'a script'])),
  ...Object.fromEntries(
    ['foreignobject', 'iframe', 'object', 'embed', 'audio', 'video', 'canvas'].map((name) => [
      name,
      'a document of another kind',
    ]),
  ),
  ...Object.fromEntries(
    ['animate', 'animatecolor', 'animatemotion', 'animatetransform', 'set', 'discard'].map((name) => [
      name,
      'something that moves',
    ]),
  ),
};

/** More parts than this, with all that is drawn again by <use>, would stop the printer. */
const MOST_PARTS = 200_000;

const DRAWN = /<(?:\w+:)?svg[\s>/]/;

/** Undefined where it is no SVG at all. */
export function readSvg(bytes: Uint8Array): PictureForm | undefined {
  const begins = new TextDecoder().decode(bytes.subarray(0, 4096)).trimStart();
  if (!begins.startsWith('<')) return undefined;
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return DRAWN.test(begins) ? { is: 'broken', type: TYPE, what: 'it is not UTF-8 text' } : undefined;
  }
  return readText(text);
}

interface Part {
  readonly id: string | undefined;
  parts: number;
  readonly drawn: string[];
}

function readText(text: string): PictureForm | undefined {
  const acts = new Set<string>();
  const open: Part[] = [{ id: undefined, parts: 0, drawn: [] }];
  const named = new Map<string, Part>();
  const prefixes = { declared: new Set(['xml', 'xmlns']), used: new Set<string>() };
  let root: { readonly prefix: string; readonly attributes: ReadonlyMap<string, string> } | undefined;
  let style: string | undefined;
  for (const event of xmlEvents(text)) {
    if (event.is === 'fault') {
      if (!root && !DRAWN.test(text)) return undefined;
      return acts.size > 0 ? acting(acts) : { is: 'broken', type: TYPE, what: event.what };
    }
    if (event.is === 'doctype') {
      if (!root && !DRAWN.test(event.rest)) return undefined;
      return acting(acts.add('a DOCTYPE, which may declare anything'));
    }
    if (event.is === 'instruction' && event.name.toLowerCase() !== 'xml')
      acts.add(`an instruction (<?${event.name}?>)`);
    if (event.is === 'text' && style !== undefined) style += event.text;
    if (event.is === 'close') {
      if (style !== undefined) for (const one of inStyle(style)) acts.add(one);
      style = undefined;
      const part = open.pop()!;
      if (part.id !== undefined) named.set(part.id, part);
      const outer = open.at(-1)!;
      outer.parts += part.parts;
      for (const id of part.drawn) outer.drawn.push(id);
    }
    if (event.is !== 'open') continue;
    const local = localName(event.name);
    if (!root) {
      if (local !== 'svg') return undefined;
      root = { prefix: prefixOf(event.name), attributes: event.attributes };
    }
    for (const name of [event.name, ...event.attributes.keys()]) {
      if (prefixOf(name) === 'xmlns') prefixes.declared.add(localName(name));
      prefixes.used.add(prefixOf(name).toLowerCase());
    }
    if (local === 'style') style = '';
    for (const one of inElement(local, event.attributes)) acts.add(one);
    open.push({ id: event.attributes.get('id'), parts: 1, drawn: local === 'use' ? hrefs(event.attributes) : [] });
  }
  if (acts.size > 0) return acting(acts);
  const broken = (what: string): PictureForm => ({ is: 'broken', type: TYPE, what });
  const { prefix, attributes } = root!;
  if (attributes.get(prefix === '' ? 'xmlns' : `xmlns:${prefix}`) !== NAMESPACE)
    return broken(`its root lacks xmlns="${NAMESPACE}"`);
  const unknown = [...prefixes.used].find((used) => used !== '' && !prefixes.declared.has(used));
  if (unknown !== undefined) return broken(`nothing in it says what ${unknown}: stands for`);
  if (partsDrawn(open[0]!, named, new Map(), 0) > MOST_PARTS)
    return broken('it draws its own parts again and again, more than a printer bears');
  const size = sizeOf(attributes);
  return size
    ? { is: 'picture', type: TYPE, ...size }
    : broken('it has neither a viewBox nor width and height, so it has no size');
}

const acting = (acts: ReadonlySet<string>): PictureForm => ({ is: 'acting', type: TYPE, acts: [...acts] });

/** What stands before the colon; '' where there is none. */
const prefixOf = (name: string): string => name.slice(0, Math.max(0, name.indexOf(':')));

const localName = (name: string): string => name.slice(name.indexOf(':') + 1).toLowerCase();

const hrefs = (attributes: ReadonlyMap<string, string>): string[] =>
  [...attributes].flatMap(([name, value]) => (localName(name) === 'href' ? [value.trim().slice(1)] : []));

function* inElement(local: string, attributes: ReadonlyMap<string, string>): Generator<string> {
  const kind = Object.hasOwn(ACTING, local) && ACTING[local];
  if (kind) yield `${kind} (<${local}>)`;
  for (const [name, value] of attributes) {
    const key = localName(name);
    if (key.startsWith('on')) yield `a handler of events (${key})`;
    else if (key === 'href' || key === 'src' || key === 'srcset' || name === 'xml:base') {
      if (!isInside(value.trim())) yield `a reference to something outside of it (${key}="${value.slice(0, 40)}")`;
    } else if (/^xmlns(:|$)/.test(name)) {
      if (value === XHTML) yield 'a document of another kind (XHTML)';
    } else if (!name.includes(':')) yield* inStyle(value);
  }
}

/** A part of the drawing itself, or a picture of dots carried inside it. */
const isInside = (address: string): boolean => /^(?:#|data:image\/(?:png|jpeg|gif|webp)[;,])/i.test(address);

/** What a style, or an attribute that may hold one, fetches; an escape could spell anything. */
function* inStyle(css: string): Generator<string> {
  if (css.includes('\\')) yield `an escape in its style (${css.slice(css.indexOf('\\')).slice(0, 20)})`;
  const fetching = /@import|@namespace|(?<![\w-])(?:-webkit-)?(?:image-set|src|image|cross-fade)\(/i.exec(css)?.[0];
  if (fetching !== undefined) yield `a style that fetches (${fetching})`;
  for (const [, address] of css.matchAll(/url\(\s*["']?\s*([^\s"')]{0,60})/gi)) {
    if (!isInside(address!)) yield `a reference to something outside of it (url(${address!}))`;
  }
}

/** With what is drawn again by <use>; without end where it comes back to itself. */
function partsDrawn(part: Part, named: ReadonlyMap<string, Part>, known: Map<string, number>, depth: number): number {
  if (depth > 50) return Infinity;
  let parts = part.parts;
  for (const id of part.drawn) {
    const drawn = named.get(id);
    const count = known.get(id) ?? (drawn ? partsDrawn(drawn, named, known, depth + 1) : 0);
    known.set(id, count);
    parts += count;
  }
  return parts;
}

const NUMBER = String.raw`[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?`;
const VIEW_BOX = new RegExp(`^\\s*(${NUMBER})[\\s,]+(${NUMBER})[\\s,]+(${NUMBER})[\\s,]+(${NUMBER})\\s*$`, 'i');
const LENGTH = new RegExp(`^\\s*(${NUMBER})(px|mm|cm|in|pt|pc|q)?\\s*$`, 'i');
/** Of CSS (CSS Values and Units, absolute lengths), in pixels of 1/96 inch. */
const PIXELS: Readonly<Record<string, number>> = {
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  q: 96 / 101.6,
  pt: 96 / 72,
  pc: 16,
};

/** Width and height where both are lengths, else the viewBox; both greater than nothing. */
function sizeOf(root: ReadonlyMap<string, string>): { width: number; height: number } | undefined {
  const [width, height] = [length(root.get('width')), length(root.get('height'))];
  if (width !== undefined && height !== undefined) return positive(width, height);
  const box = VIEW_BOX.exec(root.get('viewBox') ?? '');
  return box ? positive(Number(box[3]), Number(box[4])) : undefined;
}

const positive = (width: number, height: number) =>
  width > 0 && height > 0 && width / height < 1000 && height / width < 1000 ? { width, height } : undefined;

function length(text: string | undefined): number | undefined {
  const found = LENGTH.exec(text ?? '');
  return found ? Number(found[1]) * PIXELS[(found[2] ?? 'px').toLowerCase()]! : undefined;
}
