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
import { flowOf } from './cards/desk.ts';
import { makeCards } from './cards/make.ts';
import type { Made } from './cards/make.ts';
import { makeSheets } from './cards/sheets.ts';
import type { CardChanges, MadeCard, Posting, StationSheet } from './cards/card.ts';
import { loadAssets } from './assets.ts';
import { sheetCode } from './cards/code.ts';
import { permitted, withoutPermitted } from './permits.ts';
import { languagesAt, textsOf, wished } from './plant-texts.ts';
import type { PrintWish } from './plant-texts.ts';
import { checkKinds } from './check/kinds.ts';
import { hang, runChecks } from './check/run.ts';
import { derive } from './derive/derive.ts';
import type { Facts } from './facts/facts.ts';
import { once } from './facts/once.ts';
import type { Subject } from './facts/subject.ts';
import type { Finding } from './findings/finding.ts';
import type { RenderedFinding } from './findings/render.ts';
import { inOrder, renderFinding } from './findings/render.ts';
import type { Host } from './host/host.ts';
import type { PrintInput } from './print/input.ts';
import { printAll } from './print/print.ts';
import type { Pile, PrintSheet } from './print/print.ts';
import { keyOfFinding, unique } from './findings/unique.ts';
import type { ModelSource } from './read/model.ts';
import { mistakeKinds } from './read/mistakes.ts';
import { readingsOf } from './read/readings.ts';
import { readWorkspace } from './read/read.ts';
import type { Workspace } from './read/read.ts';

/** One hand of a model with its facts. */
export interface Derived {
  readonly subject: Subject;
  readonly facts: Facts;
}

/**
 * A model after the checks: what is wrong with it, and its facts as far as they could be derived. It is checked when its
 * findings or its cards are first asked for: who asks for one model does not wait for a catalogue.
 */
export interface CheckedModel {
  readonly id: string;
  readonly file: string;
  readonly title: string;
  readonly revision: string;
  readonly hands: readonly Derived[];
  /** In route order, the right hand before the left; none of a model with an error. */
  readonly cards: readonly MadeCard[];
  readonly findings: readonly Finding[];
}

export interface Checked {
  readonly workspace: Workspace;
  readonly models: readonly CheckedModel[];
  /** Of the plant and of files as such. */
  readonly findings: readonly Finding[];
}

/** Steps one to three: read, derive, check, for the day `on`. */
export function checkAll(host: Host, on: string = host.today()): Checked {
  const workspace = readWorkspace(host, schemas(host));
  const derived = workspace.models.map((source) =>
    source.variants.map(({ hand, spec }) => deriveHand(workspace, spec, hand)),
  );
  const models = workspace.models.map((source, i) => checkModel(source, derived, i, workspace, on));
  return { workspace, models, findings: inOrder(hang(workspace.findings)) };
}

function deriveHand({ plant, readings, pictures }: Workspace, spec: Subject['spec'], hand: Subject['hand']): Derived {
  const subject = { spec, plant, hand, readings: readingsOf(readings, spec, hand), pictures };
  return { subject, facts: derive(subject) };
}

function checkModel(
  source: ModelSource,
  derived: readonly (readonly Derived[])[],
  index: number,
  workspace: Workspace,
  on: string,
): CheckedModel {
  const hands = derived[index]!;
  const named = (key: 'title' | 'revision', otherwise: string): string => {
    const reading = hands[0]?.facts.read((use) => use(hands[0]!.subject.spec[key]));
    return reading?.ok ? reading.value : otherwise;
  };
  const outcome = once(() => outcomeOf(source, derived.flat(), hands, workspace, on));
  const { id, file } = source;
  return {
    id,
    file,
    title: named('title', id),
    revision: named('revision', '?'),
    hands,
    get cards() {
      return outcome().cards;
    },
    get findings() {
      return outcome().findings;
    },
  };
}

