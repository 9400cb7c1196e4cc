/** What a wood screw measures by its gauge: published, or as the plant measured it. */
import type { Use } from '../facts/facts.ts';
import { hole, Leaf } from '../facts/leaf.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Certainty } from '../reference/certainty.ts';
import * as published from '../reference/screws.ts';
import { unitById } from '../units/unit.ts';
import type { Length } from '../units/quantity.ts';

type Screw = NonNullable<PlantSpec['screws']>[string];

/** The published row of its gauge. */
export function gaugeRow(use: Use, { gauge }: Screw) {
  const number = use(gauge).value;
  const of = Object.hasOwn(published.screws, number) ? published.screws[number] : undefined;
  return { gauge: number, of: of ?? use<published.ScrewRow>(hole(gauge.id)) };
}

/** Outside of its thread. */
export function shankOf(use: Use, screw: Screw): Length {
  const { gauge, of } = gaugeRow(use, screw);
  return leaf(use, `shank.${gauge}`, of.shankIn, published.SHANK_SOURCE, published.SHANK_CERTAINTY);
}

/** Root of its thread: measured by the plant, else the table, else two-thirds of the shank. */
export function rootOf(use: Use, screw: Screw): Length {
  if (screw.root) return use(screw.root);
  const { gauge, of } = gaugeRow(use, screw);
  if (of.rootIn !== undefined) {
    return leaf(use, `root.${gauge}`, of.rootIn, published.ROOT_SOURCE, published.ROOT_CERTAINTY);
  }
  const inches = of.shankIn * published.TWO_THIRDS;
  return leaf(use, `two-thirds.${gauge}`, inches, published.TWO_THIRDS_SOURCE, published.TWO_THIRDS_CERTAINTY);
}

function leaf(use: Use, name: string, inches: number, source: string, certainty: Certainty): Length {
  const q: Length = { kind: 'length', value: Math.round(unitById('in').toBase(inches)), unit: 'in', decimals: 3 };
  return use(new Leaf(`published.screw.${name}`, String(inches), { kind: 'published', source, certainty }, q));
}
