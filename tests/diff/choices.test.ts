/** Single edits of what a model is made of and with, of its neck and its words. All sizes are worked out by hand from the sample's own numbers, before any run. */
import { holds, THE_REST } from './editing.ts';
import type { Expected } from './editing.ts';

const table: Expected[] = [
  {
    // A glue and its clamps ask for the seam, not for the species; nor does the rack.
    edit: 'a back of another wood',
    in: 'model',
    find: 'species: red-alder, pieces: 2, sawn: flat, stock: alder-6-4',
    replace: 'species: limba, pieces: 2, sawn: flat, stock: limba-6-4',
    touched:
      'conditioning jointing planing picking rough-sawing sizing press trim-sawing machining-back machining-top sign-off',
    stays: 'edge-gluing lamination set-aside',
    shown: [['conditioning', /back.*stock.*Limba 6\/4.*Red alder 6\/4/i]],
    given: ['timber.back.species', 'card'],
  },
  {
    // 33 + 1.5 + 0.75 = 35.25 for a body on one spindle; a minute more.
    edit: 'a longer cycle of the top',
    in: 'model',
    find: 'cycle: 33 min',
    replace: 'cycle: 34 min',
    touched: 'machining-top',
    stays: THE_REST,
    shown: [['machining-top', /36\.3 min.*35\.3 min/i]],
    given: ['setups.top.cycle', 'card'],
  },
  {
    // Alder moves less along its rays than around them. No glue asks how a board was sawn.
    edit: 'a back sawn on the quarter',
    in: 'model',
    find: 'species: red-alder, pieces: 2, sawn: flat',
    replace: 'species: red-alder, pieces: 2, sawn: quarter',
    touched: 'conditioning',
    stays: 'planing edge-gluing rough-sawing trim-sawing lamination set-aside',
    shown: [['conditioning', /Back/i]],
    given: ['timber.back.sawn', 'card'],
  },
  {
    edit: 'another program of the top',
    in: 'model',
    find: "program: '4120'",
    replace: "program: '4125'",
    touched: 'machining-top',
    stays: THE_REST,
    shown: [['machining-top', /4125.*4120/i]],
    given: ['setups.top.program', 'card'],
  },
  {
    edit: 'a smaller cutter for the battery',
    in: 'model',
    find: 'depth: 15.0 ±0.6\n    corner: 6\n    cutter: mill-12',
    replace: 'depth: 15.0 ±0.6\n    corner: 6\n    cutter: mill-8',
    touched: 'machining-back',
    stays: THE_REST,
    shown: [['machining-back', /battery.*End mill 8.*End mill 12/i]],
    given: ['cavities.battery.cutter', 'card'],
  },
  {
    edit: 'another word to the sander',
    in: 'model',
    find: 'Sand the glue faces last.',
    replace: 'Sand the glue faces last of all.',
    touched: 'sizing',
    stays: THE_REST,
    shown: [['sizing', /last of all/i]],
    given: ['notes.sizing', 'card'],
  },
  {
    // The name of the model is on every card.
    edit: 'another title',
    in: 'model',
    find: 'title: Tarn',
    replace: 'title: Tern',
    touched: 'conditioning jointing planing sizing press machining-top sign-off',
    stays: '',
    given: ['title', 'card'],
  },
  {
    // A thinner plate leaves more of the same screw in the heel: 15.2 becomes 15.4.
    edit: 'a neck plate 0.2 thinner',
    in: 'base',
    find: 'plate: 2.0',
    replace: 'plate: 1.8',
    touched: 'sign-off',
    stays: THE_REST,
    shown: [['sign-off', /bite.*15\.4.*15\.2/i, 200_000]],
    given: ['neck.screws.plate', 'card'],
  },
  {
    // 622 + 2.5 = 624.5 from nut to saddle becomes 625.0; the bass one 2.5 further back goes from 5.0 to 5.5.
    edit: 'half a millimetre more compensation',
    in: 'model',
    find: 'compensation: 2.5',
    replace: 'compensation: 3.0',
    touched: 'sign-off',
    stays: THE_REST,
    shown: [
      ['sign-off', /625\.0/i, 500_000],
      ['sign-off', /5\.5 mm/i, 500_000],
    ],
    given: ['bridge.compensation', 'card'],
  },
  {
    edit: 'another caption under a picture',
    in: 'model',
    find: 'The kerf lies beside the line',
    replace: 'The kerf lies in the waste',
    touched: 'trim-sawing',
    stays: THE_REST,
    shown: [['trim-sawing', /in the waste/i]],
    given: ['pictures.kerf.caption', 'card'],
  },
  {
    edit: 'another program of the left hand alone',
    in: 'model',
    find: "program: '4121'",
    replace: "program: '4126'",
    touched: 'machining-top',
    stays: THE_REST,
    shown: [['machining-top', /4126.*4121/i]],
    given: ['setups.top.program', 'card'],
    both: true,
  },
  {
    // The heel is held against its pocket: 56.00 - 55.80 = 0.20 of play, 0.15 to 0.40 at worst, and no card says its limits.
    edit: 'a heel held closer',
    in: 'base',
    find: 'width: 55.8 ±0.05',
    replace: 'width: 55.8 ±0.04',
    touched: '',
    stays: THE_REST,
    given: ['neck.width', 'check'],
  },
];

holds('one choice of the model', table);
