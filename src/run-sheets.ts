/**
 * Tomorrow’s run on paper: what joins its list, the ledger, the plant and print.
 *
 *     orders.csv ─→ run/ ─→ run sheet · labels · a traveller a body · a first-piece report a set-up
 *                           · a change notice a model that changed since it last ran
 */
import { firstPieceOf } from './cards/first-piece.ts';
import { stateOfRelease } from './comparing.ts';
import type { Compiled, Printed } from './compile.ts';
import { noticeOf } from './diff/notice.ts';
import { makeFacts } from './facts/facts.ts';
import type { Use } from './facts/facts.ts';
import { namesOf, present, row, wanted } from './facts/row.ts';
import type { PlantSpec } from './facts/spec.generated.ts';
import type { Finding } from './findings/finding.ts';
import { renderFinding } from './findings/render.ts';
import type { RenderedFinding } from './findings/render.ts';
import { printWith, travellerFor } from './forms.ts';
import type { Host } from './host/host.ts';
import { toldOf } from './notices.ts';
import { peopleIn } from './plant-texts.ts';
import { printChangeNotice } from './print/change-notice.ts';
import type { NoticeTold } from './print/change-notice.ts';
import { printFirstPieces } from './print/first-piece.ts';
import type { PostedReport } from './print/first-piece.ts';
import type { FormPosting } from './print/form-posting.ts';
import { printLabels } from './print/labels.ts';
import type { PrintOutput } from './print/print.ts';
import { printRunSheet } from './print/run-sheet.ts';
import type { RunTold, SinceTold } from './print/run-sheet.ts';
import { printTravellers } from './print/traveller.ts';
import type { PostedTraveller } from './print/traveller.ts';
import type { ForOrder } from './release/for-order.ts';
import { cardsForOrder } from './release/for-order.ts';
import type { Known } from './release/wall.ts';
import type { Released } from './releases.ts';
import { bodyNumbers } from './run/body-numbers.ts';
import type { FloorStation, RunFloor } from './run/floor.ts';
import { begunBefore, lastRan } from './run/last-ran.ts';
import type { LastRan } from './run/last-ran.ts';
import { readOrders } from './run/orders.ts';
import { runOf } from './run/run.ts';
import type { Run, RunLine } from './run/run.ts';
import { labelsTold, runTold } from './run/told.ts';

export interface RunMade {
  readonly run: Run;
  readonly refused: readonly RenderedFinding[];
  readonly told: RunTold;
  /** Of the models that changed since they last ran. */
  readonly notices: readonly { readonly name: string; readonly told: NoticeTold }[];
}

/** `checked`: the plant as it stands and the models there are, whether they have errors or not. */
export function makeRun(
  file: string,
  bytes: Uint8Array,
  { known, state, entries }: Released,
  { checked }: Pick<Compiled, 'checked'>,
  on: string,
): RunMade {
  const { plant } = checked.workspace;
  const list = readOrders(file, bytes);
  const run = runOf(
    list,
    { on, known, state, models: checked.models.map(({ id }) => id), people: peopleIn(plant) ?? [] },
    floorOf(plant),
  );
  const texts = new Map([[file, list.text]]);
  const refused = run.refused.map((finding) => renderFinding(finding, texts));
  const placeOf = (finding: Finding) => {
    const { line, excerpt } = refused[run.refused.indexOf(finding)]!;
    return { line, written: excerpt.split('\n')[0]!.trim() };
  };
  const since = lastRan(run.lines, entries, known, on).map(sinceLast);
  const begun = begunBefore(run.lines, entries);
  return {
    run,
    refused,
    told: runTold({
      list: file.split(/[/\\]/).at(-1)!,
      run,
      placeOf,
      begun,
      since: since.map(({ told }) => told),
      entries: entries.length,
    }),
    notices: since.flatMap(({ notice }) => notice ?? []),
  };
}

/** What a model was when it last ran against what it is now. */
function sinceLast({ now, before }: LastRan): {
  readonly told: SinceTold;
  readonly notice?: RunMade['notices'][number];
} {
  const { model, title, revision } = now.record;
  const own = { model: title, revision };
  if (!before) return { told: { ...own, stations: [] } };
  const was = { on: before.on, revision: before.of.record.revision };
  if (before.of === now) return { told: { ...own, was, stations: [] } };
  const side = ({ record }: Known) => ({ name: `${model}@${record.revision}`, models: [stateOfRelease(record)] });
  const [old, current] = [side(before.of), side(now)];
  const notice = noticeOf(old, current);
  const stations = notice.stations.map(({ name }) => name.text);
  const name = `changes/${model}-${was.revision}-${revision}`;
  return {
    told: { ...own, was, stations, notice: name },
    notice: { name, told: toldOf(notice, old, current) },
  };
}

