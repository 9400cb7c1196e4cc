/** The station that cuts each set-up. The stations' own files stand in another room; tests/cards/promises.test.ts holds the two together. */
import type { SetupId } from './cutting-order.ts';

export const STATION_OF_SETUP: Readonly<Record<SetupId, string>> = {
  'glue-face': 'chambering',
  back: 'machining-back',
  top: 'machining-top',
};

/** The set-up that is cut there; undefined where none is. */
export const setupCutAt = (station: string): string | undefined =>
  Object.entries(STATION_OF_SETUP).find(([, at]) => at === station)?.[0];
