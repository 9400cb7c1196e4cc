/** Boards, glue, and the press. */
import type { Edge } from './edge.ts';
import { inPlant, inTarn } from './edge.ts';

export const press: readonly Edge[] = [
  {
    check: 'clamps-not-able',
    name: 'too much air for both',
    edits: [inPlant('clamp-most: 8 bar', 'clamp-most: 1 bar')],
    found: ['plant.machines.edge-gluer.clamp-bore', 'plant.machines.edge-gluer.clamp-bore'],
    says: ['2.6 bar', '4.9 bar'],
    notes: ['plant.machines.edge-gluer.clamp-most', 'plant.machines.edge-gluer.clamp-most'],
  },
  {
    check: 'clamps-not-able',
    name: 'of a part of one piece nothing is clamped',
    edits: [
      inPlant('clamp-most: 8 bar', 'clamp-most: 1 bar'),
      inTarn('back: { species: red-alder, pieces: 2,', 'back: { species: red-alder, pieces: 1,'),
    ],
    found: ['plant.machines.edge-gluer.clamp-bore'],
    says: ['2.6 bar'],
    not: ['4.9 bar'],
  },
  {
    check: 'clamps-not-able',
    name: 'no air suits',
    edits: [inPlant('edge-pressure: 700 ±200 kPa', 'edge-pressure: 700 ±1 kPa')],
    found: ['plant.machines.edge-gluer.clamp-bore', 'plant.machines.edge-gluer.clamp-bore'],
    says: ['2.2 bar', '2.1 bar', '3.9 bar'],
    notes: ['thickness.part.cap.rough', 'thickness.part.back.rough'],
  },
  {
    check: 'match-without-pair',
    name: 'three',
    edits: [inTarn('halves: 2, match: book', 'halves: 3, match: book')],
    found: ['timber.cap.halves'],
    says: ['3 pieces'],
  },
  {
    check: 'match-without-pair',
    name: 'one',
    edits: [inTarn('halves: 2, match: book', 'halves: 1, match: book')],
    found: ['timber.cap.halves'],
    says: ['one piece'],
  },
  {
    check: 'match-without-pair',
    name: 'one that is not matched',
    edits: [inTarn('halves: 2, match: book', 'halves: 1, match: none')],
    found: [],
  },
  {
    check: 'press-gauge-off-middle',
    name: 'too low on a long scale',
    edits: [inPlant('gauge-full-scale: 18 MPa', 'gauge-full-scale: 25 MPa')],
    found: ['plant.machines.press.gauge-full-scale'],
    says: ['7.63 MPa', '19.84 MPa', 'one stack'],
  },
  {
    check: 'press-gauge-off-middle',
    name: 'too high on a short one, of the row',
    edits: [inPlant('gauge-full-scale: 18 MPa', 'gauge-full-scale: 14.5 MPa')],
    found: ['plant.machines.press.gauge-full-scale'],
    says: ['15.26 MPa', '39.69 MPa', '2 side by side'],
  },
  {
    check: 'press-gauge-off-middle',
    name: 'one stack alone is no row',
    edits: [
      inPlant('gauge-full-scale: 18 MPa', 'gauge-full-scale: 14.5 MPa'),
      inPlant('side-by-side: 2', 'side-by-side: 1'),
    ],
    found: [],
  },
  {
    check: 'press-gauge-off-middle',
    name: 'no scale is right for so wide a band',
    edits: [inPlant('joint-pressure: 700 ±50 kPa', 'joint-pressure: 700 ±500 kPa')],
    found: ['plant.machines.press.gauge-full-scale', 'plant.machines.press.gauge-full-scale'],
    says: ['narrower band'],
    not: ['between'],
  },
  {
    check: 'press-gauge-off-middle',
    name: 'beyond the end of its scale',
    edits: [inPlant('gauge-full-scale: 18 MPa', 'gauge-full-scale: 10 MPa')],
    found: [],
  },
  {
    check: 'press-overloaded',
    name: 'two stacks',
    edits: [inPlant('gauge-most: 14 MPa', 'gauge-most: 11 MPa')],
    found: ['press.gauge-most'],
    says: ['11.45 MPa', 'one stack at a time', '2 stacks'],
  },
  {
    check: 'press-overloaded',
    name: 'one',
    edits: [inPlant('gauge-most: 14 MPa', 'gauge-most: 4 MPa')],
    found: ['press.gauge-most'],
    says: ['5.72 MPa', 'One stack', 'bigger press'],
  },
  {
    check: 'press-overloaded',
    name: 'by its rating',
    edits: [inPlant('capacity: 220 kN', 'capacity: 60 kN')],
    found: ['press.capacity'],
    says: ['90 kN', '60 kN'],
  },
  {
    check: 'press-overloaded',
    name: 'beyond the end of the scale',
    edits: [inPlant('gauge-full-scale: 18 MPa', 'gauge-full-scale: 10 MPa')],
    found: ['plant.machines.press.gauge-full-scale'],
    says: ['10.00 MPa'],
  },
  {
    check: 'press-overloaded',
    name: 'the scale ends where the rating does',
    edits: [
      inPlant('gauge-full-scale: 18 MPa', 'gauge-full-scale: 11 MPa'),
      inPlant('gauge-most: 14 MPa', 'gauge-most: 11 MPa'),
    ],
    found: ['press.gauge-most'],
  },
  {
    check: 'stack-does-not-fit-press',
    name: 'plate not reached, in a row',
    edits: [inPlant('closed-height: 120', 'closed-height: 180')],
    found: ['plant.machines.press.closed-height'],
    says: ['161.24 mm', 'each stack'],
  },
  {
    check: 'stack-does-not-fit-press',
    name: 'plate not reached, of one',
    edits: [inPlant('daylight: 400', 'daylight: 130')],
    found: ['plant.machines.press.closed-height'],
    says: ['90.62 mm'],
    not: ['each stack'],
  },
  {
    check: 'stack-does-not-fit-press',
    name: 'too high',
    edits: [inPlant('daylight: 400', 'daylight: 80')],
    found: ['plant.machines.press.daylight'],
    says: ['91.08 mm'],
  },
  {
    check: 'stack-does-not-fit-press',
    name: 'two do not lie on the plate',
    edits: [inPlant('plate: { length: 900, width: 550 }', 'plate: { length: 700, width: 350 }')],
    found: ['press.plate.length'],
    says: ['2 parts', '432.00 mm'],
  },
  {
    check: 'stack-does-not-fit-press',
    name: 'one does not',
    edits: [
      inPlant('plate: { length: 900, width: 550 }', 'plate: { length: 400, width: 350 }'),
      inPlant('side-by-side: 2', 'side-by-side: 1'),
    ],
    found: ['press.plate.length'],
    says: ['A part', 'bigger press'],
  },
  {
    check: 'stack-does-not-fit-press',
    name: 'two lie on it the one way',
    edits: [inPlant('plate: { length: 900, width: 550 }', 'plate: { length: 624, width: 432 }')],
    found: ['press.plate.length'],
  },
  {
    check: 'stack-does-not-fit-press',
    name: 'and the other',
    edits: [inPlant('plate: { length: 900, width: 550 }', 'plate: { length: 864, width: 312 }')],
    found: ['press.plate.length'],
  },
  {
    check: 'pair-moves-apart',
    name: 'what they may differ by',
    edits: [inPlant('pair-agree: 0.5 %', 'pair-agree: 1.2 %')],
    found: ['plant.machines.store.pair-agree'],
    says: ['0.9 %'],
  },
  {
    check: 'pair-moves-apart',
    name: 'the woods alone move too far',
    edits: [inPlant('joint-movement: 0.8', 'joint-movement: 0.1')],
    found: ['plant.machines.store.pair-agree'],
    says: ['woods alone'],
    not: ['at most.'],
  },
  {
    check: 'stock-too-thin',
    name: 'for its rough stage',
    edits: [
      inPlant(
        'species: red-alder, rough: 1-1/2 in, least-thickness: 1-1/2 in',
        'species: red-alder, rough: 1-1/2 in, least-thickness: 36.5',
      ),
    ],
    found: ['timber.back.stock'],
    says: ['38.10 mm', '36.50 mm'],
  },
  {
    check: 'seam-off-centre',
    name: 'set against the edge',
    edits: [
      inPlant(
        'Jig P2 right\n    pattern: p2\n    hand: right\n    registers-on: seam',
        'Jig P2 right\n    pattern: p2\n    hand: right\n    registers-on: edge',
      ),
    ],
    found: ['plant.jigs.jig-p2-right.registers-on'],
    says: ['3.30 mm', 'against the seam'],
  },
  {
    check: 'seam-off-centre',
    name: 'as far as the line bears',
    edits: [
      inPlant(
        'Jig P2 right\n    pattern: p2\n    hand: right\n    registers-on: seam\n    seam-error: 0.3',
        'Jig P2 right\n    pattern: p2\n    hand: right\n    registers-on: seam\n    seam-error: 0.5',
      ),
    ],
    found: [],
  },
  {
    check: 'seam-off-centre',
    name: 'set against the seam, and off',
    edits: [
      inPlant(
        'Jig P2 right\n    pattern: p2\n    hand: right\n    registers-on: seam\n    seam-error: 0.3',
        'Jig P2 right\n    pattern: p2\n    hand: right\n    registers-on: seam\n    seam-error: 0.6',
      ),
    ],
    found: ['plant.jigs.jig-p2-right.registers-on'],
    says: ['0.60 mm', 'mark lies closer'],
  },
  {
    check: 'feed-too-wide',
    name: 'at the jointer a piece, not the whole',
    edits: [
      inPlant(
        'kind: jointer, cut-per-pass: 0.8, least-feed: 300',
        'kind: jointer, cut-per-pass: 0.8, least-feed: 300, widest: 100',
      ),
    ],
    found: ['plant.machines.jointer.widest', 'plant.machines.jointer.widest'],
    says: ['Jointer'],
  },
  {
    check: 'feed-too-wide',
    name: 'a piece that goes',
    edits: [
      inPlant(
        'kind: jointer, cut-per-pass: 0.8, least-feed: 300',
        'kind: jointer, cut-per-pass: 0.8, least-feed: 300, widest: 200',
      ),
    ],
    found: [],
  },
  {
    check: 'feed-too-wide',
    name: 'one piece is not jointed',
    edits: [
      inPlant(
        'kind: jointer, cut-per-pass: 0.8, least-feed: 300',
        'kind: jointer, cut-per-pass: 0.8, least-feed: 300, widest: 100',
      ),
      inTarn('back: { species: red-alder, pieces: 2,', 'back: { species: red-alder, pieces: 1,'),
    ],
    found: ['plant.machines.jointer.widest'],
    says: ['cap'],
    not: ['back'],
  },
  {
    check: 'feed-too-thin',
    name: 'as it leaves the planer',
    edits: [inPlant('least-thickness: 6,', 'least-thickness: 17.2,')],
    found: ['plant.machines.planer.least-thickness'],
    says: ['17.05 mm'],
  },
  {
    check: 'feed-too-thin',
    name: 'as it leaves the belt',
    edits: [inPlant('least-thickness: 4,', 'least-thickness: 16.4,')],
    found: ['plant.machines.wide-belt.least-thickness'],
    says: ['16.30 mm'],
  },
];
