/** Single edits of thicknesses, cuts and places of a model. All sizes are worked out by hand from the sample's own numbers, before any run. */
import { holds } from './editing.ts';
import type { Expected } from './editing.ts';

const table: Expected[] = [
  {
    // Planed lies 0.80 over sized, the blank is both parts and the glue line: each goes up by the same 0.02.
    edit: 'a cap 0.02 thicker',
    in: 'model',
    find: 'cap: { sized: 16.40 ±0.10 }',
    replace: 'cap: { sized: 16.42 ±0.10 }',
    touched: 'planing sizing press',
    stays: 'conditioning jointing rough-sawing trim-sawing',
    shown: [
      ['sizing', /Cap.*16\.32–16\.52/i, 20_000],
      ['planing', /Cap/i, 20_000],
      ['press', /Blank.*50\.64–51\.10/i, 20_000],
    ],
    given: ['stages.cap.sized', 'card'],
  },
  {
    // 0.10 + 0.08 + 0.03 = 0.21 either side of 50.85. What is planed hangs on the middle, and that stays.
    edit: 'a back held closer',
    in: 'model',
    find: 'back: { sized: 34.40 ±0.10 }',
    replace: 'back: { sized: 34.40 ±0.08 }',
    touched: 'sizing press',
    stays: 'conditioning jointing edge-gluing picking rough-sawing trim-sawing planing',
    shown: [
      ['sizing', /Back.*34\.32–34\.48.*limits tightened/i],
      ['press', /Blank.*50\.64–51\.06.*limits tightened/i],
    ],
    given: ['stages.back.sized', 'card'],
  },
  {
    // Floors over the faced back are what is left of 50.30 under each depth: bridge pickup 50.25 - 20.0 = 30.25.
    edit: 'faced 0.05 thinner',
    in: 'model',
    find: 'back-faced: 50.30 ±0.10',
    replace: 'back-faced: 50.25 ±0.10',
    touched: 'machining-back machining-top',
    stays: 'conditioning jointing edge-gluing planing picking rough-sawing sizing trim-sawing',
    shown: [
      ['machining-back', /50\.15–50\.35/i, -50_000],
      ['machining-top', /bridge pickup.*29\.75–30\.75/i, -50_000],
    ],
    given: ['stages.body.back-faced', 'card'],
  },
  {
    // 50.20 - (49.65 + 0.12) = 0.43 still comes off at least.
    edit: 'a crown 0.05 higher',
    in: 'model',
    find: 'crown: 49.60 ±0.12',
    replace: 'crown: 49.65 ±0.12',
    touched: 'machining-top sign-off',
    stays: 'conditioning jointing edge-gluing planing picking rough-sawing sizing trim-sawing',
    shown: [
      ['machining-top', /crown.*49\.53–49\.77/i, 50_000],
      ['sign-off', /crown.*49\.53–49\.77/i, 50_000],
    ],
    given: ['stages.body.machined.crown', 'card'],
  },
  {
    edit: 'sanded 0.05 lower at the crown',
    in: 'model',
    find: 'crown: 49.20 ±0.15',
    replace: 'crown: 49.15 ±0.15',
    touched: 'sign-off',
    stays:
      'conditioning jointing edge-gluing planing picking rough-sawing sizing lamination press trim-sawing machining-back',
    shown: [['sign-off', /Crown.*49\.00–49\.30/i, -50_000]],
    given: ['stages.body.white.crown', 'card'],
  },
  {
    // 50.30 - 19.2 = 31.10 over the faced back; the pickup sits 0.2 deeper in the white body: 16.65 becomes 16.85.
    edit: 'a pickup 0.2 deeper',
    in: 'model',
    find: 'depth: 19.0 ±0.2',
    replace: 'depth: 19.2 ±0.2',
    touched: 'machining-top sign-off',
    stays:
      'conditioning jointing edge-gluing planing picking rough-sawing sizing lamination press trim-sawing machining-back',
    shown: [
      ['machining-top', /neck pickup.*31\.00–31\.20/i, -200_000],
      ['sign-off', /neck pickup.*16\.85/i, 200_000],
    ],
    given: ['cavities.neck-pickup.depth', 'card'],
  },
  {
    // The plan of the flaws that may be there is hatched where the pickup is cut.
    edit: 'a pickup 1 mm nearer to the tail',
    in: 'model',
    find: 'at: { x: 0, y: 124 }',
    replace: 'at: { x: 0, y: 123 }',
    touched: 'picking machining-top',
    stays: 'conditioning jointing edge-gluing planing sizing',
    given: ['cavities.neck-pickup.at.y', 'card'],
  },
  {
    edit: 'a rounder corner of the controls',
    in: 'model',
    find: 'floor: 5.0 ±0.4\n    corner: 6',
    replace: 'floor: 5.0 ±0.4\n    corner: 7',
    touched: 'machining-back',
    stays: 'conditioning jointing edge-gluing planing rough-sawing sizing press trim-sawing',
    shown: [['machining-back', /controls.*7 mm/i, 1_000_000]],
    given: ['cavities.controls.corner', 'card'],
  },
  {
    edit: 'a floor of the controls 0.1 thicker',
    in: 'model',
    // The wood left grows; what is cut out of the faced back shrinks: 39.42–39.97 becomes 39.32–39.87, as the arch stays.
    find: 'floor: 5.0 ±0.4',
    replace: 'floor: 5.1 ±0.4',
    touched: 'machining-back',
    stays: 'conditioning jointing edge-gluing planing rough-sawing sizing lamination press trim-sawing',
    shown: [['machining-back', /controls.*39\.32–39\.87/i, -100_000]],
    given: ['cavities.controls.floor', 'card'],
  },
  {
    edit: 'a shaft 1 mm further out',
    in: 'model',
    find: 'at: { x: 70, y: -88 }',
    replace: 'at: { x: 71, y: -88 }',
    touched: 'machining-top',
    stays: 'conditioning jointing edge-gluing planing rough-sawing sizing trim-sawing',
    shown: [['machining-top', /volume shaft.*71 mm/i, 1_000_000]],
    given: ['holes.volume-shaft.at.x', 'card'],
  },
  {
    // 50.30 - 25.2 = 25.10 over the faced back.
    edit: 'a hole for a bushing 0.2 deeper',
    in: 'model',
    find: 'at: { x: -37, y: -3 },\n      diameter: 11,\n      from: cap-face,\n      depth: 25 ±0.5',
    replace: 'at: { x: -37, y: -3 },\n      diameter: 11,\n      from: cap-face,\n      depth: 25.2 ±0.5',
    touched: 'machining-top sign-off',
    stays: 'conditioning jointing edge-gluing planing picking rough-sawing sizing trim-sawing machining-back',
    shown: [['machining-top', /stud a.*24\.70–25\.50/i, -200_000]],
    given: ['holes.stud-a.depth', 'card'],
  },
  {
    edit: 'a shallower recurve',
    in: 'model',
    find: 'recurve: { at: 26, depth: 0.8 }',
    replace: 'recurve: { at: 26, depth: 0.7 }',
    touched: 'machining-top',
    stays: 'conditioning jointing edge-gluing planing picking rough-sawing sizing trim-sawing',
    shown: [['machining-top', /0\.7 mm/i, -100_000]],
    given: ['carve.recurve.depth', 'card'],
  },
  {
    // At the waist, where nothing is widest: blank, seam and clamps stay as they are.
    edit: 'a waist 1 mm fuller on one side',
    in: 'model',
    find: '120 -30 120 20 C 120 70',
    replace: '120 -30 121 20 C 120 70',
    touched: 'jointing picking rough-sawing trim-sawing machining-back machining-top sign-off',
    stays: 'conditioning edge-gluing set-aside',
    given: ['outline.path', 'card'],
  },
  {
    edit: 'location holes 0.5 less deep',
    in: 'model',
    find: 'depth: 12 ±1.0',
    replace: 'depth: 11.5 ±1.0',
    touched: 'rough-sawing',
    stays: 'conditioning jointing edge-gluing planing sizing',
    shown: [['rough-sawing', /11\.5 mm/i, -500_000]],
    given: ['location.depth', 'card'],
  },
  {
    edit: 'a pin in the joint 1 mm further out',
    in: 'model',
    find: 'pin-a: { at: { x: -80, y: 150 }',
    replace: 'pin-a: { at: { x: -81, y: 150 }',
    touched: 'lamination',
    stays: 'conditioning jointing edge-gluing planing picking rough-sawing sizing trim-sawing',
    shown: [['lamination', /-81\.0 mm/i, -1_000_000]],
    given: ['tacks.pin-a.at.x', 'card'],
  },
];

holds('one size of the model', table);
