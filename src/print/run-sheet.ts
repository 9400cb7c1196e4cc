/** The run sheet: what the lead has in hand in the morning, from the list of orders to the signature. */
import { printForms, type Form, type FormsOf } from './forms.ts';
import type { PrintAssets } from './input.ts';
import { identifier, markup } from './markup.ts';
import { pageRule } from './page-rule.ts';
import type { PrintOutput } from './print.ts';
import { withUnit } from './say.ts';
import type { Speech } from './speech.ts';

/** A run as it is printed and shown: numbers as text with a point, names as written. */
export interface RunTold {
  /** YYYY-MM-DD. */
  readonly on: string;
  readonly list: string;
  readonly orders: string;
  readonly bodies: string;
  /** `written`: what stands in that line of the list. */
  readonly refused: readonly {
    readonly line: string;
    readonly written: string;
    readonly what: string;
    readonly mend: string;
  }[];
  readonly lines: readonly {
    readonly place: string;
    readonly order: string;
    readonly model: string;
    readonly revision: string;
    readonly hand: 'right' | 'left';
    readonly finish: string;
    readonly grade: readonly string[];
    readonly quantity: string;
    readonly due?: string;
    readonly shift?: string;
    readonly late?: string;
    readonly upgradedBy?: string;
    /** Day on which the ledger says it was begun before. */
    readonly begun?: string;
    readonly lots: readonly string[];
    readonly setUp: readonly string[];
  }[];
  readonly changeovers: { readonly count: string; readonly hours: string };
  readonly asListed: { readonly count: string; readonly hours: string };
  readonly picks: readonly {
    readonly part: 'cap' | 'back' | 'slab';
    readonly species: string;
    readonly stock: string;
    readonly grade: readonly { readonly scale: string; readonly steps: readonly string[] }[];
    readonly thickness: string;
    readonly size: string;
    readonly apiece: string;
    readonly bodies: string;
    readonly pieces: string;
    readonly boards: string;
    readonly boardFeet: string;
    readonly orders: readonly string[];
  }[];
  readonly timber: readonly { readonly species: string; readonly boardFeet: string }[];
  readonly ready: readonly {
    readonly name: string;
    readonly groups: readonly { readonly of: string; readonly titles: readonly string[] }[];
  }[];
  /** Entries of the ledger it was made by. */
  readonly entries: string;
  readonly hours: readonly {
    readonly name: string;
    readonly work?: string;
    readonly changeovers: string;
    readonly changing: string;
    readonly share?: string;
    /** Of a machine that several share. */
    readonly stations: readonly string[];
    /** More than the shift has. */
    readonly over: boolean;
    readonly most: boolean;
  }[];
  readonly shift?: string;
  readonly firstPieces: readonly { readonly name: string; readonly orders: readonly string[] }[];
  readonly since: readonly SinceTold[];
  readonly loads: readonly LoadTold[];
  /** Orders that the press cannot take. */
  readonly notPressed: readonly string[];
  readonly secondUse: readonly (PieceTold & {
    readonly serves: readonly (PieceTold & { readonly orders: readonly string[] })[];
  })[];
}

/** A model since it last ran: nothing of `was` where the ledger has no run of it. */
export interface SinceTold {
  readonly model: string;
  readonly revision: string;
  readonly was?: { readonly on: string; readonly revision: string };
  /** Stations whose card changed. */
  readonly stations: readonly string[];
  /** Path of its change notice, without its ending. */
  readonly notice?: string;
}

/** One load of the press: lengths in mm, force in kN, times in min, the rest in h. */
export interface LoadTold {
  readonly model: string;
  readonly left: boolean;
  readonly orders: readonly string[];
  readonly bodies: string;
  /** Bodies in each, side by side. */
  readonly stacks: readonly string[];
  readonly filling: string;
  readonly height: string;
  readonly daylight: string;
  readonly gauge: { readonly low: string; readonly high: string; readonly unit: string };
  readonly force: string;
  readonly centre: { readonly x: string; readonly y: string };
  readonly assembly: string;
  readonly open: string;
  readonly pressTime: string;
  readonly rest: string;
}

interface PieceTold {
  readonly model: string;
  readonly left: boolean;
  readonly part: 'cap' | 'back' | 'slab';
}

export function printRunSheet(run: RunTold, of: FormsOf, assets: PrintAssets): PrintOutput {
  const form: Form = {
    name: 'run-sheet',
    made: (talk, render) => ({
      title: `${talk.phrase('run-sheet.title')} · ${run.on}`,
      body: render('run-sheet', sheetView(run, of, talk)),
    }),
  };
  return printForms([form], of, assets);
}

