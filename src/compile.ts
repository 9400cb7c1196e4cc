/**
 * The map of the program.
 *
 *   models/*.yaml ─┐
 *   models/plant/ ─┴─ read ─→ derive ─→ check ─→ cards ─→ print ─→ out/
 *                      │        │         └ findings (an error stops this model's cards)
 *                      places   └ facts (each knows its inputs)
 *
 * Each phase is a folder; none imports another; this file joins them.
 */
import { makeCards, makeSheets } from './cards/make.ts';
import type { MadeCard, StationSheet } from './cards/card.ts';
import { loadAssets } from './assets.ts';
import type { Posting } from './cards/card.ts';
import { sheetCode } from './cards/code.ts';
import { runChecks } from './check/run.ts';
import { derive } from './derive/derive.ts';
import type { Facts, Use } from './facts/facts.ts';
import { makeFacts } from './facts/facts.ts';
import { wanted } from './facts/row.ts';
import type { PlantSpec } from './facts/spec.generated.ts';
import type { Subject } from './facts/subject.ts';
import type { Finding } from './findings/finding.ts';
import type { RenderedFinding } from './findings/render.ts';
import { inOrder, renderFinding } from './findings/render.ts';
import type { Host } from './host/host.ts';
import { printAll } from './print/print.ts';
import type { PrintSheet } from './print/print.ts';
import { unique } from './findings/unique.ts';
import type { ModelSource } from './read/model.ts';
import { readWorkspace } from './read/read.ts';
import type { Workspace } from './read/read.ts';

/** One hand of a model with its facts. */
export interface Derived {
  readonly subject: Subject;
  readonly facts: Facts;
}

/** A model after the checks: what is wrong with it, and its facts as far as they could be derived. */
export interface CheckedModel {
  readonly id: string;
  readonly file: string;
  readonly title: string;
  readonly revision: string;
  readonly hands: readonly Derived[];
  readonly findings: readonly Finding[];
}

/** Proof that a model has no errors: cards are made from nothing else. */
export interface SoundModel extends CheckedModel {
  readonly sound: true;
}

export interface Checked {
  readonly workspace: Workspace;
  readonly models: readonly CheckedModel[];
  /** Of the plant and of files as such. */
  readonly findings: readonly Finding[];
}

/** Steps one to three: read, derive, check. */
export function checkAll(host: Host): Checked {
  const workspace = readWorkspace(host, schemas(host));
  const models = workspace.models.map((source) => checkModel(source, workspace));
  return { workspace, models, findings: inOrder(workspace.findings) };
}

function checkModel(source: ModelSource, workspace: Workspace): CheckedModel {
  const known = [...workspace.findings, ...source.findings];
  const hands = source.variants.map(({ hand, spec }): Derived => {
    const subject = { spec, plant: workspace.plant, hand };
    return { subject, facts: derive(subject) };
  });
  const checked = hands.flatMap(({ subject, facts }) => runChecks(subject, facts, known));
  const { id, file } = source;
  const named = (key: 'title' | 'revision', otherwise: string): string => {
    const reading = hands[0]?.facts.read((use) => use(hands[0]!.subject.spec[key]));
    return reading?.ok ? reading.value : otherwise;
  };
  return {
    id,
    file,
    title: named('title', id),
    revision: named('revision', '?'),
    hands,
    findings: inOrder(unique([...source.findings, ...checked])),
  };
}

export const isError = (finding: Finding): boolean => finding.severity === 'error';

/** The model as sound, if neither it nor the plant has an error. */
export function sound(model: CheckedModel, plant: readonly Finding[]): SoundModel | undefined {
  return model.findings.some(isError) || plant.some(isError) ? undefined : { ...model, sound: true };
}

export interface CardsOfModel {
  readonly model: CheckedModel;
  /** In route order, the right hand before the left; none of a model with errors. */
  readonly cards: readonly MadeCard[];
  /** Its own findings and those of making its cards. */
  readonly findings: readonly Finding[];
}

export interface Compiled {
  readonly checked: Checked;
  readonly models: readonly CardsOfModel[];
  readonly sheets: readonly StationSheet[];
}

/** Step four: the cards of every sound model, as plain data. */
export function compileAll(host: Host): Compiled {
  const checked = checkAll(host);
  const models = checked.models.map((model): CardsOfModel => {
    const good = sound(model, checked.findings);
    if (!good) return { model, cards: [], findings: model.findings };
    const made = good.hands.map(({ subject, facts }) => makeCards(subject, facts));
    const findings = inOrder(unique([...model.findings, ...made.flatMap((one) => one.findings)]));
    return { model, cards: findings.some(isError) ? [] : byStation(made.map((one) => one.cards)), findings };
  });
  const printed = models.filter(({ cards }) => cards.length > 0).flatMap(({ model }) => model.hands);
  return { checked, models, sheets: makeSheets(checked.workspace.plant, printed) };
}

export interface Printed {
  /** The tree without paper, by path. */
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  /** What the printer makes paper of, and the document it prints it into. */
  readonly shell: string;
  readonly sheets: readonly PrintSheet[];
  readonly findings: readonly RenderedFinding[];
}

/** Step five: HTML, SVG and JSON of everything, and the sheets for paper. `on` is the day it is made for. */
export function printCompiled(host: Host, compiled: Compiled, on: string): Printed {
  const { assets, findings: inWords, texts: own } = loadAssets(host);
  const { checked } = compiled;
  const texts = new Map([...checked.workspace.texts, ...own]);
  const shown = (findings: readonly Finding[]) => findings.map((finding) => renderFinding(finding, texts));
  const { plant } = checked.workspace;
  const general = textsOf(plant);
  const posting = (revision: string, code: string): Posting => ({ revision, status: 'draft', date: on, code });
  const output = printAll(
    {
      models: compiled.models.map(({ model, cards, findings }) => ({
        id: model.id,
        title: model.title,
        revision: model.revision,
        cards: cards.map(({ card, code }) => ({ card, posting: posting(model.revision, code) })),
        findings: shown(findings),
      })),
      sheets: compiled.sheets.map((sheet) => ({ sheet, posting: posting('', sheetCode(sheet)) })),
      plantName: general.name,
      paper: general.paper,
      date: on,
      route: general.route,
      findings: shown(checked.findings),
    },
    assets,
  );
  const { files, shell, sheets } = output;
  return { files, shell, sheets, findings: shown(inOrder([...inWords, ...output.findings])) };
}

/** Both hands of a station beside each other, stations in route order: every hand passes the same ones. */
const byStation = (hands: readonly (readonly MadeCard[])[]): MadeCard[] =>
  (hands[0] ?? []).flatMap((_, i) => hands.flatMap((cards) => cards[i] ?? []));

/** What printing needs of the plant itself; a plant with errors still gets a page that says so. */
function textsOf(plant: PlantSpec): { name: string; paper: 'A4' | 'Letter'; route: readonly string[] } {
  const facts = makeFacts([]);
  const or = <T>(reader: (use: Use) => T, otherwise: T): T => {
    const reading = facts.read(reader);
    return reading.ok ? reading.value : otherwise;
  };
  return {
    name: or((use) => use(wanted(plant.plant, 'plant.plant').name), 'Platen'),
    paper: or((use) => use(wanted(plant.plant, 'plant.plant').paper), 'A4'),
    route: or((use) => wanted(plant.route, 'plant.route').map((station) => use(station)), []),
  };
}

/** The published schemas, as they come with the program: a workspace's own copies are for editors. */
const schemas = (host: Host) => ({
  model: host.shipped('models/schemas/model.schema.json')!,
  plant: host.shipped('models/schemas/plant.schema.json')!,
});
