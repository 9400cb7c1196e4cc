/** Templates, words, style and fonts: a workspace's own files before those that come with the program. */
import type { Finding } from './findings/finding.ts';
import type { Host } from './host/host.ts';
import type { PrintAssets, PrintFont } from './print/input.ts';
import { loadWords } from './print/words.ts';

const FAMILIES = [
  { family: 'Atkinson Hyperlegible Next', name: 'atkinson-hyperlegible-next' },
  { family: 'Atkinson Hyperlegible Mono', name: 'atkinson-hyperlegible-mono' },
];
const WEIGHTS = [400, 700];

export interface LoadedAssets {
  readonly assets: PrintAssets;
  readonly findings: readonly Finding[];
  /** Text of the files a user may edit, for rendering places. */
  readonly texts: ReadonlyMap<string, string>;
}

export function loadAssets(host: Host, language = 'en'): LoadedAssets {
  const texts = new Map<string, string>();
  for (const path of new Set([...host.shippedList('templates'), ...host.list('templates')])) {
    const bytes = host.read(path) ?? host.shipped(path);
    if (bytes) texts.set(path, new TextDecoder().decode(bytes));
  }
  const file = `templates/words/${language}.yaml`;
  const { words, findings } = loadWords(file, new TextEncoder().encode(texts.get(file) ?? ''));
  const templates = new Map([...texts].map(([path, text]) => [path.slice('templates/'.length), text]));
  return {
    assets: { templates, words, css: texts.get('templates/print.css') ?? '', fonts: fonts(host) },
    findings,
    texts,
  };
}

function fonts(host: Host): PrintFont[] {
  return FAMILIES.flatMap(({ family, name }) =>
    WEIGHTS.map((weight) => {
      const file = `${name}-latin-${weight}-normal.woff2`;
      const bytes = host.shipped(`npm:@fontsource/${name}/files/${file}`);
      if (!bytes) throw new Error(`the font ${file} is missing: run npm ci`);
      return { family, weight, file, bytes };
    }),
  );
}
