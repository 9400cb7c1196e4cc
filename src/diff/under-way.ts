/**
 * Bodies under way: for each station whose card changed, what a body that is past it is by the new limits, and what can still
 * be done. What is done with it is the lead's to say.
 */
import type { Line, Name } from '../cards/card.ts';
import { figureOfState } from '../cards/figures.ts';
import { say } from '../cards/station.ts';
import type { FactState } from '../facts/state.ts';
import { setupCutAt } from '../facts/setup-stations.ts';
import type { Change, FactMove } from './change.ts';

export interface UnderWay {
  /** A body that has passed this station. */
  readonly station: string;
  readonly past: Name;
  readonly lines: readonly Line[];
}

export interface Passed {
  readonly station: string;
  readonly name: Name;
  readonly changes: readonly Change[];
}

type States = ReadonlyMap<string, FactState>;

export function underWay(
  passed: readonly Passed[],
  states: { readonly old: States; readonly new: States },
): readonly UnderWay[] {
  return passed.map(({ station, name, changes }): UnderWay => {
    // A check comes first: of what stands in a key number and in a table as well, the check says it.
    const checks = changes.filter(({ is }) => is === 'check' || is === 'place');
    const told = new Set(checks.flatMap(({ moves }) => moves.map(({ fact }) => fact)));
    const others = changes.filter(({ is, moves }) => is === 'row' && moves.some(({ fact }) => !told.has(fact)));
    const lines = [...checks, ...others].flatMap((change) => linesOf(change, station, states));
    if (changes.some(isOtherwiseMade)) lines.push(say('under-way.otherwise'));
    return { station, past: name, lines: lines.length > 0 ? lines : [say('under-way.nothing-measured')] };
  });
}

/** What a body is made of, and where and in what shape it is cut: of that no reading says whether the old passes as new. */
const MADE =
  /^(?:outline|carve|contours|edges|timber|location)\b|^(?:cavities|holes|channels)\.[^.]+\.(?:shape|at|start|end|corner|diameter|face|setup)\b/;

const isOtherwiseMade = ({ is, how, because }: Change): boolean =>
  (is === 'row' && how !== 'changed') || because.some((id) => MADE.test(id));

function linesOf(
  change: Change,
  station: string,
  states: { readonly old: States; readonly new: States },
): readonly Line[] {
  if (change.is === 'place')
    return !isCutAt(change, station, states.new) ? [] : [say('under-way.place', { what: change.line.with['what']! })];
  const what = change.line.with['what'] ?? change.line.with['row'];
  if (!what) return [];
  return change.moves.flatMap((move) => {
    const spare = ofWood(move.fact, states);
    // What is measured, or is left of the wood; a number that nobody holds a gauge to stops no body.
    if (move.limits === undefined || (change.is !== 'check' && !spare)) return [];
    return [
      say('under-way.line', { what, line: spare ? woodLine(move, spare, states) : say(`under-way.${move.limits}`) }),
    ];
  });
}

/** Which way there is wood to spare: a thick part can be made thinner, a shallow cavity deeper; nothing goes back. */
function ofWood(
  fact: string,
  { old, new: now }: { readonly old: States; readonly new: States },
): 'more' | 'less' | undefined {
  if (fact.startsWith('thickness.')) return 'more';
  if (!/^(?:cavity|hole|channel)\..*\.measured$/.test(fact)) return undefined;
  const ways = [old, now].map(
    (states) => /\bway (depth|height)\b/.exec(states.get(`${fact.slice(0, -'ed'.length)}ing`)?.text ?? '')?.[1],
  );
  // A depth that is a height now says nothing of the wood by its size.
  if (ways[0] === undefined || ways[0] !== ways[1]) return undefined;
  return ways[0] === 'depth' ? 'less' : 'more';
}

function woodLine(
  { fact, was: before = fact, limits, by }: FactMove,
  spare: 'more' | 'less',
  { old, new: now }: { readonly old: States; readonly new: States },
): Line {
  const [was, is] = [old.get(before)!.number!, now.get(fact)!.number!];
  if (limits === 'wider') return say('under-way.wider');
  if (limits !== 'apart') return say(`under-way.${limits}`);
  // How far the nearest and the furthest of the old are from the new.
  const toSpare = spare === 'more' ? by < 0 : by > 0;
  const [nearest, furthest] =
    by < 0 ? [was.low! - is.high!, was.high! - is.low!] : [is.low! - was.high!, is.high! - was.low!];
  const args = { least: figureOfState(fact, is, nearest), most: figureOfState(fact, is, furthest) };
  return toSpare ? say('under-way.spare', args) : say('under-way.short', args);
}

/** A cavity lies where it was cut: at the station of its set-up. */
function isCutAt({ because }: Change, station: string, now: States): boolean {
  const of = /^[^.]+\.[^.]+/.exec(because[0] ?? '')?.[0];
  return setupCutAt(station) === now.get(`${of}.setup`)?.text;
}
