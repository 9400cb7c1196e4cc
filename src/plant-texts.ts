/** What printing needs of the plant itself: its name and paper, the order of its stations, the languages people read. */
import { makeFacts } from './facts/facts.ts';
import type { Use } from './facts/facts.ts';
import type { Leaf } from './facts/leaf.ts';
import { namesOf, present, wanted } from './facts/row.ts';
import type { PlantSpec } from './facts/spec.generated.ts';
import type { Place } from './findings/finding.ts';

export interface Review {
  readonly name: string;
  readonly date: string;
  /** Code of the texts that were gone over. */
  readonly texts: string;
}

export interface PlantTexts {
  readonly name: string;
  readonly paper: 'A4' | 'Letter';
  readonly route: readonly string[];
  /** The main one first. */
  readonly languages: readonly string[];
  /** Languages of the stations that have their own. */
  readonly languagesAt: ReadonlyMap<string, readonly string[]>;
  /** Where each language is first asked for. */
  readonly asked: ReadonlyMap<string, Place>;
  /** By language: from a name as written to what it is called. */
  readonly names: ReadonlyMap<string, ReadonlyMap<string, string>>;
  readonly reviews: ReadonlyMap<string, Review>;
}

/** What may be asked of a print, whatever the plant says. */
export interface PrintWish {
  readonly paper?: 'A4' | 'Letter';
  readonly languages?: readonly string[];
}

export const wished = (texts: PlantTexts, { paper, languages }: PrintWish): PlantTexts => ({
  ...texts,
  paper: paper ?? texts.paper,
  ...(languages === undefined ? {} : { languages, languagesAt: new Map() }),
});

/** Names of the plant that may sign and let through; undefined where it lists none. */
export const peopleIn = (plant: PlantSpec): readonly string[] | undefined =>
  present(present(plant.plant)?.people)?.map(({ text }) => text);

/** A plant with errors still gets a page that says so. */
export function textsOf(plant: PlantSpec): PlantTexts {
  const facts = makeFacts([]);
  const or = <T>(reader: (use: Use) => T, otherwise: T): T => {
    const reading = facts.read(reader);
    return reading.ok ? reading.value : otherwise;
  };
  const general = present(plant.plant);
  const listed = (leaves: readonly Leaf<string>[] | undefined) =>
    (leaves ?? []).flatMap((leaf) => or((use): readonly string[] => [use(leaf)], []));
  const own = listed(present(general?.languages));
  const atStations = namesOf(plant.stations).map((id) => ({ id, leaves: present(plant.stations?.[id]?.languages) }));
  // Stations that no body passes on its way come after those it does.
  const withAside = (route: readonly string[]) => [...new Set([...route, ...namesOf(plant.stations)])];
  return {
    name: or((use) => use(wanted(plant.plant, 'plant.plant').name), 'Platen'),
    paper: or((use) => use(wanted(plant.plant, 'plant.plant').paper), 'A4'),
    route: withAside(or((use) => wanted(plant.route, 'plant.route').map((station) => use(station)), [])),
    languages: own.length > 0 ? own : ['en'],
    languagesAt: new Map(
      atStations.flatMap(({ id, leaves }) => (listed(leaves).length > 0 ? [[id, listed(leaves)] as const] : [])),
    ),
    asked: new Map(
      [...atStations.flatMap(({ leaves }) => leaves ?? []), ...(present(general?.languages) ?? [])].flatMap((leaf) =>
        'place' in leaf.writing ? [[leaf.text, leaf.writing.place] as const] : [],
      ),
    ),
    names: byLanguage(
      plant.names,
      (rows) =>
        new Map(
          rows.flatMap(({ name, called }) => or((use): readonly [string, string][] => [[use(name), use(called)]], [])),
        ),
    ),
    reviews: byLanguage(general?.reviewed, ({ name, date, texts }) =>
      or((use): Review => ({ name: use(name), date: use(date), texts: use(texts) }), { name: '', date: '', texts: '' }),
    ),
  };
}

/** Languages of the cards of a station. */
export const languagesAt =
  ({ languages, languagesAt: own }: PlantTexts) =>
  (station: string): readonly string[] =>
    own.get(station) ?? languages;

function byLanguage<T, U>(table: { readonly [language: string]: T } | undefined, make: (of: T) => U): Map<string, U> {
  return new Map(
    namesOf(table).flatMap((language) => {
      const of = present(table![language]);
      return of === undefined ? [] : [[language, make(of)] as const];
    }),
  );
}
