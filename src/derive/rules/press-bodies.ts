/** How many bodies go into the press at once: by the glue that must not skin, by its daylight and by what its plate reaches. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice } from '../../facts/facts.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import { bounds } from '../../geometry/measure.ts';
import { add, scale } from '../../units/arithmetic.ts';
import type { Length, Quantity } from '../../units/quantity.ts';
import { ceilCount, floorCount } from '../../units/round.ts';
import { lengthOfMm } from '../lengths.ts';
import { laminationAdhesive, machineAt } from '../../facts/press-row.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import type { Loading } from './press-gauge.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`press.${Loading}.${'bodies' | 'layers'}`, Quantity<'count'>>,
      Record<`press.${Loading}.height`, Length>,
      Record<`press.${Loading}.${'assembly' | 'closed'}`, Quantity<'time'>>,
      Record<`press.${'part' | 'plate'}.${'length' | 'width'}`, Length> {
    'press.bodies.time': Quantity<'count'>;
    'press.layers.daylight': Quantity<'count'>;
    'press.layers.least': Quantity<'count'>;
  }
}

const handling = practice('spread and laid one after the other by one team, then closed; common practice, no source');
const piled = practice('a levelling board between bodies and at both ends of a stack; common practice, no source');

const rule: Rule = (subject) => (partsOf(subject.spec).includes('cap') ? facts(subject) : []);
export default rule;

const facts: Rule = (subject) => [
  derivation({
    id: 'press.bodies.time',
    label: 'bodies in a load before the glue of the first is too old',
    formula:
      '(open time − closing the press) ÷ (spreading + laying one body), and with a closed time (closed time + spreading − closing the press) ÷ the same, the lesser, rounded down',
    source: handling,
    value: (use) => {
      const { spread, each, close } = pace(subject, use);
      const { open, closed } = timesOf(subject, use);
      const total = Math.min(open, closed === undefined ? Infinity : closed + spread) - close;
      return count(total <= 0 ? 0 : floorCount(total, each));
    },
  }),
  derivation({
    id: 'press.layers.daylight',
    label: 'bodies on each other, at most, by the daylight of the press',
    formula: '(daylight − board) ÷ (blank at its thickest + board), rounded down',
    source: piled,
    value: (use) => {
      const { board, daylight } = opening(subject, use);
      const blank = use.fact('thickness.blank');
      const room = (daylight.low ?? daylight.value) - (board.high ?? board.value);
      const each = (blank.high ?? blank.value) + (board.high ?? board.value);
      return count(Math.max(0, floorCount(room, each)));
    },
  }),
  derivation({
    id: 'press.layers.least',
    label: 'bodies on each other, at least, for the plate to reach them',
    formula: '(closed height − board) ÷ (blank at its thinnest + board), rounded up',
    source: piled,
    value: (use) => {
      const { board, closedHeight } = opening(subject, use);
      const blank = use.fact('thickness.blank');
      const lack = (closedHeight.high ?? closedHeight.value) - (board.low ?? board.value);
      return count(Math.max(1, ceilCount(lack, (blank.low ?? blank.value) + (board.low ?? board.value))));
    },
  }),
  ...(['length', 'width'] as const).map((side) =>
    derivation({
      id: `press.part.${side}`,
      label: `${side} of a part as it lies in the press`,
      formula: 'extent of the rough line',
      source: byDefinition,
      value: (use) => {
        const { minX, maxX, minY, maxY } = bounds(use.fact('saw.rough.line'))!;
        return lengthOfMm(side === 'length' ? maxY - minY : maxX - minX, 0);
      },
    }),
  ),
  ...(['length', 'width'] as const).map((side) =>
    derivation({
      id: `press.plate.${side}`,
      label: `${side} of the plate of the press`,
      formula: 'as given',
      source: byDefinition,
      value: (use) => use(machineAt(subject, use, 'press').need(`plate.${side}`, (press) => press.plate?.[side])),
    }),
  ),
  ...(['stack', 'row'] as const).flatMap((loading) => ofLoading(subject, loading)),
];

function ofLoading(subject: Subject, loading: Loading) {
  const what = loading === 'stack' ? 'one stack' : 'stacks side by side';
  const beside = (use: Use) => (loading === 'stack' ? 1 : use.fact('press.side-by-side').value);
  const took = (use: Use): number => {
    const { each, close } = pace(subject, use);
    return use.fact(`press.${loading}.bodies`).value * each + close;
  };
  return [
    derivation({
      id: `press.${loading}.layers`,
      label: `${what}: bodies on each other, at most`,
      formula: 'the fewest of: by the daylight; by the time, every stack alike',
      source: byDefinition,
      value: (use) => {
        const inTime = Math.floor(use.fact('press.bodies.time').value / beside(use));
        return count(Math.min(inTime, use.fact('press.layers.daylight').value));
      },
    }),
    derivation({
      id: `press.${loading}.bodies`,
      label: `${what}: bodies in a load, at most`,
      formula: 'bodies on each other × stacks',
      source: byDefinition,
      value: (use) => count(use.fact(`press.${loading}.layers`).value * beside(use)),
    }),
    derivation({
      id: `press.${loading}.height`,
      label: `${what}: height of the load`,
      formula: 'bodies on each other × blank + a board more than bodies; limits are the worst case',
      source: piled,
      value: (use) => {
        const layers = use.fact(`press.${loading}.layers`).value;
        return add(scale(use.fact('thickness.blank'), layers), scale(opening(subject, use).board, layers + 1));
      },
    }),
    derivation({
      id: `press.${loading}.assembly`,
      label: `${what}: from first glue on the first body to full pressure, with a full load`,
      formula: 'bodies × (spreading + laying one body) + closing the press',
      source: handling,
      value: (use) => minutes(took(use)),
    }),
    derivation({
      id: `press.${loading}.closed`,
      label: `${what}: from the cap laid on the first body to full pressure, with a full load`,
      formula: 'bodies × (spreading + laying one body) + closing the press − spreading the first',
      source: handling,
      value: (use) => minutes(Math.max(0, took(use) - pace(subject, use).spread)),
    }),
  ];
}

/** Seconds: of the slowest, where a time has limits. */
function pace(subject: Subject, use: Use) {
  const [spreader, press] = [machineAt(subject, use, 'lamination'), machineAt(subject, use, 'press')];
  const spread = slowest(use(spreader.need('spread-time', (row) => row['spread-time'])));
  const load = slowest(use(press.need('load-time', (row) => row['load-time'])));
  const close = slowest(use(press.need('close-time', (row) => row['close-time'])));
  return { spread, each: spread + load, close };
}

/** Seconds the adhesive allows. */
function timesOf(subject: Subject, use: Use): { readonly open: number; readonly closed: number | undefined } {
  const glue = laminationAdhesive(subject, use);
  const open = use(glue.need('open-time', (row) => row['open-time']));
  const { 'closed-time': closed } = glue.row;
  return { open: open.low ?? open.value, closed: closed && (use(closed).low ?? use(closed).value) };
}

function opening(subject: Subject, use: Use) {
  const press = machineAt(subject, use, 'press');
  return {
    board: use(press.need('board', (row) => row.board)),
    daylight: use(press.need('daylight', (row) => row.daylight)),
    closedHeight: use(press.need('closed-height', (row) => row['closed-height'])),
  };
}

const slowest = ({ value, high = value }: Quantity<'time'>): number => high;

const count = (value: number): Quantity<'count'> => ({ kind: 'count', value, unit: '', decimals: 0 });
const minutes = (value: number): Quantity<'time'> => ({ kind: 'time', value, unit: 'min', decimals: 1 });
