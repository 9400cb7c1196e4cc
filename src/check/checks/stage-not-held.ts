/** The machine can hold the thickness of every stage it makes. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { halfOf, say, sayFact, sayStack } from '../say.ts';
import { gap, ideal, line, rect, section, shape, slab } from '../sketch.ts';

type Achieved = `thickness.body.${'back-faced' | `machined.${'crown' | 'face' | 'land'}`}.achieved`;

const check: Check = {
  id: 'stage-not-held',
  stage: 'derived',
  severity: 'error',
  why: 'A machine that is off by more than the limits makes bodies outside of them, however carefully it is set.',
  mend: 'Widen the limits, zero on the fixture, or use a machine that holds them.',
  example: { file: 'models/tarn.yaml', passes: 'back-faced: 50.30 ±0.10', fails: 'back-faced: 50.30 ±0.05' },
  sketch: section(
    slab({ top: 2 }),
    shape(rect(2, -2, 58, 6), 'removed'),
    ideal('M 1 0.6 H 59 M 1 3.4 H 59'),
    line('M 2 2 H 58'),
    gap(30, -2, 6),
  ),
  run: (bench) => stages.flatMap((stage) => fault(bench, stage)),
};
export default check;

const stages = ['back-faced', 'machined.crown', 'machined.face', 'machined.land'] as const;

function fault({ facts }: Bench, stage: (typeof stages)[number]): Fault[] {
  const id: Achieved = `thickness.body.${stage}.achieved`;
  if (!facts.has(id)) return [];
  const seen = look(facts, (use) => ({ achieved: use.fact(id), given: use.fact(`thickness.body.${stage}`) }));
  if (!seen) return [];
  const { achieved, given } = seen;
  if (achieved.low! >= given.low! && achieved.high! <= given.high!) return [];
  const causes = achieved.causes ?? [];
  const need = achieved.high! - achieved.value;
  return [
    {
      at: `thickness.body.${stage}`,
      what: `${sayFact(facts, `thickness.body.${stage}`)}, ${say(given, given.value)}, is to be held within ±${say(given, given.high! - given.value)}. Its set-up may be off by ${sayStack(given, causes, `±${say(given, need)}`)}.`,
      mend: `Widen its limits to ±${say(given, need)}, zero on the fixture, or use a machine that holds them.`,
      against: causes.map((cause) => ({
        at: cause.cause.replace(/#.*/, ''),
        text: `±${say(given, halfOf(cause))} of it comes from here`,
      })),
    },
  ];
}
