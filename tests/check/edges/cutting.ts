/** Cutters and their numbers. */
import type { Edge } from './edge.ts';
import { inPlant, inTarn } from './edge.ts';

export const cutting: readonly Edge[] = [
  {
    check: 'chip-out-of-band',
    name: 'too thick a chip',
    edits: [inPlant('feed: 3.6 m/min', 'feed: 9.6 m/min')],
    found: ['plant.cutters.mill-8.feed'],
    says: ['5.28 m/min', 'at most'],
    not: ['thinned'],
  },
  {
    check: 'chip-out-of-band',
    name: 'too thin a chip',
    edits: [inPlant('feed: 3.6 m/min', 'feed: 0.36 m/min')],
    found: ['plant.cutters.mill-8.feed'],
    says: ['2.98 m/min', 'at least'],
    not: ['thinned'],
  },
  {
    check: 'chip-out-of-band',
    name: 'thinned by a narrow step over',
    edits: [
      inPlant(
        'feed: 3.6 m/min\n    plunge: 1.2 m/min\n    step-down: 4\n    step-over: 4',
        'feed: 3.6 m/min\n    plunge: 1.2 m/min\n    step-down: 4\n    step-over: 0.1',
      ),
    ],
    found: ['plant.cutters.mill-8.feed'],
    says: ['13.41 m/min', 'thinned'],
    notes: ['plant.cutters.mill-8.step-over', 'cavities.bridge-pickup.cutter'],
  },
  {
    check: 'cutter-too-fast',
    name: 'over what is marked on it',
    edits: [inPlant('most-speed: 16000 rpm\n    speed: 12000 rpm', 'most-speed: 16000 rpm\n    speed: 17000 rpm')],
    found: ['plant.cutters.facing-60.speed'],
    says: ['marked on it is 16000 rpm'],
    notes: ['plant.cutters.facing-60.most-speed', 'setups.back.cutters.face'],
  },
  {
    check: 'cutter-too-fast',
    name: 'over what the spindle turns',
    edits: [inPlant('most-speed: 16000 rpm\n    speed: 12000 rpm', 'most-speed: 26000 rpm\n    speed: 25000 rpm')],
    found: ['plant.cutters.facing-60.speed'],
    says: ['24000 rpm'],
    notes: ['plant.machines.router.spindle-most', 'setups.back.cutters.face'],
  },
  {
    check: 'cutter-too-fast',
    name: 'over both, which are alike',
    edits: [inPlant('most-speed: 16000 rpm\n    speed: 12000 rpm', 'most-speed: 24000 rpm\n    speed: 25000 rpm')],
    found: ['plant.cutters.facing-60.speed'],
    says: ['24000 rpm'],
    notes: ['plant.cutters.facing-60.most-speed', 'setups.back.cutters.face'],
  },
  {
    check: 'cutter-too-fast',
    name: 'just as fast as is marked on it',
    edits: [inPlant('most-speed: 16000 rpm\n    speed: 12000 rpm', 'most-speed: 16000 rpm\n    speed: 16000 rpm')],
    found: [],
  },
  {
    check: 'cutter-too-fast',
    name: 'as slow as the spindle turns',
    edits: [inPlant('most-speed: 16000 rpm\n    speed: 12000 rpm', 'most-speed: 16000 rpm\n    speed: 4000 rpm')],
    found: [],
  },
  {
    check: 'cutter-too-fast',
    name: 'slower than the spindle turns',
    edits: [inPlant('most-speed: 16000 rpm\n    speed: 12000 rpm', 'most-speed: 16000 rpm\n    speed: 3000 rpm')],
    found: ['plant.cutters.facing-60.speed'],
    says: ['4000 rpm'],
    notes: ['plant.machines.router.spindle-least', 'setups.back.cutters.face'],
  },
  {
    check: 'cutter-too-fast',
    name: 'of two set-ups, once',
    edits: [
      inPlant(
        'most-speed: 20000 rpm\n    speed: 18000 rpm\n    feed: 6',
        'most-speed: 20000 rpm\n    speed: 22000 rpm\n    feed: 6',
      ),
    ],
    found: ['plant.cutters.mill-16.speed'],
    says: ['22000 rpm'],
  },
  {
    check: 'cutter-too-fast',
    name: 'two at once, each told',
    edits: [
      inPlant(
        'most-speed: 20000 rpm\n    speed: 18000 rpm\n    feed: 6',
        'most-speed: 20000 rpm\n    speed: 22000 rpm\n    feed: 6',
      ),
      inPlant('most-speed: 16000 rpm\n    speed: 12000 rpm', 'most-speed: 16000 rpm\n    speed: 22000 rpm'),
    ],
    found: ['plant.cutters.facing-60.speed', 'plant.cutters.mill-16.speed'],
  },
  {
    check: 'step-too-deep',
    name: 'deeper than it is thick',
    edits: [inPlant('step-down: 8', 'step-down: 18')],
    found: ['plant.cutters.mill-16.step-down'],
    says: ['16.00 mm', 'thick'],
    notes: ['plant.cutters.mill-16.diameter', 'setups.back.cutters.perimeter'],
  },
  {
    check: 'step-too-deep',
    name: 'just as deep as it is thick',
    edits: [inPlant('step-down: 8', 'step-down: 16')],
    found: [],
  },
  {
    check: 'step-too-deep',
    name: 'deeper than it reaches',
    edits: [inPlant('reach: 45\n    length: 55', 'reach: 5\n    length: 55')],
    found: ['plant.cutters.ball-20.step-down'],
    says: ['5.00 mm', 'reaches'],
    notes: ['plant.cutters.ball-20.reach', 'setups.top.cutters.carve'],
  },
  {
    check: 'step-too-deep',
    name: 'reaches further than it stands out',
    edits: [inPlant('reach: 45\n    length: 55', 'reach: 45\n    length: 44')],
    found: ['plant.cutters.ball-20.length'],
    says: ['44.00 mm'],
    notes: ['plant.cutters.ball-20.reach', 'setups.top.cutters.carve'],
  },
  {
    check: 'step-too-deep',
    name: 'reaches as far as it stands out',
    edits: [inPlant('reach: 45\n    length: 55', 'reach: 45\n    length: 45')],
    found: [],
  },
  {
    check: 'step-too-deep',
    name: 'a drill may go deeper than it is thick',
    edits: [inPlant('speed: 8000 rpm\n    feed: 0.9 m/min', 'speed: 8000 rpm\n    feed: 0.9 m/min\n    step-down: 10')],
    found: [],
  },
  {
    check: 'step-over-too-wide',
    name: 'wider than it is thick',
    edits: [inPlant('step-over: 42', 'step-over: 62')],
    found: ['plant.cutters.facing-60.step-over'],
    says: ['wide', '60.00 mm'],
    notes: ['plant.cutters.facing-60.diameter', 'setups.back.cutters.face'],
  },
  {
    check: 'step-over-too-wide',
    name: 'as wide as it is thick',
    edits: [inPlant('step-over: 42', 'step-over: 60')],
    found: [],
  },
  {
    check: 'step-over-too-wide',
    name: 'wider than it is flat',
    edits: [inPlant('step-over: 42', 'step-over: 42\n    corner: 10')],
    found: ['plant.cutters.facing-60.step-over'],
    says: ['flat', '40.00 mm'],
    notes: ['plant.cutters.facing-60.diameter', 'plant.cutters.facing-60.corner', 'setups.back.cutters.face'],
  },
  {
    check: 'step-over-too-wide',
    name: 'not flat anywhere',
    edits: [inPlant('step-over: 42', 'step-over: 42\n    corner: 31')],
    found: ['plant.cutters.facing-60.step-over'],
    says: ['half of the cutter'],
  },
  {
    check: 'step-over-too-wide',
    name: 'a ball is flat nowhere, and its corner says nothing',
    edits: [inPlant('step-over: 1.5', 'step-over: 19\n    corner: 10')],
    found: [],
  },
  {
    check: 'cusp-too-high',
    name: 'of a ball, with the step that would do',
    edits: [inPlant('step-over: 1.5', 'step-over: 5.5')],
    found: ['plant.cutters.ball-20.step-over'],
    says: ['1.98 mm', 'the carve'],
    notes: ['plant.lines.arched.machined.marks', 'setups.top.cutters.carve'],
  },
  {
    check: 'corner-tighter-than-cutter',
    name: 'what is left in a corner',
    edits: [
      inTarn(
        'from: cap-face\n    depth: 20.0 ±0.6\n    corner: 4',
        'from: cap-face\n    depth: 20.0 ±0.6\n    corner: 3',
      ),
    ],
    found: ['cavities.bridge-pickup.corner'],
    says: ['0.41 mm', '6.0 mm²'],
    not: ['fits nowhere', 'clears it'],
  },
  {
    check: 'corner-tighter-than-cutter',
    name: 'it fits nowhere',
    edits: [
      inTarn(
        'length: 62, width: 70 }\n    at: { x: 80, y: -100 }\n    floor: 5.0 ±0.4\n    corner: 6',
        'length: 11, width: 70 }\n    at: { x: 80, y: -100 }\n    floor: 5.0 ±0.4\n    corner: 5',
      ),
    ],
    found: ['cavities.controls.corner'],
    says: ['fits nowhere'],
  },
  {
    check: 'drill-of-another-size',
    name: 'two hundredths off is the same',
    edits: [inTarn('diameter: 9.5\n', 'diameter: 9.52\n')],
    found: [],
  },
  {
    check: 'drill-of-another-size',
    name: 'three hundredths off is not',
    edits: [inTarn('diameter: 9.5\n', 'diameter: 9.53\n')],
    found: ['holes.volume-shaft.diameter'],
  },
  {
    check: 'plunge-too-fast',
    name: 'as fast as its feed',
    edits: [inPlant('plunge: 1.2 m/min', 'plunge: 3.6 m/min')],
    found: [],
  },
  {
    check: 'plunge-too-fast',
    name: 'faster',
    edits: [inPlant('plunge: 1.2 m/min', 'plunge: 3.7 m/min')],
    found: ['plant.cutters.mill-8.plunge'],
  },
  {
    check: 'blade-too-wide',
    name: 'at each line',
    edits: [inPlant('blade-width: 1/4 in', 'blade-width: 3/4 in')],
    found: ['outline.path', 'outline.path'],
    says: ['91.11 mm', '94.61 mm'],
  },
  {
    check: 'row-retired',
    name: 'what would do instead, cavity by cavity',
    edits: [inPlant('title: End mill 12\n', 'title: End mill 12\n    retired: 2026-01-05\n')],
    found: [
      'cavities.battery.cutter',
      'cavities.controls.cutter',
      'cavities.controls-cover.cutter',
      'cavities.neck-pocket.cutter',
    ],
    says: ['mill-8', 'another one'],
  },
  {
    check: 'row-retired',
    name: 'not one that is retired too',
    edits: [
      inPlant('title: End mill 12\n', 'title: End mill 12\n    retired: 2026-01-05\n'),
      inPlant('title: End mill 8\n', 'title: End mill 8\n    retired: 2026-01-05\n'),
    ],
    found: [
      'cavities.battery.cutter',
      'cavities.bridge-pickup.cutter',
      'cavities.controls.cutter',
      'cavities.controls-cover.cutter',
      'cavities.neck-pickup.cutter',
      'cavities.neck-pocket.cutter',
    ],
    says: ['another one'],
    not: ['Name mill-8'],
  },
  {
    check: 'row-retired',
    name: 'one that is to be retired does',
    edits: [
      inPlant('title: End mill 12\n', 'title: End mill 12\n    retired: 2026-01-05\n'),
      inPlant('title: End mill 8\n', 'title: End mill 8\n    retired: 2026-11-26\n'),
    ],
    found: [
      'cavities.battery.cutter',
      'cavities.controls.cutter',
      'cavities.controls-cover.cutter',
      'cavities.neck-pocket.cutter',
    ],
    says: ['Name mill-8'],
  },
  {
    check: 'row-retired',
    name: 'not one retired today',
    edits: [
      inPlant('title: End mill 12\n', 'title: End mill 12\n    retired: 2026-01-05\n'),
      inPlant('title: End mill 8\n', 'title: End mill 8\n    retired: 2026-11-25\n'),
    ],
    found: [
      'cavities.battery.cutter',
      'cavities.bridge-pickup.cutter',
      'cavities.controls.cutter',
      'cavities.controls-cover.cutter',
      'cavities.neck-pickup.cutter',
      'cavities.neck-pocket.cutter',
    ],
    says: ['another one'],
    not: ['Name mill-8'],
  },
  {
    check: 'row-retired',
    name: 'not one that is too short',
    edits: [
      inPlant('title: End mill 12\n', 'title: End mill 12\n    retired: 2026-01-05\n'),
      inPlant('reach: 32', 'reach: 14'),
    ],
    found: [
      'cavities.battery.cutter',
      'cavities.controls.cutter',
      'cavities.controls-cover.cutter',
      'cavities.neck-pocket.cutter',
    ],
    says: ['another one'],
  },
  {
    check: 'row-retired',
    name: 'a drill of the same size',
    edits: [
      inPlant('title: Drill 4.5\n', 'title: Drill 4.5\n    retired: 2026-01-05\n'),
      inPlant('diameter: 2.5\n    reach: 30', 'diameter: 4.52\n    reach: 30'),
    ],
    found: ['holes.ground-hole.drill', 'holes.neck-screw.drill'],
    says: ['Name d-2-5', 'another one'],
  },
  {
    check: 'row-retired',
    name: 'no drill of another size',
    edits: [
      inPlant('title: Drill 4.5\n', 'title: Drill 4.5\n    retired: 2026-01-05\n'),
      inPlant('diameter: 2.5\n    reach: 30', 'diameter: 4.47\n    reach: 30'),
    ],
    found: ['holes.ground-hole.drill', 'holes.neck-screw.drill'],
    says: ['another one'],
    not: ['d-2-5'],
  },
  {
    check: 'row-retired',
    name: 'of what mills the side, by its own numbers',
    edits: [
      inPlant('title: End mill 16\n', 'title: End mill 16\n    retired: 2026-01-05\n'),
      inPlant('reach: 48\n', 'reach: 60\n'),
    ],
    found: ['setups.back.cutters.perimeter', 'setups.top.cutters.perimeter'],
    says: ['Name mill-12'],
  },
  {
    check: 'row-retired',
    name: 'no thicker than it is',
    edits: [inPlant('title: End mill 8\n', 'title: End mill 8\n    retired: 2026-01-05\n')],
    found: ['cavities.bridge-pickup.cutter', 'cavities.neck-pickup.cutter'],
    says: ['another one'],
    not: ['Name mill-12'],
  },
  {
    check: 'saw-lines-crossed',
    name: 'a whole kerf at worst: 2.5 + 1.0 + 0.8',
    edits: [inPlant('rough-line: 6\n', 'rough-line: 4.3\n')],
    found: [],
  },
  {
    check: 'saw-lines-crossed',
    name: 'a tenth short of it',
    edits: [inPlant('rough-line: 6\n', 'rough-line: 4.2\n')],
    found: ['saw.rough.distance'],
    says: ['4.30 mm', '0.80 mm'],
    notes: ['saw.trim.distance', 'plant.machines.saw.kerf', 'plant.machines.saw.wander'],
  },
  {
    check: 'saw-lines-crossed',
    name: 'of a saw without a kerf only the lines count',
    edits: [inPlant('kerf: 1.0, wander: 0.8', 'wander: 0.8'), inPlant('rough-line: 6\n', 'rough-line: 2.6\n')],
    found: [],
  },
  {
    check: 'saw-lines-crossed',
    name: 'and they may not be one',
    edits: [inPlant('kerf: 1.0, wander: 0.8', 'wander: 0.8'), inPlant('rough-line: 6\n', 'rough-line: 2.5\n')],
    found: ['saw.rough.distance'],
    notes: ['saw.trim.distance'],
  },
  {
    check: 'form-not-made',
    name: 'the round it makes',
    edits: [
      inPlant(
        'cutters:\n',
        'cutters:\n  form: { title: Form, kind: form, makes: { round: 3 }, diameter: 20, reach: 12, length: 40, flutes: 2, most-speed: 20000 rpm, speed: 16000 rpm, feed: 5 m/min, step-down: 6 }\n',
      ),
      inTarn(
        'crown: { from: 95 } }\n',
        'crown: { from: 95 } }\nedges: { top: { round: 3, cutter: form }, back: { round: 3, cutter: form } }\n',
      ),
    ],
    found: [],
  },
  {
    check: 'form-not-made',
    name: 'a round it does not make, on both edges',
    edits: [
      inPlant(
        'cutters:\n',
        'cutters:\n  form: { title: Form, kind: form, makes: { round: 3 }, diameter: 20, reach: 12, length: 40, flutes: 2, most-speed: 20000 rpm, speed: 16000 rpm, feed: 5 m/min, step-down: 6 }\n',
      ),
      inTarn(
        'crown: { from: 95 } }\n',
        'crown: { from: 95 } }\nedges: { top: { round: 3.1, cutter: form }, back: { round: 3.1, cutter: form } }\n',
      ),
    ],
    found: ['edges.top.cutter', 'edges.back.cutter'],
    says: ['3.10 mm', 'one of 3.00 mm'],
    notes: ['edges.top.round', 'plant.cutters.form.makes.round', 'edges.back.round', 'plant.cutters.form.makes.round'],
  },
  {
    check: 'form-not-made',
    name: 'a bevel where a round is drawn',
    edits: [
      inPlant(
        'cutters:\n',
        'cutters:\n  form: { title: Form, kind: form, makes: { bevel: { slope: 45 deg, width: 18 } }, diameter: 20, reach: 12, length: 40, flutes: 2, most-speed: 20000 rpm, speed: 16000 rpm, feed: 5 m/min, step-down: 6 }\n',
      ),
      inTarn(
        'crown: { from: 95 } }\n',
        'crown: { from: 95 } }\nedges: { top: { round: 3, cutter: form }, back: { round: 3, cutter: form } }\n',
      ),
    ],
    found: ['edges.top.cutter', 'edges.back.cutter'],
    says: ['makes a bevel'],
    notes: [
      'edges.top.round',
      'plant.cutters.form.makes.bevel.slope',
      'edges.back.round',
      'plant.cutters.form.makes.bevel.slope',
    ],
  },
  {
    check: 'form-not-made',
    name: 'nobody says what it makes',
    edits: [
      inPlant(
        'cutters:\n',
        'cutters:\n  form: { title: Form, kind: form, diameter: 20, reach: 12, length: 40, flutes: 2, most-speed: 20000 rpm, speed: 16000 rpm, feed: 5 m/min, step-down: 6 }\n',
      ),
      inTarn(
        'crown: { from: 95 } }\n',
        'crown: { from: 95 } }\nedges: { top: { round: 3.1, cutter: form }, back: { round: 3.1, cutter: form } }\n',
      ),
    ],
    found: [],
  },
  {
    check: 'form-not-made',
    name: 'a bevel as wide as it makes',
    edits: [
      {
        file: 'models/plant/cutters.yaml',
        find: 'makes: { bevel: { slope: 13.7 deg, width: 18 } }',
        replace: 'makes: { bevel: { slope: 13.7 deg, width: 16 } }',
      },
    ],
    found: [],
    of: 'carr',
  },
  {
    check: 'form-not-made',
    name: 'a bevel wider than it makes',
    edits: [
      {
        file: 'models/plant/cutters.yaml',
        find: 'makes: { bevel: { slope: 13.7 deg, width: 18 } }',
        replace: 'makes: { bevel: { slope: 13.7 deg, width: 15.9 } }',
      },
    ],
    found: ['setups.top.cutters.carve'],
    of: 'carr',
    says: ['15.90 mm', '16.00 mm wide'],
    notes: ['carve.bevel.width', 'thickness.body.machined.land', 'plant.cutters.bevel-50.makes.bevel.slope'],
  },
  {
    check: 'form-not-made',
    name: 'as flat as the limits take',
    edits: [
      {
        file: 'models/plant/cutters.yaml',
        find: 'makes: { bevel: { slope: 13.7 deg, width: 18 } }',
        replace: 'makes: { bevel: { slope: 12.9 deg, width: 18 } }',
      },
    ],
    found: [],
    of: 'carr',
  },
  {
    check: 'form-not-made',
    name: 'flatter',
    edits: [
      {
        file: 'models/plant/cutters.yaml',
        find: 'makes: { bevel: { slope: 13.7 deg, width: 18 } }',
        replace: 'makes: { bevel: { slope: 12.8 deg, width: 18 } }',
      },
    ],
    found: ['setups.top.cutters.carve'],
    of: 'carr',
    says: ['3.66 mm to 4.14 mm'],
    notes: ['carve.bevel.width', 'thickness.body.machined.land', 'plant.cutters.bevel-50.makes.bevel.slope'],
  },
  {
    check: 'form-not-made',
    name: 'as steep as the limits take',
    edits: [
      {
        file: 'models/plant/cutters.yaml',
        find: 'makes: { bevel: { slope: 13.7 deg, width: 18 } }',
        replace: 'makes: { bevel: { slope: 14.5 deg, width: 18 } }',
      },
    ],
    found: [],
    of: 'carr',
  },
  {
    check: 'form-not-made',
    name: 'steeper',
    edits: [
      {
        file: 'models/plant/cutters.yaml',
        find: 'makes: { bevel: { slope: 13.7 deg, width: 18 } }',
        replace: 'makes: { bevel: { slope: 14.6 deg, width: 18 } }',
      },
    ],
    found: ['setups.top.cutters.carve'],
    of: 'carr',
    says: ['4.17 mm'],
  },
  {
    check: 'form-not-made',
    name: 'a round where a bevel is drawn',
    edits: [
      {
        file: 'models/plant/cutters.yaml',
        find: 'makes: { bevel: { slope: 13.7 deg, width: 18 } }',
        replace: 'makes: { round: 6 }',
      },
    ],
    found: ['setups.top.cutters.carve'],
    of: 'carr',
    says: ['makes a round', '13.7'],
    notes: ['carve.bevel.width', 'thickness.body.machined.land', 'plant.cutters.bevel-50.makes.round'],
  },
  {
    check: 'drill-of-another-size',
    name: 'of a jig, as thin as a reamer mends',
    edits: [
      inPlant(
        'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 9.98..10.00 }',
        'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 9.70..9.72 }',
      ),
    ],
    found: [],
  },
  {
    check: 'drill-of-another-size',
    name: 'of a jig, thinner',
    edits: [
      inPlant(
        'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 9.98..10.00 }',
        'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 9.69..9.71 }',
      ),
    ],
    found: ['plant.patterns.p2.holes.neck.diameter'],
    says: ['9.69 mm'],
    notes: ['plant.jigs.jig-p2-right.bushings.neck.drill'],
  },
  {
    check: 'drill-of-another-size',
    name: 'of a jig, as thick as may be',
    edits: [
      inPlant(
        'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 9.98..10.00 }',
        'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 10.28..10.30 }',
      ),
    ],
    found: [],
  },
  {
    check: 'drill-of-another-size',
    name: 'of a jig, thicker',
    edits: [
      inPlant(
        'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 9.98..10.00 }',
        'hand: right\n    registers-on: seam\n    seam-error: 0.3\n    bushings: { neck: { fit: H7, drill: 10.29..10.31 }',
      ),
    ],
    found: ['plant.patterns.p2.holes.neck.diameter'],
    says: ['10.31 mm'],
  },
  {
    check: 'pattern-not-mirrored',
    name: 'the mirror image',
    edits: [
      inPlant(
        'patterns:\n',
        'patterns:\n  p2-left:\n    title: P2 left\n    holes:\n      neck: { at: { x: 0, y: 200 }, diameter: 10, fit: H8 }\n      bridge: { at: { x: -24, y: 124 }, diameter: 8, fit: H8 }\n',
      ),
      inPlant('    title: Jig P2 left\n    pattern: p2\n', '    title: Jig P2 left\n    pattern: p2-left\n'),
    ],
    found: [],
    hand: 'left',
  },
  {
    check: 'pattern-not-mirrored',
    name: 'the other side',
    edits: [
      inPlant(
        'patterns:\n',
        'patterns:\n  p2-left:\n    title: P2 left\n    holes:\n      neck: { at: { x: 0, y: 200 }, diameter: 10, fit: H8 }\n      bridge: { at: { x: 24, y: 124 }, diameter: 8, fit: H8 }\n',
      ),
      inPlant('    title: Jig P2 left\n    pattern: p2\n', '    title: Jig P2 left\n    pattern: p2-left\n'),
    ],
    found: ['plant.patterns.p2-left.holes.bridge.at.x'],
    hand: 'left',
    says: ['x -24.00 mm'],
    notes: ['plant.patterns.p2.holes.bridge.at.x', 'plant.jigs.jig-p2-left.pattern'],
  },
  {
    check: 'pattern-not-mirrored',
    name: 'further up',
    edits: [
      inPlant(
        'patterns:\n',
        'patterns:\n  p2-left:\n    title: P2 left\n    holes:\n      neck: { at: { x: 0, y: 200 }, diameter: 10, fit: H8 }\n      bridge: { at: { x: -24, y: 125 }, diameter: 8, fit: H8 }\n',
      ),
      inPlant('    title: Jig P2 left\n    pattern: p2\n', '    title: Jig P2 left\n    pattern: p2-left\n'),
    ],
    found: ['plant.patterns.p2-left.holes.bridge.at.x'],
    hand: 'left',
    says: ['y 124.00 mm'],
  },
  {
    check: 'pattern-not-mirrored',
    name: 'said of the left alone',
    edits: [
      inPlant(
        'patterns:\n',
        'patterns:\n  p2-left:\n    title: P2 left\n    holes:\n      neck: { at: { x: 0, y: 200 }, diameter: 10, fit: H8 }\n      bridge: { at: { x: 24, y: 124 }, diameter: 8, fit: H8 }\n',
      ),
      inPlant('    title: Jig P2 left\n    pattern: p2\n', '    title: Jig P2 left\n    pattern: p2-left\n'),
    ],
    found: [],
  },
];
