/** Single edits of glues, lines, jigs and fixtures of the plant. All sizes are worked out by hand from the sample's own numbers, before any run. */
import { holds, THE_REST } from './editing.ts';
import type { Expected } from './editing.ts';

const table: Expected[] = [
  {
    // 8 +0.022 of the hole less 7.90 of the thinnest pin: 0.02 more play than with 7.92.
    edit: 'a thinner second pin under the back',
    in: 'plant',
    find: 'tarn-back-right:\n    title: Tarn back R\n    pattern: p2\n    hand: right\n    pins: { neck: { fit: g6 }, bridge: { kind: diamond, diameter: 7.92..7.94',
    replace:
      'tarn-back-right:\n    title: Tarn back R\n    pattern: p2\n    hand: right\n    pins: { neck: { fit: g6 }, bridge: { kind: diamond, diameter: 7.90..7.92',
    touched: 'machining-back',
    stays: 'conditioning jointing edge-gluing planing picking rough-sawing sizing lamination press trim-sawing',
    shown: [['machining-back', /Play, at most.*0\.13.*0\.11/i, 20_000]],
    given: ['plant.fixtures.tarn-back-right.pins.bridge.diameter', 'card'],
  },
  {
    edit: 'a jig called by another name',
    in: 'plant',
    find: 'title: Jig P2 right',
    replace: 'title: Jig P2 right, new',
    touched: 'rough-sawing',
    stays: THE_REST,
    shown: [['rough-sawing', /Jig P2 right, new/i]],
    given: ['plant.jigs.jig-p2-right.title', 'card'],
  },
  {
    edit: 'a glue that stays open a minute longer',
    in: 'plant',
    find: 'open-time: 8 min',
    replace: 'open-time: 9 min',
    touched: 'lamination press',
    stays:
      'conditioning jointing edge-gluing planing picking rough-sawing sizing trim-sawing machining-back machining-top sign-off',
    shown: [
      ['lamination', /9 min.*8 min/i],
      ['press', /9 min/i],
    ],
    given: ['plant.adhesives.lamination-white.open-time', 'card'],
  },
  {
    edit: 'a longer hold under the side clamps',
    in: 'plant',
    find: 'hold: 60 s',
    replace: 'hold: 70 s',
    touched: 'edge-gluing',
    stays: THE_REST,
    shown: [['edge-gluing', /70 s.*60 s/i]],
    given: ['plant.adhesives.edge-resin.hold', 'card'],
  },
  {
    edit: 'more glue on the face',
    in: 'plant',
    find: 'spread: 170 g/m²',
    replace: 'spread: 180 g/m²',
    touched: 'lamination',
    stays:
      'conditioning jointing edge-gluing planing picking rough-sawing sizing press trim-sawing machining-back machining-top',
    shown: [['lamination', /180 g\/m².*170 g\/m²/i]],
    given: ['plant.adhesives.lamination-white.spread', 'card'],
  },
  {
    // Planed is 34.40 + 0.75, and the shim of the rack counts from it; what is sized takes 0.75 off, and its own limits stay.
    edit: 'a back planed 0.05 closer to its size',
    in: 'plant',
    find: '      rough: { over: 2.90 +1.2/-0, least-removal: { flatness: 1.2, marks: 0.8, floor: 0.4 } }\n      planed: { over: 0.80 ±0.15',
    replace:
      '      rough: { over: 2.90 +1.2/-0, least-removal: { flatness: 1.2, marks: 0.8, floor: 0.4 } }\n      planed: { over: 0.75 ±0.15',
    touched: 'planing sizing set-aside',
    stays: 'conditioning rough-sawing lamination press trim-sawing machining-back machining-top sign-off',
    shown: [
      ['planing', /Back/i, -50_000],
      ['sizing', /Back.*35\.00–35\.30/i, -50_000],
    ],
    given: ['plant.lines.arched.back.planed.over', 'card'],
  },
  {
    // The blank grows by 1 all round: 2 in length, and wider wood moves more in the store. What is glued reaches to the rough line, so there is more of it to press.
    edit: 'a rough line 1 mm further out',
    in: 'plant',
    find: 'rough-line: 6',
    replace: 'rough-line: 7',
    touched: 'conditioning jointing picking rough-sawing lamination press',
    stays: 'machining-back machining-top sign-off set-aside',
    shown: [
      ['rough-sawing', /7 mm.*6 mm/i, 1_000_000],
      ['jointing', /451 mm.*449 mm/i, 2_000_000],
    ],
    given: ['plant.lines.arched.rough-line', 'card'],
  },
  {
    edit: 'a trim line 0.5 mm further out',
    in: 'plant',
    find: 'trim-line: 2.5',
    replace: 'trim-line: 3.0',
    touched: 'trim-sawing',
    stays: 'conditioning edge-gluing planing sizing press set-aside',
    shown: [['trim-sawing', /3(\.0)? mm.*2\.5 mm/i, 500_000]],
    given: ['plant.lines.arched.trim-line', 'card'],
  },
  {
    edit: 'thinner walls allowed: what is checked and on no card',
    in: 'plant',
    find: 'least-wall: 2.0',
    replace: 'least-wall: 1.9',
    touched: '',
    stays: THE_REST,
    given: ['plant.lines.arched.least-wall', 'check'],
  },
];

holds('one edit of the plant', table);
