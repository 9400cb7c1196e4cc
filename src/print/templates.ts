/**
 * The templates a user may edit. Each is parsed once; every path it asks for is watched (asks.ts), so that a name the view
 * has not is a finding at its line and column, wherever it stands. A template's mistake is never a throw.
 */
import Handlebars from 'handlebars';
import type { Finding, Place } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import { watched } from './asks.ts';
import { segmentsMarkup } from './markup.ts';
import { sentence, type Tell } from './say.ts';
import type { Words } from './words.ts';

/** Gives the HTML of a template, named as its file without `.hbs`; '' when it is broken, which is told once. */
export type Render = (name: string, view: object) => string;

/** Helpers a template may call besides `say`. */
const BUILT_IN = ['each', 'if', 'unless', 'with', 'lookup'];
const HELPERS = [...BUILT_IN, 'say'];

/** `templates`: text by path below the templates folder, as `blocks/steps.hbs`; a block is called `{{> steps}}`. */
export function templateSet(templates: ReadonlyMap<string, string>, words: Words, tell: Tell): Render {
  const engine = Handlebars.create();
  const texts = new Map([...templates].filter(([path]) => path.endsWith('.hbs')));
  const names = new Set([...texts.keys()].map(nameOf));
  addHelpers(engine, words, tell);
  for (const [path, text] of texts) {
    const program = parsed(path, text, tell);
    if (!program) continue;
    const mistakes = watched(program, { file: path, source: text, helpers: HELPERS, partials: names });
    for (const { start, end, what } of mistakes) tell(broken({ file: fileOf(path), start, end }, what));
    if (mistakes.length > 0) continue;
    engine.registerPartial(
      nameOf(path),
      engine.compile(program, { knownHelpersOnly: true, knownHelpers: { ask: true, show: true, say: true } }),
    );
  }
  return (name, view) => render(engine, name, view, tell);
}

function render(engine: typeof Handlebars, name: string, view: object, tell: Tell): string {
  const template = engine.partials[name] as Handlebars.TemplateDelegate | undefined;
  const place = { file: fileOf(`${name}.hbs`), start: 0, end: 0 };
  if (!template) {
    tell(broken(place, `There is no sound template "${name}".`));
    return '';
  }
  try {
    return template(view, { allowProtoPropertiesByDefault: false, allowProtoMethodsByDefault: false });
  } catch (error) {
    tell(broken(place, `The template cannot be filled: ${error instanceof Error ? error.message : String(error)}`));
    return '';
  }
}

function addHelpers(engine: typeof Handlebars, words: Words, tell: Tell): void {
  const asked = (values: readonly unknown[], offset: number, path: string, file: string): unknown => {
    const missing = values.indexOf(undefined);
    if (missing < 0) return values.at(-1);
    tell(inVain(offset, path, file, missing > 0 ? values[missing - 1] : undefined));
    return undefined;
  };
  // Called with the value of each prefix of a path, its offset and text, the file, and the engine's options.
  engine.registerHelper('ask', (...args: unknown[]) => asked(...watchedArguments(args)));
  engine.registerHelper('show', (...args: unknown[]) => {
    const call = watchedArguments(args);
    return asked(...call) ?? (call[0].includes(undefined) ? `[${call[2]}]` : '');
  });
  engine.registerHelper('lookup', (holder: unknown, key: unknown, offset: number, file: string) => {
    const own = typeof holder === 'object' && holder !== null && Object.hasOwn(holder, String(key));
    return asked(
      [holder ?? {}, own ? (holder as Record<string, unknown>)[String(key)] : undefined],
      offset,
      String(key),
      file,
    );
  });
  engine.registerHelper('say', (id: unknown, options: Handlebars.HelperOptions) => {
    const hash = options.hash as Record<string, unknown>;
    const args = Object.entries(hash).map(
      ([name, value]) => [name, { kind: 'name', text: String(value), fact: '' }] as const,
    );
    return segmentsMarkup(sentence(String(id), Object.fromEntries(args), words, tell));
  });
}

type Watched = [values: readonly unknown[], offset: number, path: string, file: string];

function watchedArguments(args: readonly unknown[]): Watched {
  const [offset, path, file] = args.slice(-4, -1);
  return [args.slice(0, -4), Number(offset), String(path), String(file)];
}

function parsed(path: string, text: string, tell: Tell): hbs.AST.Program | undefined {
  try {
    return Handlebars.parse(text);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const line = Number(/line (\d+)/.exec(message)?.[1] ?? 1);
    const lines = text.split('\n');
    const start = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0);
    const what = message.split('\n').at(-1) ?? message;
    tell(
      broken({ file: fileOf(path), start, end: start + (lines[line - 1]?.length ?? 0) }, `It cannot be read: ${what}`),
    );
    return undefined;
  }
}

function inVain(offset: number, path: string, file: string, holder: unknown): Finding {
  const written = path.split('.').at(-1) ?? path;
  const known = typeof holder === 'object' && holder !== null ? Object.keys(holder) : [];
  return {
    id: 'template-asks-in-vain',
    severity: 'error',
    place: { file: fileOf(file), start: offset, end: offset + path.length },
    what: `The template asks for "${path}", which is not there to print.`,
    why: 'Its place on the card stays empty, and the card looks whole.',
    mend: `Ask for what the card has. ${offer(written, known)}`,
    notes: [],
    about: [],
  };
}

function broken(place: Place, what: string): Finding {
  return {
    id: 'template-broken',
    severity: 'error',
    place,
    what,
    why: 'Cards cannot be printed from it.',
    mend: 'Mend the template, or take the one that came with the program.',
    notes: [],
    about: [],
  };
}

/** `blocks/steps.hbs` is called by its bare name. */
function nameOf(path: string): string {
  return path.replace(/^blocks\//, '').replace(/\.hbs$/, '');
}

function fileOf(path: string): string {
  return `templates/${path}`;
}
