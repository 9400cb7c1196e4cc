/** Change notices told: on paper, on a screen, as data. What joins `diff/` and print. */
import { loadAssets } from './assets.ts';
import type { Checked, Printed } from './compile.ts';
import type { Change } from './diff/change.ts';
import { shortened } from './diff/given.ts';
import type { GivenChange } from './diff/given.ts';
import type { CardNotice } from './diff/hand.ts';
import type { Notice, Side } from './diff/notice.ts';
import { canonical } from './cards/code.ts';
import { toldOnce } from './diff/once.ts';
import { overlay } from './diff/overlay.ts';
import { printWith } from './forms.ts';
import type { Host } from './host/host.ts';
import { textsOf, wished } from './plant-texts.ts';
import type { PrintWish } from './plant-texts.ts';
import { printChangeNotice } from './print/change-notice.ts';
import type { CardTold, GivenTold, NoticeTold } from './print/change-notice.ts';
import { changeText } from './print/change-text.ts';
import { speech } from './print/speech.ts';
import type { Speech } from './print/speech.ts';

/** As it is printed and shown: sentences, and drawings laid over each other. */
export function toldOf(notice: Notice, before: Side, after: Side): NoticeTold {
  const titles = new Map(notice.models.map(({ id, title }) => [id, title]));
  const handed = new Set([...before.models, ...after.models].filter(({ facts }) => facts.size > 1).map(({ id }) => id));
  const at = (side: Side, id: string, fact: string) => side.models.find((model) => model.id === id)?.where?.(fact);
  const given = (id: string, changes: readonly GivenChange[]) =>
    changes.map((change): GivenTold => {
      const [oldAt, newAt] = [at(before, id, change.because[0]!), at(after, id, change.because[0]!)];
      const { old, new: now } = change;
      return {
        ...change,
        ...(old === undefined ? {} : { old: shortened(old) }),
        ...(now === undefined ? {} : { new: shortened(now) }),
        ...(oldAt === undefined ? {} : { oldAt }),
        ...(newAt === undefined ? {} : { newAt }),
      };
    });
  const anyModel = after.models[0]?.id ?? '';
  return {
    old: notice.old,
    new: notice.new,
    models: notice.models,
    given: [
      ...notice.models.flatMap((model) =>
        model.given.length > 0 ? [{ of: model.title, changes: given(model.id, model.given) }] : [],
      ),
      ...(notice.plant.length > 0 ? [{ of: undefined, changes: given(anyModel, notice.plant) }] : []),
    ],
    stations: notice.stations.map(({ name, cards, untouched }) => ({
      name: name.text,
      cards: cardsTold(cards, handed),
      untouched: [...new Set(untouched.map(({ title }) => title))],
    })),
    untouched: notice.untouched.map(({ name }) => name.text),
    elsewhere: notice.models.reduce((sum, { elsewhere }) => sum + elsewhere.length, 0),
    underWay: notice.models.flatMap(({ id, underWay }) =>
      alike(underWay, ({ rows }) => rows).map(([{ hand, rows }, ...more]) => ({
        title: titles.get(id)!,
        hands: handed.has(id) ? [hand, ...more.map((one) => one.hand)] : [],
        before: rows[0]!.past.text,
        rows: alike(rows, ({ lines }) => lines).map((group) => ({
          past: { kind: 'series', items: group.map(({ past }) => past) } as const,
          lines: group[0].lines,
        })),
      })),
    ),
  };
}

/** Hands that are told the same are told it once. */
const cardsTold = (cards: readonly CardNotice[], handed: ReadonlySet<string>): readonly CardTold[] =>
  alike(cards, ({ model, is, changes }) => [model, is, changes.map(({ line, also }) => [line, also])]).map((group) => {
    const { title, model, changes, drawings } = group[0];
    return {
      title,
      hands: handed.has(model) ? group.map(({ hand }) => hand) : [],
      codes: group.map(({ old, new: now }) => ({
        ...(old === undefined ? {} : { old }),
        ...(now === undefined ? {} : { new: now }),
      })),
      changes: toldOnce(changes),
      overlays: drawings.map(({ old, new: now }) => overlay(old, now)),
    };
  });

/** In groups of those that say the same, in the order of their first. */
function alike<T>(all: readonly T[], said: (one: T) => unknown): readonly (readonly [T, ...T[]])[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const one of all) {
    const key = canonical(said(one));
    const met = groups.get(key);
    if (met) met.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()];
}

/** The notice as a sheet: one page of its own with all it needs, and what paper is printed from. */
export function printNotice(host: Host, checked: Checked, told: NoticeTold, on: string, wish: PrintWish = {}): Printed {
  return printWith(host, { checked }, on, (of, assets) => printChangeNotice(told, 'change-notice', of, assets), wish);
}

/** As lines for a screen, in the main language of the plant. */
export const noticeText = (host: Host, checked: Checked, told: NoticeTold, wish: PrintWish = {}): string =>
  changeText(told, talkOf(host, checked, wish));

function talkOf(host: Host, checked: Checked, wish: PrintWish): Speech {
  const { assets } = loadAssets(host, wished(textsOf(checked.workspace.plant), wish));
  return speech(assets.words, () => undefined);
}

/** As plain data, each change with its sentence. Its shape is a contract: fields are added, never renamed. */
export function noticeJson(host: Host, checked: Checked, notice: Notice, wish: PrintWish = {}): unknown {
  const talk = talkOf(host, checked, wish);
  const change = ({ line, also, ...rest }: Change) => ({
    ...rest,
    text: talk.plain(line),
    also: also.map((one) => talk.plain(one)),
  });
  return {
    old: notice.old,
    new: notice.new,
    plant: notice.plant.map(change),
    models: notice.models.map(({ given, places, elsewhere, underWay, ...model }) => ({
      ...model,
      given: given.map(change),
      places: places.map(change),
      elsewhere: elsewhere.map(({ id, old, new: now }) => ({ id, old: old?.text ?? null, new: now?.text ?? null })),
      underWay: underWay.map(({ hand, rows }) => ({
        hand,
        rows: rows.map(({ station, lines }) => ({ station, says: lines.map((line) => talk.plain(line)) })),
      })),
    })),
    stations: notice.stations.map(({ id, name, cards, untouched }) => ({
      id,
      name: name.text,
      untouched,
      cards: cards.map(({ drawings, changes, ...card }) => ({
        ...card,
        changes: changes.map(change),
        drawings: drawings.map(({ new: { id: drawing } }) => drawing),
      })),
    })),
    untouched: notice.untouched.map(({ id }) => id),
  };
}
