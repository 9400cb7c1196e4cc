import type { ByHand } from '../by-hand.ts';

/** What a model says of its jig, fixtures and programs. */
export const locationAndPins: readonly ByHand[] = [
  {
    name: 'tarn: drilled by the jig of P3',
    floor: 'The back fixture has the pins of P2: the body does not go on.',
    model: 'tarn',
    file: 'tarn',
    find: 'jig: jig-p2-right',
    replace: 'jig: jig-p3-right',
    expected: ['location.jig', 'location', 'setups.back.pins', 'setups.back.fixture'],
  },
  {
    name: 'skerry: pinned by P2, drilled by P3',
    floor: 'The fixture is P3, the spec says P2.',
    model: 'skerry',
    file: 'skerry',
    find: 'pins: p3',
    replace: 'pins: p2',
    expected: ['setups.back.pins', 'setups.back.fixture', 'location.jig'],
  },
  {
    name: 'brae: back set up on the top fixture',
    floor: 'No pins for the pattern: the body lies loose under the cutter.',
    model: 'brae',
    file: 'brae',
    find: 'fixture: brae-back-right',
    replace: 'fixture: brae-top-right',
    expected: ['setups.back.fixture', 'setups.back.pins', 'setups.back'],
    several: 'its pattern, and that it holds by vacuum where clamps are said',
  },
  {
    name: 'holm: top on the fixture of the other hand',
    floor: 'A left fixture under a right body: its zones lie under the controls.',
    model: 'holm',
    file: 'holm',
    find: 'fixture: holm-top-right',
    replace: 'fixture: tarn-top-left',
    expected: ['setups.top.fixture', 'plant/location: fixtures.tarn-top-left.hand'],
    several: 'the hand, and each zone that lies wrong',
  },
  {
    name: 'ness: jig holes 120 deep',
    floor: 'A nought too many: through the slab and the bench.',
    model: 'ness',
    file: 'ness',
    find: 'depth: 12 ±1.0',
    replace: 'depth: 120 ±1.0',
    expected: ['location.depth', 'location'],
    several: 'through the piece, and past what cuts it away',
  },
];
