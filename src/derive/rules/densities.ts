/** Density of each part: the plant's own where it gives one, else the published value of the species. */
import type { Use } from '../../facts/facts.ts';
import { publishedIn } from '../../facts/facts.ts';
import { hole, Leaf } from '../../facts/leaf.ts';
import type { Part } from '../../facts/parts.ts';
import { boardOf, partsOf } from '../../facts/parts.ts';
import { row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { DENSITY_SOURCE, densities, densityAt12 } from '../../reference/densities.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`density.${Part}`, Quantity<'density'>> {}
}

const rule: Rule = (subject) =>
  partsOf(subject.spec).map((part) =>
    derivation({
      id: `density.${part}`,
      label: `${part}: density`,
      formula: 'the plant’s own, else 1000 kg/m³ × specific gravity at 12 % × 1.12',
      source: publishedIn(DENSITY_SOURCE),
      value: (use) => density(subject, use, part),
    }),
  );
export default rule;

function density({ spec, plant }: Subject, use: Use, part: Part): Quantity<'density'> {
  const species = use(boardOf(spec, part).species);
  const own = row(plant.species, species, 'plant.species').density;
  if (own) return use(own.value);
  const published = Object.hasOwn(densities, species) ? densities[species] : undefined;
  if (!published) return use(hole(`plant.species.${species}.density`));
  const value = densityAt12(published);
  const writing = { kind: 'published', source: DENSITY_SOURCE, certainty: published.certainty } as const;
  const quantity = { kind: 'density', value, unit: 'kg/m³', decimals: 0 } as const;
  return use(new Leaf(`published.density.${species}`, `${published.gravity12}`, writing, quantity));
}
