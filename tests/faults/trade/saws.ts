import type { ByHand } from '../by-hand.ts';

/** Bandsaws and the lines they follow. */
export const saws: readonly ByHand[] = [
  {
    name: 'carr: half-inch blade on the rough saw',
    floor: 'A half-inch blade does not get round a bay of 12: it binds, and the blade breaks.',
    model: 'carr',
    file: 'plant/machines',
    find: 'blade-width: 3/16 in',
    replace: 'blade-width: 1/2 in',
    expected: ['machines.rough-saw.blade-width', 'base/bight: outline.path', 'plant/lines: lines.bevelled.rough-line'],
    caution: 'With relief cuts it can be sawn; it takes longer.',
  },
  {
    name: 'holm: trim saw strays 2.8',
    floor: 'The trim line lies 2.5 outside the body: the saw runs into it.',
    model: 'holm',
    file: 'plant/machines',
    find: 'kerf: 1.0, wander: 0.8',
    replace: 'kerf: 1.0, wander: 2.8',
    expected: [
      'machines.trim-saw.wander',
      'plant/lines: lines.arched.trim-line',
      'plant/lines: lines.arched.rough-line',
      'plant/tacks: tacks.brad-30.edge',
      'plant/lines: lines.arched.tacks',
    ],
    several: 'the saw runs into the body, and the tacks find no room beside where it strays',
  },
  {
    name: 'tarn: trim line half a millimetre out',
    floor: 'The saw strays 0.8: it bites into the body, and the cutter has nothing to clean up.',
    model: 'tarn',
    file: 'plant/lines',
    find: 'trim-line: 2.5 # wander',
    replace: 'trim-line: 0.5 # wander',
    expected: ['lines.arched.trim-line', 'plant/machines: machines.trim-saw.wander'],
  },
  {
    name: 'brae: slab rough line 3 out',
    floor: 'Trim line 2.5, kerf 1.0: the rough saw cuts where the trim saw is to go.',
    model: 'brae',
    file: 'plant/lines',
    find: 'rough-line: 6',
    replace: 'rough-line: 3',
    expected: ['lines.slab.rough-line', 'lines.slab.trim-line', 'plant/machines: machines.rough-saw.wander'],
  },
  {
    name: 'tarn: arched rough line 4 out',
    floor: "Trim line, kerf and both saws' wander come to 5.9, before there is room for any tack.",
    model: 'tarn',
    file: 'plant/lines',
    find: 'rough-line: 14\n    trim-line: 2.5 # wander',
    replace: 'rough-line: 4\n    trim-line: 2.5 # wander',
    expected: [
      'lines.arched.rough-line',
      'lines.arched.trim-line',
      'lines.arched.tacks',
      'plant/machines: machines.rough-saw.wander',
    ],
    several: 'the saws meet, and no tack finds room between them',
  },
];
