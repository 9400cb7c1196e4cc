/** XML in one pass: what opens, closes and stands between, or the first thing that is not well formed. No entity is followed. */

export type XmlEvent =
  | { readonly is: 'open'; readonly name: string; readonly attributes: ReadonlyMap<string, string> }
  | { readonly is: 'close' }
  | { readonly is: 'text'; readonly text: string }
  | { readonly is: 'instruction'; readonly name: string }
  /** Nothing is read after it: what it declares could stand for anything. `rest`: what follows its opening. */
  | { readonly is: 'doctype'; readonly rest: string }
  | { readonly is: 'fault'; readonly what: string };

const NAME = /[\p{L}_:][\p{L}\p{N}\p{M}_:.·-]*/uy;
const BLANKS = /\s*/y;
const EQUALS = /\s*=\s*/y;
const INSTRUCTION = /<\?([\p{L}_:][\p{L}\p{N}_:.-]*)/uy;
// Control characters have no place in XML, whatever stands for them.
const FORBIDDEN = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u;
const KNOWN: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** Deeper than this no drawing is made. */
const DEEPEST = 200;

export function* xmlEvents(text: string): Generator<XmlEvent> {
  const fault = (what: string): XmlEvent => ({ is: 'fault', what });
  if (FORBIDDEN.test(text)) return yield fault('it holds a character that no XML may hold');
  const open: string[] = [];
  let rooted = false;
  for (let at = 0; at < text.length;) {
    const next = text.indexOf('<', at);
    const between = text.slice(at, next < 0 ? text.length : next);
    const said = plainText(between);
    if (said === undefined) return yield fault(`an & in it stands for nothing: ${excerpt(between, '&')}`);
    if (open.length > 0) yield { is: 'text', text: said };
    else if (said.trim() !== '') return yield fault(`words stand outside of its root: ${said.trim().slice(0, 20)}`);
    if (next < 0) break;
    at = next;
    const passed = passOver(text, at);
    if (passed === 'unclosed') return yield fault('something in it is opened and never closed');
    if (passed) {
      if (passed.event?.is === 'instruction' && /^xml$/i.test(passed.event.name) && at > 0)
        return yield fault('its first line is not the first: something stands before <?xml');
      if (passed.event) yield passed.event;
      if (passed.event?.is === 'doctype') return;
      at = passed.end;
      continue;
    }
    if (text.startsWith('</', at)) {
      const name = match(NAME, text, at + 2);
      const end = at + 2 + (name?.length ?? 0) + (match(BLANKS, text, at + 2 + (name?.length ?? 0))?.length ?? 0);
      if (name === undefined || text[end] !== '>' || open.pop() !== name)
        return yield fault(`</${name ?? ''}> closes what is not open`);
      yield { is: 'close' };
      at = end + 1;
      continue;
    }
    const tag = tagAt(text, at);
    if ('what' in tag) return yield fault(tag.what);
    if (open.length === 0 && rooted) return yield fault('it has two roots');
    rooted = true;
    yield { is: 'open', name: tag.name, attributes: tag.attributes };
    if (tag.closed) yield { is: 'close' };
    else open.push(tag.name);
    if (open.length > DEEPEST) return yield fault('its parts lie deeper in each other than any drawing needs');
    at = tag.end;
  }
  if (open.length > 0) yield fault(`<${open.at(-1)!}> is never closed`);
  else if (!rooted) yield fault('it has no root');
}

/** What is no element: a comment, character data, an instruction, a doctype. */
function passOver(text: string, at: number): { end: number; event?: XmlEvent } | 'unclosed' | undefined {
  const until = (mark: string, from: number) => {
    const end = text.indexOf(mark, from);
    return end < 0 ? undefined : end;
  };
  if (text.startsWith('<!--', at)) {
    const end = until('-->', at + 4);
    return end === undefined ? 'unclosed' : { end: end + 3 };
  }
  if (text.startsWith('<![CDATA[', at)) {
    const end = until(']]>', at + 9);
    return end === undefined ? 'unclosed' : { end: end + 3, event: { is: 'text', text: text.slice(at + 9, end) } };
  }
  if (text.startsWith('<?', at)) {
    const end = until('?>', at + 2);
    if (end === undefined) return 'unclosed';
    INSTRUCTION.lastIndex = at;
    return { end: end + 2, event: { is: 'instruction', name: INSTRUCTION.exec(text)?.[1] ?? '' } };
  }
  return text.startsWith('<!', at) ? { end: at, event: { is: 'doctype', rest: text.slice(at) } } : undefined;
}

type Tag =
  | {
      readonly name: string;
      readonly attributes: ReadonlyMap<string, string>;
      readonly closed: boolean;
      readonly end: number;
    }
  | { readonly what: string };

function tagAt(text: string, from: number): Tag {
  const name = match(NAME, text, from + 1);
  if (name === undefined) return { what: `a < in it opens nothing: ${text.slice(from, from + 20)}` };
  const attributes = new Map<string, string>();
  let at = from + 1 + name.length;
  for (;;) {
    const blanks = match(BLANKS, text, at)!.length;
    at += blanks;
    if (text[at] === '>') return { name, attributes, closed: false, end: at + 1 };
    if (text.startsWith('/>', at)) return { name, attributes, closed: true, end: at + 2 };
    const key = match(NAME, text, at);
    const equals = key === undefined ? undefined : match(EQUALS, text, at + key.length);
    const quoted = at + (key?.length ?? 0) + (equals?.length ?? 0);
    const quote = text[quoted];
    const end = quote === '"' || quote === "'" ? text.indexOf(quote, quoted + 1) : -1;
    if (blanks === 0 || key === undefined || equals === undefined || end < 0)
      return { what: `<${name}> is not written as it should be` };
    const written = text.slice(quoted + 1, end);
    const value = plainText(written);
    if (value === undefined) return { what: `an & in it stands for nothing: ${excerpt(written, '&')}` };
    if (written.includes('<')) return { what: `a < stands in ${key} of <${name}>` };
    if (attributes.has(key)) return { what: `<${name}> has ${key} twice` };
    attributes.set(key, value);
    at = end + 1;
  }
}

function match(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

/** With references as the characters they stand for; undefined where one stands for none that XML knows by itself. */
function plainText(written: string): string | undefined {
  if (!written.includes('&')) return written;
  let sound = true;
  const plain = written.replace(/&(?:#(\d{1,7})|#x([\da-f]{1,6})|([a-z]+));|&/gi, (_, decimal, hex, name) => {
    const code = decimal === undefined ? Number.parseInt(String(hex), 16) : Number(decimal);
    const character =
      name === undefined
        ? code <= 0x10ffff && !FORBIDDEN.test(String.fromCodePoint(code)) && String.fromCodePoint(code)
        : Object.hasOwn(KNOWN, String(name)) && KNOWN[String(name)];
    sound &&= typeof character === 'string';
    return typeof character === 'string' ? character : '';
  });
  return sound ? plain : undefined;
}

const excerpt = (text: string, from: string): string => text.slice(text.indexOf(from)).slice(0, 20).trim();