function sheetView(run: RunTold, { plantName, ...foot }: FormsOf, talk: Speech) {
  const page = identifier('run-sheet', talk.language);
  const title = talk.phrase('run-sheet.title');
  const rule = { model: run.on, station: '', code: title, status: plantName, ...foot };
  const joined = (items: readonly string[]) => items.map((one) => talk.name(one)).join(`${talk.separator([])} `);
  const { changeovers, asListed } = run;
  return {
    page,
    pageRule: markup(`<style>${pageRule(page, rule, talk)}</style>`),
    plant: plantName,
    on: run.on,
    list: run.list,
    counted: talk.phrase('run-sheet.counted', { orders: run.orders, bodies: run.bodies }),
    refused: run.refused,
    refusedCount: run.refused.length === 0 ? null : String(run.refused.length),
    lines: run.lines.map(({ grade, setUp, lots, hand, finish, upgradedBy, due, shift, late, begun, ...line }) => ({
      ...line,
      due: due ?? null,
      shift: shift ?? null,
      left: hand === 'left' ? talk.phrase('hand.left') : null,
      finish: talk.name(finish),
      grade: grade.length > 0 ? joined(grade) : null,
      upgraded: upgradedBy === undefined ? null : talk.phrase('run-sheet.upgraded', { name: upgradedBy }),
      begun: begun === undefined ? null : talk.phrase('run-sheet.begun', { date: begun }),
      late: late === undefined ? null : talk.phrase('run-sheet.late', { shifts: late }),
      lots: lots.length > 0 ? talk.phrase('run-sheet.lots', { lots: lots.join(', ') }) : null,
      setUp: setUp.length > 0 ? talk.phrase('run-sheet.set-up', { stations: joined(setUp) }) : null,
    })),
    changeovers: talk.phrase('run-sheet.changeovers', {
      count: changeovers.count,
      hours: talk.decimal(changeovers.hours),
      listed: asListed.count,
      'listed-hours': talk.decimal(asListed.hours),
    }),
    picks: run.picks.map((pick) => ({
      ...pick,
      part: talk.phrase(`part.${pick.part}`),
      species: talk.name(pick.species),
      stock: talk.name(pick.stock),
      grade: pick.grade.map(({ scale, steps }) => `${talk.name(scale)}: ${joined(steps)}`),
      boardFeet: talk.decimal(pick.boardFeet),
      orders: pick.orders.join(' '),
    })),
    timber: run.timber.map(({ species, boardFeet }) => ({
      species: talk.name(species),
      boardFeet: talk.decimal(boardFeet),
    })),
    ready: run.ready.map(({ name, groups }) => ({
      name: talk.name(name),
      groups: groups.map(({ of: kind, titles }) => ({
        kind: talk.phrase(`run-sheet.${kind}`),
        titles: titles.map((one) => talk.name(one)),
      })),
    })),
    hours: run.hours.map(({ name, stations, work, changing, share, ...rest }) => ({
      ...rest,
      name: talk.name(name),
      work: work === undefined ? talk.phrase('run-sheet.no-time') : talk.decimal(work),
      changing: talk.decimal(changing),
      share: share ?? null,
      shared:
        stations.length > 0
          ? talk.phrase('run-sheet.shared', { stations: stations.map((one) => talk.name(one)).join(' + ') })
          : null,
    })),
    shift: run.shift === undefined ? null : talk.phrase('run-sheet.shift', { hours: talk.decimal(run.shift) }),
    firstPieces: run.firstPieces.map(({ name, orders }) => ({ name: talk.name(name), orders })),
    since: run.since.map((one) => sinceView(one, talk)),
    loads: run.loads.map((load, i) => loadView(load, i + 1, talk)),
    notPressed:
      run.notPressed.length > 0 ? talk.phrase('run-sheet.not-pressed', { orders: run.notPressed.join(' ') }) : null,
    printed: talk.phrase('run-sheet.printed', { entries: run.entries }),
    secondUse: run.secondUse.map(({ serves, ...piece }) => ({
      piece: pieceText(piece, talk),
      serves: serves.map((one) => ({ piece: pieceText(one, talk), orders: one.orders.join(' ') })),
    })),
  };
}

function sinceView({ model, revision, was, stations, notice }: SinceTold, talk: Speech) {
  const said = (): string => {
    if (!was) return talk.phrase('run-sheet.never-ran');
    if (was.revision === revision) return talk.phrase('run-sheet.as-it-ran', { date: was.on });
    const names = stations.map((one) => talk.name(one)).join(`${talk.separator([])} `);
    const last = { date: was.on, old: was.revision, stations: names };
    return talk.phrase(stations.length > 0 ? 'run-sheet.changed-since' : 'run-sheet.record-since', last);
  };
  return { model, revision, said: said(), notice: notice ?? null };
}

function loadView({ stacks, filling, gauge, centre, ...load }: LoadTold, n: number, talk: Speech) {
  const at = talk.phrase('run-sheet.centre', { x: talk.decimal(centre.x), y: talk.decimal(centre.y) });
  const boards = filling === '0' ? null : talk.phrase('run-sheet.filling', { boards: filling });
  return {
    number: String(n),
    model: load.model,
    left: load.left ? talk.phrase('hand.left') : null,
    orders: load.orders.join(', '),
    stacks: stacks.join(' + '),
    boards,
    centre: at,
    gauge: withUnit(`${talk.decimal(gauge.low)}–${talk.decimal(gauge.high)}`, gauge.unit),
    force: load.force,
    height: talk.phrase('run-sheet.height', { height: load.height, daylight: load.daylight }),
    glue: talk.phrase('run-sheet.glue', { takes: talk.decimal(load.assembly), open: talk.decimal(load.open) }),
    time: talk.phrase('run-sheet.press-time', { time: load.pressTime, rest: load.rest }),
  };
}

const pieceText = ({ model, left, part }: PieceTold, talk: Speech): string =>
  [model, talk.phrase(`part.${part}`), ...(left ? [talk.phrase('hand.left')] : [])].join(', ');
