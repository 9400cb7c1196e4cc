/** A fit class is one of the published rows for its diameter. */
import type { Leaf } from '../../facts/leaf.ts';
import { namesOf, row } from '../../facts/row.ts';
import { deviationsOf, fits, FITS_SOURCE } from '../../reference/fits.ts';
import type { FitClass } from '../../reference/fits.ts';
import type { Length } from '../../units/quantity.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';

const check: Check = {
  id: 'fit-not-listed',
  stage: 'spec',
  severity: 'error',
  why: 'The limits of a fit change with the diameter: taken from another row they are wrong by more than the play.',
  mend: 'Give measured limits instead of the fit.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'neck: { at: { x: 0, y: 200 }, diameter: 10, fit: H8 }',
    fails: 'neck: { at: { x: 0, y: 200 }, diameter: 20, fit: H8 }',
    also: ['drill-of-another-size', 'hole-left-in-white', 'pins-do-not-go-in', 'wall-too-thin'],
  },
  run: (bench) => {
    const { spec, plant } = bench.subject;
    const pinned = look(bench.facts, (use) => spec.setups.back.pins && use(spec.setups.back.pins));
    const seats = pinned === undefined ? [] : holesOf(bench, pinned);
    const jig = look(bench.facts, (use) => row(plant.jigs, use(spec.location.jig), 'plant.jigs').bushings);
    return [
      ...seats.flatMap(({ diameter, fit }) => fault(bench, diameter, fit)),
      ...seats.flatMap(({ id, diameter }) => fault(bench, diameter, jig?.[id]?.fit)),
      ...(['glue-face', 'back', 'top'] as const).flatMap((setup) => ofPins(bench, setup)),
    ];
  },
};
export default check;

const holesOf = ({ subject: { plant } }: Bench, pattern: string) => {
  const holes = plant.patterns?.[pattern]?.holes;
  return namesOf(holes).map((id) => ({ id, ...holes![id]! }));
};

function ofPins(bench: Bench, setup: 'glue-face' | 'back' | 'top'): Fault[] {
  const { spec, plant } = bench.subject;
  const own = spec.setups[setup];
  if (!own) return [];
  const pins = look(bench.facts, (use) => row(plant.fixtures, use(own.fixture), 'plant.fixtures').pins);
  const pattern = look(bench.facts, (use) => own.pins && use(own.pins));
  const holes = pattern === undefined ? undefined : plant.patterns?.[pattern]?.holes;
  return namesOf(pins).flatMap((id) => {
    const diameter = (own.pins ? holes?.[id] : spec.holes?.[id])?.diameter;
    return diameter ? fault(bench, diameter, pins?.[id]?.fit) : [];
  });
}

function fault({ facts }: Bench, diameter: Leaf<Length>, fit: Leaf<FitClass> | undefined): Fault[] {
  const seen = look(facts, (use) => fit && { id: fit.id, fit: use(fit), of: use(diameter) });
  if (!seen || deviationsOf(seen.fit, seen.of.value / 1e6)) return [];
  const [least, most] = [fits[0]!.over, fits.at(-1)!.to];
  const mm = { unit: 'mm', decimals: 0 };
  return [
    {
      at: seen.id,
      what: `The fit ${seen.fit} is listed here for diameters over ${say(mm, least * 1e6)} and up to ${say(mm, most * 1e6)} (${FITS_SOURCE}); this one is ${say(seen.of, seen.of.value)}.`,
      mend: 'Give measured limits instead of the fit.',
      against: [{ at: diameter.id, text: 'the diameter of the hole' }],
    },
  ];
}
