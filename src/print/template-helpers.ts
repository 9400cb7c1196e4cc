/** The helpers a template may call, and the two by which it watches itself (asks.ts). */
import type Handlebars from 'handlebars';
import type { Finding } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import { segmentsMarkup } from './markup.ts';
import { sentence, type Tell } from './say.ts';
import type { Words } from './words.ts';

/** What a template may write after its braces, besides names of the view. */
export const HELPERS: readonly string[] = ['each', 'if', 'unless', 'with', 'lookup', 'say'];

/** Where templates lie, as shown to the one who edits them. */
export function templateFile(path: string): string {
  return `templates/${path}`;
}

export function addHelpers(engine: typeof Handlebars, words: Words, tell: Tell): void {
  const ask = (asked: Asked) => found(asked, tell);
  engine.registerHelper('ask', (...args: unknown[]) => ask(askedBy(args)).value);
  engine.registerHelper('show', (...args: unknown[]) => {
    const asked = askedBy(args);
    const { missing, value } = ask(asked);
    return missing ? `[${asked.path}]` : value;
  });
  engine.registerHelper('lookup', (holder: unknown, key: unknown, offset: number, file: string) => {
    const own = typeof holder === 'object' && holder !== null && Object.hasOwn(holder, String(key));
    const value = own ? (holder as Record<string, unknown>)[String(key)] : undefined;
    return ask({ values: [holder, value], offset, path: String(key), file }).value;
  });
  engine.registerHelper('say', (id: unknown, options: Handlebars.HelperOptions) => {
    const names = Object.entries(options.hash as Record<string, unknown>);
    const args = names.map(([name, value]) => [name, { kind: 'name', text: String(value), fact: '' }] as const);
    return segmentsMarkup(sentence(String(id), Object.fromEntries(args), words, tell));
  });
}

interface Asked {
  /** The value of the place the path starts from and of each of its prefixes. */
  readonly values: readonly unknown[];
  readonly offset: number;
  readonly path: string;
  readonly file: string;
}

/** The arguments as asks.ts writes them, and last the engine's own options. */
function askedBy(args: readonly unknown[]): Asked {
  const [offset, path, file] = args.slice(-4, -1);
  return { values: args.slice(0, -4), offset: Number(offset), path: String(path), file: String(file) };
}

/** Null is there, and empty; nothing is inside it. */
function found({ values, offset, path, file }: Asked, tell: Tell): { missing: boolean; value: unknown } {
  const at = values.findIndex((value, i) => value === undefined || (i > 0 && values[i - 1] === null));
  if (at < 0) return { missing: false, value: values.at(-1) };
  tell(inVain({ offset, path, file, values }, values[at - 1]));
  return { missing: true, value: undefined };
}

function inVain({ offset, path, file }: Asked, holder: unknown): Finding {
  const written = path.split('.').at(-1) ?? path;
  const known = typeof holder === 'object' && holder !== null ? Object.keys(holder) : [];
  return {
    id: 'template-asks-in-vain',
    severity: 'error',
    place: { file: templateFile(file), start: offset, end: offset + path.length },
    what: `The template asks for "${path}", which is not there to print.`,
    why: 'Its place on the card stays empty, and the card looks whole.',
    mend: `Ask for what the card has. ${known.length > 0 ? offer(written, known) : 'There is nothing inside here.'}`,
    notes: [],
    about: [],
  };
}
