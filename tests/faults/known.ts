/** Faults by hand that are known to fall short, from both lists: `name: in what`. */
import { unnoticed } from './by-hand.ts';
import { unnoticedTraded } from './trade/unnoticed.ts';

export const known = [unnoticed, unnoticedTraded].flatMap((list) =>
  Object.entries(list).flatMap(([short, faults]) => faults.map(({ name }) => `${name}: ${short}`)),
);
