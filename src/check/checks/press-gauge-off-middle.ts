/** The gauge of the press is read in the middle of its scale, between a quarter and three quarters. */
import { machineAt } from '../../facts/press-row.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';
import { dial, plan, ring } from '../sketch.ts';

/** Of the scale; common practice, from memory. */
const LEAST = 0.25;
const MOST = 0.75;
/** A double may miss the mark by a hair. */
const HAIR = 1e-9;

const check: Check = {
  id: 'press-gauge-off-middle',
  stage: 'derived',
  severity: 'caution',
  why: 'Near either end of its scale a gauge is read badly: at the bottom a mark is a large part of the pressure, at the top there is nothing in hand.',
  mend: 'Fit a gauge whose scale suits the press, or put more or fewer stacks side by side.',
  example: { file: 'models/plant/plant.yaml', passes: 'gauge-full-scale: 18 MPa', fails: 'gauge-full-scale: 25 MPa' },
  sketch: plan(dial(0.08, 0.25, 0.75), ring(-10.4, 3.6, 3.4, 'upper-left')),
  run: (bench) => {
    if (!partsOf(bench.subject.spec).includes('cap')) return [];
    const stacks = look(bench.facts, (use) => use.fact('press.side-by-side').value) ?? 1;
    return [
      ...fault(bench, 'stack', 'one stack'),
      ...(stacks > 1 ? fault(bench, 'row', `${stacks} side by side`) : []),
    ];
  },
};
export default check;

function fault({ subject, facts }: Bench, loading: 'stack' | 'row', by: string): Fault[] {
  const seen = look(facts, (use) => {
    const leaf = machineAt(subject, use, 'press').need('gauge-full-scale', (press) => press['gauge-full-scale']);
    const gauge = use.fact(`press.${loading}.gauge`);
    return { id: leaf.id, full: use(leaf), gauge, share: use.fact(`press.${loading}.scale`) };
  });
  if (!seen) return [];
  const { id, full, gauge, share } = seen;
  const [low, high] = [share.low ?? share.value, share.high ?? share.value];
  // Above the end of its scale is another check's.
  if ((low >= LEAST - HAIR && high <= MOST + HAIR) || high > 1) return [];
  const [from, to] = [gauge.low ?? gauge.value, gauge.high ?? gauge.value];
  return [
    {
      at: id,
      what: `With ${by} the gauge shows ${sayAs(gauge, from)} to ${sayAs(gauge, to)}, ${sayAs(share, low)} to ${sayAs(share, high)} of its scale; it is read well from ${sayAs(share, LEAST)} to ${sayAs(share, MOST)}.`,
      mend:
        to / MOST <= from / LEAST
          ? `Fit a gauge whose scale ends between ${sayAs(gauge, to / MOST)} and ${sayAs(gauge, from / LEAST)}; this one ends at ${sayAs(full, full.value)}.`
          : 'Take an adhesive with a narrower band of pressure.',
      against: [{ at: 'press.joint-pressure', text: 'the pressure on the joint' }],
      hangsOn: [`press.${loading}.gauge`],
    },
  ];
}