export const printRun = (
  host: Host,
  compiled: Compiled,
  released: Released,
  { run, told, notices }: RunMade,
): Printed =>
  printWith(host, compiled, run.on, (of, assets) => {
    const cards = cardsOfRun(run, released);
    const travellers = run.lines.flatMap((line) => travellersOf(line, cards.get(line.by.of)!, compiled));
    const printed = together([
      printRunSheet(told, of, assets),
      printLabels(labelsTold(run), of, assets),
      printTravellers(travellers, of, assets),
      printFirstPieces(firstPiecesOf(run, cards, compiled), of, assets, 'first-pieces/'),
      ...notices.map((notice) => printChangeNotice(notice.told, notice.name, of, assets)),
    ]);
    const pile = { name: 'travellers.pdf', title: 'Travellers', language: assets.words.language };
    return { ...printed, piles: [{ ...pile, of: travellers.map(({ name }) => `${name}.pdf`) }] };
  });

type CardsOfRun = ReadonlyMap<Known, ForOrder>;

/** By release, with what is said of each card on the day. */
function cardsOfRun({ lines, on }: Run, released: Released): CardsOfRun {
  const cards = new Map<Known, ForOrder>();
  for (const { order, by } of lines)
    if (!cards.has(by.of)) cards.set(by.of, cardsForOrder(order.model, order.number, on, released)!);
  return cards;
}

const postingOf = ({ revision, said }: ForOrder): FormPosting => ({ revision, status: 'released', said });

/** One for each body, by the cards of its own release. */
function travellersOf(line: RunLine, made: ForOrder, compiled: Compiled): readonly PostedTraveller[] {
  const { number, hand, finish, quantity } = line.order;
  // The grade was held against its band already, and the lead may have let another through.
  const order = { number, hand, finish, quantity };
  const one = travellerFor({ cards: made.cards, posting: postingOf(made) }, compiled, order);
  if ('refused' in one) throw new Error(`order ${number} was let in, and its traveller refuses: ${one.refused}`);
  const { pair, ...traveller } = { ...one.traveller, grade: gradeText(line) };
  return bodyNumbers(line.order).map((body) => ({
    ...one,
    name: `travellers/${body}`,
    traveller: {
      ...traveller,
      ...(pair === undefined ? {} : { pair: body }),
      ...(quantity === 1 ? {} : { body }),
    },
  }));
}

/** Of each release and hand, at every station that is set up for it. */
function firstPiecesOf({ lines }: Run, cards: CardsOfRun, { checked }: Compiled): readonly PostedReport[] {
  const kinds = new Map(lines.map(({ by }) => [by, new Set<string>()]));
  for (const { by, setUp } of lines) for (const { station } of setUp) kinds.get(by)!.add(station);
  return [...kinds].flatMap(([by, stations]) => {
    const made = cards.get(by.of)!;
    return made.cards
      .filter(({ card: { key } }) => key.hand === by.hand && stations.has(key.station))
      .flatMap((card) => firstPieceOf(card, checked.workspace.plant) ?? [])
      .map((report) => ({ report, posting: postingOf(made) }));
  });
}

const gradeText = ({ order, upgradedBy }: RunLine): string =>
  [order.grade.join(', '), ...(upgradedBy === undefined ? [] : [`(${upgradedBy})`])].join(' ').trim();

/** Of one shell: the same style and fonts. */
const together = (all: readonly PrintOutput[]): PrintOutput => ({
  ...all[0]!,
  files: new Map(all.flatMap(({ files }) => [...files])),
  sheets: all.flatMap(({ sheets }) => sheets),
  findings: all.flatMap(({ findings }) => findings),
});

function floorOf(plant: PlantSpec): RunFloor {
  const facts = makeFacts([]);
  const or = <T>(read: (use: Use) => T, otherwise: T): T => {
    const reading = facts.read(read);
    return reading.ok ? reading.value : otherwise;
  };
  const minutes = (leaf: Parameters<Use>[0] | undefined) =>
    leaf === undefined ? undefined : or((use) => (use(leaf) as { readonly value: number }).value / 60, undefined);
  const rowOf = (id: string) => present(plant.stations?.[id]);
  const machineOf = (at: ReturnType<typeof rowOf>): Pick<FloorStation, 'machine'> => {
    const named = at?.machine;
    if (!named) return {};
    return or<Pick<FloorStation, 'machine'>>((use) => {
      const machine = use(named);
      return { machine: { id: machine, name: use(row(plant.machines, machine, 'plant.machines').title) } };
    }, {});
  };
  // Of the route alone: no body passes the stations that stand aside.
  const stations = or(
    (use) => wanted(plant.route, 'plant.route').map((station) => use(station)),
    namesOf(plant.stations),
  );
  return {
    stations: stations.map((id) => {
      const at = rowOf(id);
      return {
        id,
        name: at ? or((use) => use(at.title), id) : id,
        ...machineOf(at),
        perBody: minutes(present(at?.['per-body'])),
        changeover: minutes(present(at?.changeover)),
      };
    }),
    shift: minutes(present(present(plant.plant)?.shift)),
  };
}
