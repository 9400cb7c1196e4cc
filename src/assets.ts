/** Templates, words, style and fonts: a workspace's own files before those that come with the program. */
import { textCode } from './cards/code.ts';
import type { Finding } from './findings/finding.ts';
import { offer } from './findings/nearest.ts';
import type { Host } from './host/host.ts';
import type { PlantTexts } from './plant-texts.ts';
import type { PrintAssets, PrintFont } from './print/input.ts';
import { safetyTexts } from './print/safety-texts.ts';
import { loadWords } from './print/words.ts';
import type { Words } from './print/words.ts';

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

/** What the plant says of languages; without it, English alone. */
export type Tongues = Pick<PlantTexts, 'languages' | 'languagesAt' | 'asked' | 'names' | 'reviews'>;

const ENGLISH: Tongues = {
  languages: ['en'],
  languagesAt: new Map(),
  asked: new Map(),
  names: new Map(),
  reviews: new Map(),
};

export function loadAssets(host: Host, tongues: Tongues = ENGLISH): LoadedAssets {
  const texts = new Map<string, string>();
  for (const path of new Set([...host.shippedList('templates'), ...host.list('templates')])) {
    const bytes = host.read(path) ?? host.shipped(path);
    if (bytes) texts.set(path, new TextDecoder().decode(bytes));
  }
  const findings: Finding[] = [];
  const wanted = [...new Set([...tongues.languages, ...[...tongues.languagesAt.values()].flat()])];
  const there = wanted.filter((language) => texts.has(fileOf(language)));
  for (const language of wanted) if (!there.includes(language)) findings.push(noWords(language, tongues, texts));
  const [words, ...others] = (there.length > 0 ? there : ['en']).map((language) =>
    wordsOf(language, tongues, texts, findings),
  );
  const templates = new Map([...texts].map(([path, text]) => [path.slice('templates/'.length), text]));
  return {
    assets: { templates, words: words!, others, css: texts.get('templates/print.css') ?? '', fonts: fonts(host) },
    findings,
    texts,
  };
}

const fileOf = (language: string): string => `templates/words/${language}.yaml`;

/** Languages there are words for. */
export const languagesThere = (host: Host): readonly string[] =>
  [...new Set([...host.shippedList('templates/words'), ...host.list('templates/words')])].flatMap(
    (path) => /\/([a-z]{2,3})\.yaml$/.exec(path)?.[1] ?? [],
  );

function wordsOf(
  language: string,
  { names, reviews, asked }: Tongues,
  texts: ReadonlyMap<string, string>,
  findings: Finding[],
): Words {
  const load = (of: string) => loadWords(fileOf(of), new TextEncoder().encode(texts.get(fileOf(of)) ?? ''));
  const { words, findings: found } = load(language);
  findings.push(...found);
  const { translationOf } = words;
  const original =
    translationOf === undefined || !texts.has(fileOf(translationOf)) ? undefined : load(translationOf).words;
  const code = textCode(safetyTexts(words));
  const review = reviews.get(language);
  const reviewed = words.reviewed || review?.texts === code;
  const place = asked.get(language);
  if (!reviewed && place)
    findings.push({
      id: 'translation-not-reviewed',
      severity: 'caution',
      place,
      what: review
        ? `The texts of safety in "${language}" are not those that ${review.name} went over on ${review.date}.`
        : `Nobody is named who went over the texts of safety in "${language}".`,
      why: 'A warning that says something else than the original hurts whoever reads it. The cards say that it is not reviewed.',
      mend: `Let somebody who knows the work and both languages go over signals and cautions in ${fileOf(language)}; then write into the plant, under "reviewed", ${language}: { name: …, date: …, texts: ${code} }.`,
      notes: [],
      about: [],
    });
  return { ...words, reviewed, names: names.get(language) ?? words.names, ...(original ? { original } : {}) };
}

function noWords(language: string, { asked }: Tongues, texts: ReadonlyMap<string, string>): Finding {
  const there = [...texts.keys()].flatMap((path) => /^templates\/words\/([a-z]+)\.yaml$/.exec(path)?.[1] ?? []);
  const place = asked.get(language);
  return {
    id: 'language-without-words',
    severity: 'error',
    place: place ?? { file: fileOf(language), start: 0, end: 0 },
    what: `There are no words for the language "${language}": ${fileOf(language)} is not there.`,
    why: 'Its cards would be blank.',
    mend: `Write that file (copy the one of another language), or take a language that is there. ${offer(language, there)}`,
    notes: [],
    about: [],
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