function outcomeOf(
  { findings: read }: ModelSource,
  everyHand: readonly Derived[],
  hands: readonly Derived[],
  workspace: Workspace,
  on: string,
): Pick<CheckedModel, 'cards' | 'findings'> {
  const known = [...workspace.findings, ...read];
  const made = hands.map(({ subject, facts }): Made & { found: readonly Finding[] } => {
    const others = everyHand.map((one) => one.subject).filter((other) => other !== subject);
    const bench = { subject, facts, others, on, flow: flowOf(subject, facts), seen: [] };
    const found = runChecks(bench, ['spec', 'derived'], known);
    if ([...known, ...found].some(isError)) return { cards: [], seen: [], findings: [], found };
    const before = permitted(subject, facts, found, on);
    const cards = makeCards(subject, facts, before);
    const onCards = runChecks({ ...bench, seen: cards.seen }, ['card'], [...known, ...found]);
    // What is permitted of the cards themselves prints on them too.
    const after = permitted(subject, facts, onCards, on);
    const printed = after.length === 0 ? cards : makeCards(subject, facts, [...before, ...after]);
    return { ...printed, found: [...found, ...cards.findings, ...onCards] };
  });
  // What follows from a mistake of the plant is said with the plant, once.
  const ofPlant = new Set(workspace.findings.map(keyOfFinding));
  const all = unique([...workspace.findings, ...read, ...made.flatMap((one) => one.found)]);
  // Before they hang: under a caution that is permitted another would be let stand unseen.
  const standing = hands[0] ? withoutPermitted(hands[0], all, on) : all;
  const findings = inOrder(hang(standing).filter((finding) => !ofPlant.has(keyOfFinding(finding))));
  return { findings, cards: findings.some(isError) ? [] : byStation(made.map((one) => one.cards)) };
}

export const isError = (finding: Finding): boolean => finding.severity === 'error';

export interface Compiled {
  readonly checked: Checked;
  /** Models with their cards; an error of the plant stops all of them. */
  readonly models: readonly CheckedModel[];
  readonly sheets: readonly StationSheet[];
}

/** Step four: the cards of every model without an error, and the station sheets, as plain data. */
export function compileAll(host: Host, on: string = host.today()): Compiled {
  const checked = checkAll(host, on);
  const models = checked.findings.some(isError)
    ? checked.models.map((model) => ({ ...model, cards: [] }))
    : checked.models;
  const sheets = once(() =>
    makeSheets(
      checked.workspace.plant,
      models.filter(({ cards }) => cards.length > 0).flatMap(({ hands }) => hands),
    ),
  );
  return {
    checked,
    models,
    get sheets() {
      return sheets();
    },
  };
}

export interface Printed {
  /** The tree without paper, by path. */
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  /** What the printer makes paper of, and the document it prints it into. */
  readonly shell: string;
  readonly sheets: readonly PrintSheet[];
  readonly piles: readonly Pile[];
  readonly findings: readonly RenderedFinding[];
}

/**
 * Step five: HTML, SVG and JSON of everything, and the sheets for paper. `on` is the day it is made for, `changes` what became
 * of cards since the release in force, by their codes.
 */
export function printCompiled(
  host: Host,
  compiled: Compiled,
  on: string,
  wish: PrintWish = {},
  changes: ReadonlyMap<string, CardChanges> = new Map(),
): Printed {
  const { checked } = compiled;
  const general = wished(textsOf(checked.workspace.plant), wish);
  const { assets, findings: inWords, texts: own } = loadAssets(host, general);
  const texts = new Map([...checked.workspace.texts, ...own]);
  const shown = (findings: readonly Finding[]) => findings.map((finding) => renderFinding(finding, texts));
  const posting = (revision: string, code: string): Posting => {
    const changed = changes.get(code);
    return { revision, status: 'draft', date: on, code, ...(changed ? { changes: changed } : {}) };
  };
  const output = printAll(
    {
      models: compiled.models.map(({ id, title, revision, cards, findings }) => ({
        id,
        title,
        revision,
        cards: cards.map(({ card, code }) => ({ card, posting: posting(revision, code) })),
        findings: shown(findings),
      })),
      sheets: compiled.sheets.map((sheet) => ({ sheet, posting: posting('', sheetCode(sheet)) })),
      plantName: general.name,
      paper: general.paper,
      languagesAt: languagesAt(general),
      date: on,
      route: general.route,
      kinds: [...mistakeKinds, ...checkKinds],
      pictures: shownPictures(checked.workspace),
      findings: shown(checked.findings),
    },
    assets,
  );
  const { files, shell, sheets, piles } = output;
  return { files, shell, sheets, piles, findings: shown(inOrder([...inWords, ...output.findings])) };
}

/** Files that cards show, by their SHA-256. */
export const shownPictures = ({ pictures }: Workspace): PrintInput['pictures'] =>
  new Map(
    [...pictures.files.values()].flatMap((file) =>
      file !== 'outside' && file.form.is === 'picture'
        ? [[file.sha256, { bytes: file.bytes, ...file.form }] as const]
        : [],
    ),
  );

/** Both hands of a station beside each other, stations in route order: every hand passes the same ones. */
const byStation = (hands: readonly (readonly MadeCard[])[]): MadeCard[] =>
  (hands[0] ?? []).flatMap((_, i) => hands.flatMap((cards) => cards[i] ?? []));

/** The published schemas, as they come with the program: a workspace's own copies are for editors. */
const schemas = (host: Host) => ({
  model: host.shipped('models/schemas/model.schema.json')!,
  plant: host.shipped('models/schemas/plant.schema.json')!,
});
