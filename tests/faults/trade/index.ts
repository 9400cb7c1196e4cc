import type { ByHand } from '../by-hand.ts';
import { bridge } from './bridge.ts';
import { carveAndStages } from './carve-and-stages.ts';
import { covers } from './covers.ts';
import { cutters } from './cutters.ts';
import { floorsAndWalls } from './floors-and-walls.ts';
import { gauges } from './gauges.ts';
import { gluing } from './gluing.ts';
import { gradesAndFinish } from './grades-and-finish.ts';
import { hardware } from './hardware.ts';
import { jigsAndFixtures } from './jigs-and-fixtures.ts';
import { leftHand } from './left-hand.ts';
import { limits } from './limits.ts';
import { locationAndPins } from './location-and-pins.ts';
import { mounts } from './mounts.ts';
import { neck } from './neck.ts';
import { notesAndDates } from './notes-and-dates.ts';
import { planing } from './planing.ts';
import { press } from './press.ts';
import { routeAndStations } from './route-and-stations.ts';
import { saws } from './saws.ts';
import { screws } from './screws.ts';
import { setups } from './setups.ts';
import { speedsAndFeeds } from './speeds-and-feeds.ts';
import { store } from './store.ts';
import { tacks } from './tacks.ts';
import { timber } from './timber.ts';
import { unitsAndDigits } from './units-and-digits.ts';
import { vacuum } from './vacuum.ts';
import { wiresAndShafts } from './wires-and-shafts.ts';

/** Faults of the trade: what an engineer, or a hand at the router, the press or the saw, would write wrong. Written without a look at the checks. */
export const traded: readonly ByHand[] = [
  ...timber,
  ...store,
  ...saws,
  ...planing,
  ...gluing,
  ...press,
  ...carveAndStages,
  ...floorsAndWalls,
  ...cutters,
  ...speedsAndFeeds,
  ...hardware,
  ...mounts,
  ...wiresAndShafts,
  ...covers,
  ...neck,
  ...bridge,
  ...locationAndPins,
  ...jigsAndFixtures,
  ...vacuum,
  ...gauges,
  ...limits,
  ...routeAndStations,
  ...setups,
  ...gradesAndFinish,
  ...tacks,
  ...screws,
  ...unitsAndDigits,
  ...leftHand,
  ...notesAndDates,
];
