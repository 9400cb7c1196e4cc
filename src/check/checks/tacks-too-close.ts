/** Two tacks leave wood between them, and hold the cap at two places. */
import { namesOf } from '../../facts/row.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Use } from '../../facts/facts.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { plan, ring, sawLine, tackHead, waste } from '../sketch.ts';

const check: Check = {
  id: 'tacks-too-close',
  stage: 'derived',
  severity: 'error',
  why: 'Two tacks side by side split the wood between them, and hold the cap no better than one: it turns about them under the press.',
  mend: 'Move one of the two away, or take fewer.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'pin-b: { at: { x: -70, y: -130 }, kind: pin-14 }',
    fails: 'pin-b: { at: { x: -78, y: 150 }, kind: pin-14 }',
  },
  sketch: plan(waste(-12, 14), sawLine(-3), tackHead(6, -11), tackHead(6, 3), tackHead(6, 6.4), ring(6, 4.7, 4.4)),
  run: (bench) => {
    const own = namesOf(bench.subject.spec.tacks);
    if (own.length > 0) return pairs(own).flatMap(([a, b]) => fault(bench, a, b));
    if (!partsOf(bench.subject.spec).includes('cap')) return [];
    const placed = look(bench.facts, (use) => use.fact('tacks.by-rule').map((_, i) => String(i + 1))) ?? [];
    // Along a line those next to each other are the nearest; one pair stands for all.
    return pairs(placed)
      .flatMap(([a, b]) => fault(bench, a, b))
      .slice(0, 1);
  },
};
export default check;

const pairs = (ids: readonly string[]) => ids.flatMap((a, i) => ids.slice(i + 1).map((b) => [a, b] as const));

function fault({ subject: { spec }, facts }: Bench, a: string, b: string): Fault[] {
  const seen = look(facts, (use) => {
    const [one, other] = [barOf(use, a), barOf(use, b)];
    const needed = [a, b].map((id) => use.fact(`tack.${id}.edge`));
    return {
      edge: needed.toSorted((p, q) => q.value - p.value)[0]!,
      leftNm: Math.round(
        (Math.hypot(one.from.xMm - other.from.xMm, one.from.yMm - other.from.yMm) - one.radiusMm - other.radiusMm) *
          1e6,
      ),
    };
  });
  if (!seen || seen.leftNm >= seen.edge.value) return [];
  const { edge, leftNm } = seen;
  const own = spec.tacks?.[b];
  const left = leftNm > 0 ? `${say(edge, leftNm)} of wood are` : 'no wood is';
  return [
    {
      at: own ? own.at.x.id : 'tacks.count',
      what: `Between tacks ${a} and ${b} ${left} left, when each stands as far off its mark as it may. At least ${say(edge, edge.value)} must be left.`,
      mend: own ? `Move one of them ${say(edge, edge.value - leftNm)} away.` : 'Take fewer tacks.',
      against: own ? [{ at: spec.tacks![a]!.at.x.id, text: `where ${a} stands` }] : [],
    },
  ];
}

const barOf = (use: Use, id: string) => use.fact(`tack.${id}.bar`);
