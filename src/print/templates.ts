/**
 * The templates a user may edit. Each is parsed once; every path it asks for is watched (asks.ts), so that a name the view
 * has not is a finding at its line and column, wherever it stands. A template's mistake is never a throw.
 */
import Handlebars from 'handlebars';
import type { Finding, Place } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import { watched } from './asks.ts';
import type { Tell } from './say.ts';
import { addHelpers, HELPERS, templateFile } from './template-helpers.ts';
import type { Words } from './words.ts';

/** Gives the HTML of a template, named as its file without `.hbs`; '' when it is broken, which is told once. */
export type Render = (name: string, view: object) => string;

/**
 * `templates`: text by path below the templates folder, as `blocks/steps.hbs`; a block is called `{{> steps}}`. What lies in
 * `stations/press/` takes the place of the template or block of that name, at this station alone.
 */
export function templateSet(
  templates: ReadonlyMap<string, string>,
  words: Words,
  tell: Tell,
  station?: string,
): Render {
  const engine = Handlebars.create();
  const texts = new Map([...templates].filter(([path]) => path.endsWith('.hbs') && !path.startsWith('stations/')));
  const names = new Set([...texts.keys()].map(nameOf));
  for (const [path, source] of ownOf(station, templates)) {
    const name = nameOf(path.replace(/^stations\/[^/]+\//, ''));
    if (!names.has(name))
      tell(broken(whole(path, source), `There is no template or block "${name}". ${offer(name, names)}`));
    for (const general of [...texts.keys()].filter((other) => nameOf(other) === name)) texts.delete(general);
    texts.set(path, source);
  }
  addHelpers(engine, words, tell);
  for (const [path, source] of texts) {
    const program = parsed(path, source, tell);
    const mistakes = program ? watched(program, { file: path, source, helpers: HELPERS, partials: names }) : [];
    for (const { start, end, what } of mistakes) tell(broken({ file: templateFile(path), start, end }, what));
    if (program && mistakes.length === 0) engine.registerPartial(nameOf(path), compiled(engine, program));
  }
  return (name, view) => render(engine, { name, view, names }, tell);
}

function compiled(engine: typeof Handlebars, program: hbs.AST.Program): Handlebars.TemplateDelegate {
  return engine.compile(program, { knownHelpersOnly: true, knownHelpers: { ask: true, show: true, say: true } });
}

interface Rendering {
  readonly name: string;
  readonly view: object;
  /** Of all templates, sound or broken. */
  readonly names: ReadonlySet<string>;
}

function render(engine: typeof Handlebars, { name, view, names }: Rendering, tell: Tell): string {
  const template = engine.partials[name] as Handlebars.TemplateDelegate | undefined;
  const place = { file: templateFile(`${name}.hbs`), start: 0, end: 0 };
  if (!template) {
    if (!names.has(name)) tell(broken(place, `There is no template "${name}".`));
    return '';
  }
  try {
    return template(view, { allowProtoPropertiesByDefault: false, allowProtoMethodsByDefault: false });
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    // A block that is there but broken was told where it is broken.
    const block = /^The partial (\S+) could not be found$/.exec(message)?.[1];
    if (block === undefined || !names.has(block)) tell(broken(place, `The template cannot be filled: ${message}`));
    return '';
  }
}

/** The engine names the line of a mistake; the whole line is marked. */
function parsed(path: string, source: string, tell: Tell): hbs.AST.Program | undefined {
  try {
    return Handlebars.parse(source);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const line = Number(/line (\d+)/.exec(message)?.[1] ?? 1);
    const lines = source.split('\n');
    const start = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0);
    const end = start + (lines[line - 1]?.length ?? 0);
    tell(
      broken({ file: templateFile(path), start, end }, `It cannot be read: ${message.split('\n').at(-1) ?? message}`),
    );
    return undefined;
  }
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

/** `blocks/steps.hbs` is called by its bare name; so is what stands in its place at a station. */
function nameOf(path: string): string {
  return path.replace(/^(?:stations\/[^/]+\/)?(?:blocks\/)?/, '').replace(/\.hbs$/, '');
}

/** Templates of a station's own. */
export const ownOf = (
  station: string | undefined,
  templates: ReadonlyMap<string, string>,
): readonly [string, string][] =>
  station === undefined ? [] : [...templates].filter(([path]) => path.startsWith(`stations/${station}/`));

/** Folders of stations that there are not: what lies in them would be passed over. */
export function strayTemplates(
  templates: ReadonlyMap<string, string>,
  stations: readonly string[],
): readonly Finding[] {
  return [...templates].flatMap(([path, source]) => {
    const station = /^stations\/([^/]+)\//.exec(path)?.[1];
    if (station === undefined || stations.includes(station)) return [];
    return [broken(whole(path, source), `There is no station "${station}". ${offer(station, stations)}`)];
  });
}

const whole = (path: string, source: string): Place => ({
  file: templateFile(path),
  start: 0,
  end: source.indexOf('\n'),
});
