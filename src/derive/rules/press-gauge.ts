/** Force on the bodies and what the gauge of the press shows: for one stack, and for the full row of stacks side by side. */
import type { Use } from '../../facts/facts.ts';
import { byDefinition, practice, publishedIn } from '../../facts/facts.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import { nominal } from '../../units/arithmetic.ts';
import type { Kind, Quantity } from '../../units/quantity.ts';
import type { Band, PressedBody, Rams } from '../press-load.ts';
import { gaugeOf, loadForce, ramArea } from '../press-load.ts';
import { machineAt } from '../../facts/press-row.ts';
import { NM_PER_M } from '../lengths.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

/** One stack, or as many side by side as the press takes. */
export type Loading = 'stack' | 'row';

declare module '../../facts/facts.ts' {
  interface DerivedFacts
    extends
      Record<`press.${Loading}.force`, Quantity<'force'>>,
      Record<`press.${Loading}.gauge`, Quantity<'pressure'>>,
      Record<`press.${Loading}.scale`, Quantity<'fraction'>> {
    'press.side-by-side': Quantity<'count'>;
    'press.ram-area': Quantity<'area'>;
    'press.gauge-most': Quantity<'pressure'>;
    'press.capacity': Quantity<'force'>;
  }
}

const pascal = publishedIn('Pascal’s law: force = pressure × area; friction and weight of the plate left out');

const rule: Rule = (subject) => (partsOf(subject.spec).includes('cap') ? facts(subject) : []);
export default rule;

const facts: Rule = (subject) => [
  derivation({
    id: 'press.side-by-side',
    label: 'stacks side by side in the press, at most',
    formula: 'as given',
    source: byDefinition,
    value: (use) => use(machineAt(subject, use, 'press').need('side-by-side', (press) => press['side-by-side'])),
  }),
  derivation({
    id: 'press.ram-area',
    label: 'area of the rams',
    formula: 'rams × π × bore² ÷ 4',
    source: byDefinition,
    value: (use) => ({ kind: 'area', value: ramArea(ramsOf(subject, use)), unit: 'cm²', decimals: 1 }),
  }),
  derivation({
    id: 'press.gauge-most',
    label: 'most the gauge of the press may ever show',
    formula: 'the lesser of what its rating plate allows and the end of the scale',
    source: byDefinition,
    value: (use) => {
      const press = machineAt(subject, use, 'press');
      const most = use(press.need('gauge-most', (row) => row['gauge-most']));
      const full = use(press.need('gauge-full-scale', (row) => row['gauge-full-scale']));
      const [allowed, end] = [most.low ?? most.value, full.low ?? full.value];
      return { ...nominal(most), value: Math.min(allowed, end) };
    },
  }),
  derivation({
    id: 'press.capacity',
    label: 'most force the press is rated for',
    formula: 'as given; the lower limit, where it has limits',
    source: byDefinition,
    value: (use) => {
      const capacity = use(machineAt(subject, use, 'press').need('capacity', (row) => row.capacity));
      return { ...nominal(capacity), value: capacity.low ?? capacity.value };
    },
  }),
  ...(['stack', 'row'] as const).flatMap((loading) => ofLoading(subject, loading)),
];

function ofLoading(subject: Subject, loading: Loading) {
  const what = loading === 'stack' ? 'one stack' : 'stacks side by side';
  return [
    derivation({
      id: `press.${loading}.force`,
      label: `${what}: force of the press`,
      formula:
        loading === 'stack'
          ? 'pressure on the joint × area of one joint: bodies in a stack each feel the whole force'
          : 'force on one stack × stacks side by side: they share the force',
      source: pascal,
      value: (use) => {
        const stacks = loading === 'stack' ? 1 : use.fact('press.side-by-side').value;
        const held = loadForce(Array.from({ length: stacks }, () => [body(subject, use)]));
        // Bodies that are alike are never refused beside each other.
        if (!held.ok) throw new Error('bodies of one model refused each other');
        const { value } = use.fact('press.joint-pressure');
        return banded(value * use.fact('joint.area').value * stacks, held.force, { kind: 'force', unit: 'kN' });
      },
    }),
    derivation({
      id: `press.${loading}.gauge`,
      label: `${what}: gauge of the press`,
      formula: 'force ÷ area of the rams',
      source: pascal,
      value: (use) => {
        const { value, low = value, high = value } = use.fact(`press.${loading}.force`);
        const band = gaugeOf({ low, high }, ramsOf(subject, use));
        return banded(value / use.fact('press.ram-area').value, band, { kind: 'pressure', unit: 'MPa', decimals: 2 });
      },
    }),
    derivation({
      id: `press.${loading}.scale`,
      label: `${what}: share of the scale of the gauge`,
      formula: 'gauge ÷ full scale',
      source: practice('a gauge is read in the middle of its scale; common practice, from memory'),
      value: (use) => {
        const press = machineAt(subject, use, 'press');
        const full = use(press.need('gauge-full-scale', (row) => row['gauge-full-scale'])).value;
        const { value, low = value, high = value } = use.fact(`press.${loading}.gauge`);
        return banded(value / full, { low: low / full, high: high / full }, { kind: 'fraction', unit: '%' });
      },
    }),
  ];
}

const body = (subject: Subject, use: Use): PressedBody => {
  const { value, low = value, high = value } = use.fact('press.joint-pressure');
  return { name: use(subject.spec.model), jointArea: use.fact('joint.area').value, pressure: { low, high } };
};

function ramsOf(subject: Subject, use: Use): Rams {
  const press = machineAt(subject, use, 'press');
  const bore = use(press.need('bore', (row) => row.bore)).value / NM_PER_M;
  return { count: use(press.need('rams', (row) => row.rams)).value, bore };
}

const banded = <K extends Kind>(
  value: number,
  band: Band,
  { kind, unit, decimals = 0 }: { kind: K; unit: string; decimals?: number },
): Quantity<K> => ({ kind, value, ...band, unit, decimals });
