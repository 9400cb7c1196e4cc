/** The bridge's saddles reach the strings that pocket, heel and neck angle bring. */
import type { Length } from '../../units/quantity.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { offBy, say } from '../say.ts';
import { gap, line, neckSide, plate, rect, section, shape, slab } from '../sketch.ts';

const check: Check = {
  id: 'bridge-out-of-reach',
  stage: 'derived',
  severity: 'error',
  why: 'The strings lie too high or buzz, and no turn of the saddles mends it: the pocket is cut.',
  mend: 'Change the depth of the pocket or its fall, or fit another bridge.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'height: 9.5..16.0',
    fails: 'height: 4.0..8.0',
  },
  sketch: section(
    slab({ top: 7, right: 50, face: 'H 36 V 13 H 50' }),
    neckSide({ heel: 36.5, floor: 13, board: 32, top: 6 }),
    plate(6, 22, 7, 1.4),
    shape(rect(12, 3.4, 16, 5.6), 'metal', 'edge'),
    line('M 6 -1.2 L 59 2.6', 'thin'),
    gap(14, -0.6, 3.4),
  ),
  run: ({ subject: { spec }, facts }) => {
    const { height } = spec.bridge;
    if (!height) return [];
    const seen = look(facts, (use) => ({ band: use(height), strings: use.fact('bridge.string-height') }));
    if (!seen) return [];
    const { band, strings } = seen;
    const [low, high] = [strings.low ?? strings.value, strings.high ?? strings.value];
    if (low >= band.low! && high <= band.high!) return [];
    return [
      {
        at: height.id,
        what: `At the bridge line the strings run ${say(strings, strings.value)} over the top as drawn${offBy(strings)}: ${say(strings, low)} to ${say(strings, high)}. The saddles can be set from ${say(band, band.low!)} to ${say(band, band.high!)}.`,
        mend: mendOf(strings, [low, high], band),
        against: [{ at: 'bridge.string-height', text: 'a number the height comes from' }],
      },
    ];
  },
};
export default check;

/** By how much the strings are to come up or down, where that alone would do. */
function mendOf(strings: Length, [low, high]: readonly [number, number], band: Length): string {
  if (high - low > band.high! - band.low!)
    return 'Draw in the limits of pocket, heel and fall, or fit a bridge that reaches further.';
  const [by, way] = low < band.low! ? [band.low! - low, 'higher'] : [high - band.high!, 'lower'];
  return `Bring the strings ${say(strings, by)} ${way}, by the depth of the pocket or its fall, or fit another bridge.`;
}
