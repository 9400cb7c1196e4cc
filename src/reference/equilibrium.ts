/**
 * Moisture content wood comes to rest at in air of a temperature and a relative humidity.
 *
 * Two-hydrate sorption equation with h = humidity as a share of 1, result in per cent:
 *   1800/W · [ K·h/(1 − K·h) + (K1·K·h + 2·K1·K2·K²·h²) / (1 + K1·K·h + K1·K2·K²·h²) ]
 * Source: USDA Wood Handbook, FPL-GTR-190 (2010), equation 4-5 (Simpson 1998, FPL-RN-0268). Coefficients for °C read in
 * published code that cites it; those for °F from memory. Both are held against the handbook's table 4-2 in the tests.
 */

export const EQUILIBRIUM_SOURCE = 'USDA Wood Handbook, FPL-GTR-190 (2010), equation 4-5';

/** Where it is held against the published table: 30 to 130 °F and 5 to 85 % humidity. */
export const EQUILIBRIUM_RANGE = { lowF: 30, highF: 130, lowHumidity: 0.05, highHumidity: 0.85 } as const;

/** Three coefficients of a polynomial in the temperature. */
type Row = readonly [number, number, number];
type Form = Readonly<Record<'w' | 'k' | 'k1' | 'k2', Row>>;

export const forms = {
  celsius: {
    w: [349, 1.29, 0.0135],
    k: [0.805, 0.000736, -0.00000273],
    k1: [6.27, -0.00938, -0.000303],
    k2: [1.91, 0.0407, -0.000293],
  },
  fahrenheit: {
    w: [330, 0.452, 0.00415],
    k: [0.791, 0.000463, -0.000000844],
    k1: [6.34, 0.000775, -0.0000935],
    k2: [1.09, 0.0284, -0.0000904],
  },
} as const satisfies Record<string, Form>;

/** Moisture content, share of 1; temperature in the degrees of the form, humidity a share of 1 (0 to 1, 1 excluded). */
export function equilibriumMoisture(form: keyof typeof forms, degrees: number, humidity: number): number {
  const at = ([a, b, c]: Row): number => a + b * degrees + c * degrees ** 2;
  const { w, k, k1, k2 } = forms[form];
  const first = at(k) * humidity;
  const both = at(k1) * first;
  const second = at(k1) * at(k2) * first ** 2;
  const percent = (1800 / at(w)) * (first / (1 - first) + (both + 2 * second) / (1 + both + second));
  return percent / 100;
}

const DRIEST = 0.0001;
const DAMPEST = 0.9999;
const HALVINGS = 50;

/**
 * The humidity (share of 1) at which wood comes to rest at that moisture content; it rises with humidity all the way, so the
 * interval is halved until nothing is left of it. Beyond what air can do, the nearest it can.
 */
export function humidityFor(form: keyof typeof forms, degrees: number, moisture: number): number {
  let low = DRIEST;
  let high = DAMPEST;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (equilibriumMoisture(form, degrees, middle) < moisture) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
