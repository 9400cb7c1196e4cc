/** What the plant still lets pass leaves enough wood: for the next cut, and under the floor of a cavity. */
import { cutsOf } from '../../facts/cuts.ts';
import { REWORK_THINGS, reworkOf } from '../../facts/reworks.ts';
import { namesOf, readable } from '../../facts/row.ts';
import { setupCutAt } from '../../facts/setup-stations.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { floorCount } from '../../units/round.ts';
import { say } from '../say.ts';
import { leastWanted } from '../thin.ts';

const check: Check = {
  id: 'rework-too-far',
  stage: 'derived',
  severity: 'error',
  why: 'Somebody is told to go on with a piece that cannot come out right: it is found at the last station, or by whoever puts a screw through it.',
  mend: 'Let less pass, or give the stages more to take off.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'out: thin, beyond: 0.02',
    fails: 'out: thin, beyond: 0.40',
  },
  run: (bench) => namesOf(bench.subject.plant.reworks).flatMap((id) => [...thinner(bench, id), ...deeper(bench, id)]),
};
export default check;

/** The floors that were worked out for a row, where the next cut would find too little. */
function thinner({ subject, facts }: Bench, id: string): Fault[] {
  const { at, beyond } = subject.plant.reworks![id]!;
  return readable(at).flatMap((station) =>
    REWORK_THINGS.flatMap((thing): Fault[] => {
      const name = reworkOf(id, station.text, thing);
      if (!beyond || !facts.has(`${name}.left-to-cut`)) return [];
      const seen = look(facts, (use) => ({
        left: use.fact(`${name}.left-to-cut`),
        least: use.fact(`${name}.least-to-cut`),
        beyond: use(beyond),
      }));
      if (!seen || seen.left.value >= seen.least.value) return [];
      const { left, least, beyond: passed } = seen;
      const spare = passed.value - (least.value - left.value);
      const passes = noMore(spare);
      // Too little even for a piece that is in: the removal itself is found.
      if (spare < 0) return [];
      return [
        {
          at: beyond.id,
          what: `A piece (${thing}) that leaves ${station.text} ${say(passed, passed.value)} under its limit may leave the next cut only ${say(left, left.value)} to take off, and that cut must take off ${say(least, least.value)}.`,
          mend:
            passes > 0
              ? `Let ${say(passed, passes)} pass at most, or give the stages more to take off.`
              : 'Let nothing pass there: take the station out of this row.',
          against: [{ at: `${name}.left-to-cut`, text: 'what goes into it' }],
        },
      ];
    }),
  );
}

/** What is named passes: down to the hundredth that is printed. */
const noMore = (nm: number): number => floorCount(nm, 10_000) * 10_000;

/** A cavity that much too deep still has a floor. */
function deeper(bench: Bench, id: string): Fault[] {
  const { subject, facts } = bench;
  const { spec } = subject;
  const { at, beyond, out } = subject.plant.reworks![id]!;
  const deep = look(facts, (use) => (use(out) === 'deep' && beyond ? use(beyond) : undefined));
  if (!deep || !beyond) return [];
  const setups = readable(at).map((station) => setupCutAt(station.text));
  return cutsOf(spec).flatMap((cut): Fault[] => {
    if (cut.kind !== 'cavity') return [];
    const seen = look(facts, (use) => {
      const setup = use(spec.cavities![cut.id]!.setup);
      const side = setup === 'top' ? 'back' : 'top';
      const left = setups.includes(setup) ? use.fact(`left.cavity.${cut.id}.${side}`) : undefined;
      const least = leastWanted(bench, use, 'least-floor');
      return left && least && { wood: left.wood, least, side };
    });
    const least = seen?.wood.low;
    // Too thin as it is: the floor itself is found.
    if (!seen || least === undefined || least < seen.least.value || least - deep.value >= seen.least.value) return [];
    return [
      {
        at: beyond.id,
        what: `The cavity ${cut.id}, cut ${say(deep, deep.value)} too deep, would ${least > deep.value ? `leave ${say(deep, least - deep.value)} of wood` : 'come out on the other side'} at worst. At least ${say(deep, seen.least.value)} must be left.`,
        mend: `Let ${say(deep, noMore(least - seen.least.value))} pass at most, or leave more wood under that floor.`,
        against: [{ at: `left.cavity.${cut.id}.${seen.side}`, text: 'what is left there' }],
      },
    ];
  });
}
