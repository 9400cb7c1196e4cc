/** Single edits of stations, machines, gauges and small tables of the plant. All sizes are worked out by hand from the sample's own numbers, before any run. */
import { holds, THE_REST } from './editing.ts';
import type { Expected } from './editing.ts';

const table: Expected[] = [
  {
    edit: 'a lower mark on the press',
    in: 'plant',
    find: 'gauge-most: 14 MPa',
    replace: 'gauge-most: 13 MPa',
    touched: 'press',
    stays: THE_REST,
    shown: [['press', /13 MPa.*14 MPa/i]],
    given: ['plant.machines.press.gauge-most', 'card'],
  },
  {
    // 39.97 is no step of 0.02: inward to 39.96. All other ends of its limits are even.
    edit: 'a coarser depth gauge',
    in: 'plant',
    find: 'depth-gauge: { title: Depth gauge, reads: length, unit: mm, resolution: 0.01 mm',
    replace: 'depth-gauge: { title: Depth gauge, reads: length, unit: mm, resolution: 0.02 mm',
    touched: 'machining-back',
    stays:
      'conditioning jointing edge-gluing planing picking rough-sawing sizing lamination press trim-sawing sign-off set-aside',
    shown: [['machining-back', /controls.*39\.42–39\.96.*39\.42–39\.97/i]],
    given: ['plant.gauges.depth-gauge.resolution', 'card'],
  },
  {
    edit: 'another gauge at sizing, that reads as fine',
    in: 'plant',
    find: '    machine: wide-belt\n    gauges: { thickness: caliper }',
    replace: '    machine: wide-belt\n    gauges: { thickness: height-gauge }',
    touched: 'sizing',
    stays: THE_REST,
    shown: [['sizing', /Height gauge.*Caliper/i]],
    given: ['plant.stations.sizing.gauges.thickness', 'card'],
  },
  {
    edit: 'a notice for one station',
    in: 'plant',
    find: '  jointing:\n    title: Jointing\n',
    replace: '  jointing:\n    title: Jointing\n    notice: Fence checked at the start of the shift\n',
    touched: 'jointing',
    stays: THE_REST,
    shown: [['jointing', /Fence checked/i]],
    given: ['plant.stations.jointing.notice', 'card'],
  },
  {
    edit: 'every fourth piece at sizing',
    in: 'plant',
    find: '    gauges: { thickness: caliper }\n    every: 5\n    points: 8',
    replace: '    gauges: { thickness: caliper }\n    every: 4\n    points: 8',
    touched: 'sizing',
    stays: THE_REST,
    shown: [['sizing', /4 pieces.*5 pieces/i]],
    given: ['plant.stations.sizing.every', 'card'],
  },
  {
    edit: 'ten seconds more to load the router',
    in: 'plant',
    find: 'load-time: 90 s',
    replace: 'load-time: 100 s',
    touched: 'machining-back machining-top',
    stays: THE_REST,
    shown: [
      ['machining-back', /100 s.*90 s/i],
      ['machining-top', /100 s.*90 s/i],
    ],
    given: ['plant.machines.router.load-time', 'card'],
  },
  {
    edit: 'a finish called by another name',
    in: 'plant',
    find: 'blue-clear: { title: Blue,',
    replace: 'blue-clear: { title: Deep blue,',
    touched: 'conditioning jointing planing picking sizing press machining-top sign-off',
    stays: '',
    shown: [['picking', /Deep blue/i]],
    given: ['plant.finishes.blue-clear.title', 'card'],
  },
  {
    edit: 'a shim allowed for a floor a shade deeper',
    in: 'plant',
    find: 'out: deep, beyond: 0.5',
    replace: 'out: deep, beyond: 0.6',
    touched: 'machining-back machining-top set-aside',
    stays: THE_REST,
    shown: [['set-aside', /0\.6 mm.*0\.5 mm/i, 100_000]],
    given: ['plant.reworks.floor-deep.beyond', 'card'],
  },
  {
    edit: 'a wood that no model uses called by another name',
    in: 'plant',
    find: 'title: Limba\n',
    replace: 'title: Limba, light\n',
    touched: '',
    stays: THE_REST,
    given: ['plant.species.limba.title', 'record'],
  },
];

holds('one edit of what stations have', table);
