/** Hardware that goes through a panel finds wood it can be mounted through: neither too thick nor too thin. */
import { namesOf, row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { offBy, say } from '../say.ts';
import { bore, cut, cuts, gap, pot, section, slab } from '../sketch.ts';
import { shapedAt } from '../shaped.ts';

const check: Check = {
  id: 'panel-out-of-band',
  stage: 'derived',
  severity: 'error',
  why: 'Too thick, and the thread does not come out of the wood; too thin, and the nut finds nothing to stop on.',
  mend: 'Leave more or less wood over the cavity, or fit another part.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'hardware: pot-long',
    fails: 'hardware: pot',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 12, to: 50, depth: 7, back: true }), bore({ from: [36, 0], to: [36, 11], width: 3, end: 'open' })),
    pot(36, 10, 7),
    gap(22, 0, 10),
  ),
  run: (bench) => namesOf(bench.subject.spec.holes).flatMap((id) => faults(bench, id)),
};
export default check;

function faults(bench: Bench, id: string): Fault[] {
  const { spec, plant } = bench.subject;
  const { facts } = bench;
  const hole = spec.holes![id]!;
  if (!hole.hardware) return [];
  const { hardware } = hole;
  const part = look(facts, (use) => {
    const found = row(plant.hardware, use(hardware), 'plant.hardware');
    return found.panel && { name: use(hardware), panel: use(found.panel), at: found.panel.id };
  });
  if (!part) return [];
  const { name, panel } = part;
  const band = `${say(panel, panel.low ?? 0)} to ${say(panel, panel.high ?? 0)}`;
  const under = floorUnder(bench, id);
  const spot = look(facts, (use) => use.fact(`hole.${id}.spot`));
  const against = [
    { at: part.at, text: `how much wood ${name} can be mounted through` },
    ...(under === undefined ? [] : [{ at: under, text: 'how deep the cavity under it goes' }]),
    ...(spot ? shapedAt(bench, 'top', spot.xMm, spot.yMm) : []),
  ];
  const least = look(facts, (use) => use.fact(`panel.${id}.least`));
  const most = look(facts, (use) => use.fact(`panel.${id}.most`));
  const fault = (what: string, mend: string, which: 'least' | 'most'): Fault[] => [
    // Three pots over one cavity find the same floor.
    { at: hardware.id, what, mend, against, hangsOn: [`panel.${id}.${which}`], cause: `${which} ${part.at} ${under}` },
  ];
  return [
    ...(most && (most.high ?? most.value) > panel.high!
      ? fault(
          `${name} goes through ${say(most, most.value)} of wood here as drawn${offBy(most)}: up to ${say(most, most.high ?? most.value)}. It can be mounted through ${band}.`,
          `Leave ${say(most, (most.high ?? most.value) - panel.high!)} less wood over the cavity, or fit a part with a longer thread.`,
          'most',
        )
      : []),
    ...(least && (least.low ?? least.value) < panel.low!
      ? fault(
          `${name} goes through as little as ${say(least, least.low ?? least.value)} of wood here at worst. It can be mounted through ${band}.`,
          `Leave ${say(least, panel.low! - (least.low ?? least.value))} more wood over the cavity, or fit a part with a shorter thread.`,
          'least',
        )
      : []),
  ];
}

/** The number that says how deep the cavity goes that it is mounted over. */
function floorUnder({ subject: { spec }, facts }: Bench, id: string): string | undefined {
  const inputs = facts.fact(`panel.${id}.most`)?.inputs ?? [];
  const cavity = namesOf(spec.cavities).find((one) => inputs.includes(`cavity.${one}.void`));
  const { depth, floor } = (cavity === undefined ? undefined : spec.cavities?.[cavity]) ?? {};
  return (depth ?? floor)?.id;
}
