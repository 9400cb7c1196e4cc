/**
 * Force and gauge of a press load, pure arithmetic. Pascal’s law: F = p · A, and p_gauge = F / (n · π · D² / 4) for n rams of
 * bore D on one line of oil. All force is taken to go through the joints; friction and the weight of the plate are left out.
 *
 * Bodies in a stack are in series: each feels the whole force. Stacks side by side share it, so their forces add.
 */

/** Least and most, in the unit of what it is a band of. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** One body in the press. */
export interface PressedBody {
  readonly name: string;
  /** m², what is really glued. */
  readonly jointArea: number;
  /** Pa on the joint. */
  readonly pressure: Band;
}

/** All rams push together. */
export interface Rams {
  readonly count: number;
  /** m. */
  readonly bore: number;
}

/** Why a load is refused: a body needs more force at the least than another in its stack bears. */
export interface Refused {
  readonly ok: false;
  /** The body that needs most, and the force it needs at least, N. */
  readonly needs: { readonly name: string; readonly force: number };
  /** The one that bears least, and the most it bears, N. */
  readonly bears: { readonly name: string; readonly force: number };
}

export interface Held {
  readonly ok: true;
  /** N, of the whole. */
  readonly force: Band;
  /** Of each stack, the part of the force it must get; the press’s centre has to lie where that comes about. */
  readonly shares: readonly number[];
}

/** m² that the oil pushes on. */
export const ramArea = ({ count, bore }: Rams): number => (count * Math.PI * bore * bore) / 4;

/** N on one body. */
export const bodyForce = ({ jointArea, pressure }: PressedBody): Band => ({
  low: pressure.low * jointArea,
  high: pressure.high * jointArea,
});

/** Pa at the gauge. */
export const gaugeOf = (force: Band, rams: Rams): Band => ({
  low: force.low / ramArea(rams),
  high: force.high / ramArea(rams),
});

/** N on a stack: it must suit every body in it, alike or not. */
export function stackForce(bodies: readonly PressedBody[]): Held | Refused {
  const all = bodies.map((body) => ({ name: body.name, band: bodyForce(body) }));
  const [first, ...others] = all;
  if (!first) throw new RangeError('a stack of nothing');
  const needs = others.reduce((most, one) => (one.band.low > most.band.low ? one : most), first);
  const bears = others.reduce((least, one) => (one.band.high < least.band.high ? one : least), first);
  if (needs.band.low <= bears.band.high) {
    return { ok: true, force: { low: needs.band.low, high: bears.band.high }, shares: [1] };
  }
  return {
    ok: false,
    needs: { name: needs.name, force: needs.band.low },
    bears: { name: bears.name, force: bears.band.high },
  };
}

/**
 * N on stacks side by side. Each is to get its share, by the middle of its own band: the band of the whole is that in which no
 * stack leaves its own while the force goes up and down. For stacks that are alike it is the sum of their bands.
 */
export function loadForce(stacks: readonly (readonly PressedBody[])[]): Held | Refused {
  const bands: Band[] = [];
  for (const bodies of stacks) {
    const stack = stackForce(bodies);
    if (!stack.ok) return stack;
    bands.push(stack.force);
  }
  const sum = bands.reduce((total, band) => total + middle(band), 0);
  const shares = bands.map((band) => middle(band) / sum);
  return {
    ok: true,
    force: {
      low: Math.max(...bands.map(({ low }, i) => low / shares[i]!)),
      high: Math.min(...bands.map(({ high }, i) => high / shares[i]!)),
    },
    shares,
  };
}

const middle = ({ low, high }: Band): number => (low + high) / 2;
