/** The card of one set-up at the router: what all set-ups have in common, and a place for what is a station's own. */
import type { CardBody, Check, Drawing, KeyNumber, Line, Table } from './card.ts';
import { cautions, key } from './common.ts';
import { byFloor, cavitiesOf } from './cutting-order.ts';
import type { SetupId } from './cutting-order.ts';
import {
  cutTitle,
  cuttingSteps,
  depthCheck,
  machiningChecks,
  machiningTools,
  settingSteps,
  setupOf,
} from './machining.ts';
import { depthTable } from './cut-tables.ts';
import { runningTables, setUpSheet } from './running.ts';
import { screwTable } from './screw-table.ts';
import { pocketChecks, pocketName } from './neck.ts';
import { locationTable } from './location-table.ts';
import { holdTables, openingSteps } from './hold-down.ts';
import { zonePlan } from './drawing/zones.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

/** Three to a row: more would be small print. All depths stand among the checks. */
const MOST_KEY_NUMBERS = 3;

export interface OwnOfStation {
  readonly keyNumbers?: readonly KeyNumber[];
  readonly steps?: readonly Line[];
  readonly checks?: readonly Check[];
  readonly drawing: Drawing;
  readonly drawings?: readonly Drawing[];
  readonly tables?: readonly Table[];
}

export function machiningCard(desk: Desk, setup: SetupId, own: OwnOfStation): CardBody {
  const held = desk.use(setupOf(desk, setup).hold) === 'vacuum';
  const vacuum = held ? (['vacuum'] as const) : [];
  const checks = [...(own.checks ?? []), ...cavityChecks(desk, setup), ...machiningChecks(desk, setup)];
  return {
    keyNumbers: [...(own.keyNumbers ?? []), ...depths(desk, setup, MOST_KEY_NUMBERS - (own.keyNumbers ?? []).length)],
    steps: [
      ...settingSteps(desk, setup),
      ...openingSteps(desk, setup),
      ...cuttingSteps(desk, setup),
      ...(own.steps ?? []),
      say('machining.step.measure'),
    ],
    tools: machiningTools(desk, setup),
    checks,
    whenOut: ['deep', 'shallow', 'moved', ...vacuum].map((out) => say(`machining.out.${out}`)),
    cautions: cautions(desk, 'first-cut', 'rotating', ...vacuum, 'metal', 'stopped', 'lockout'),
    drawings: [own.drawing, ...(own.drawings ?? []), ...zonePlan(desk, setup)],
    tables: [
      ...runningTables(desk, setup),
      ...depthTable(desk, setup),
      ...(own.tables ?? []),
      ...screwTable(desk, setup),
      ...locationTable(desk, setup),
      ...holdTables(desk, setup),
      ...setUpSheet(desk, setup, checks),
    ],
    signOff: [say('sign.program')],
  };
}

/** The neck pocket is measured at two points; every other cavity once. */
function cavityChecks(desk: Desk, setup: SetupId): readonly Check[] {
  const pocket = pocketName(desk);
  return cavitiesOf(desk, setup).flatMap((name) => (name === pocket ? pocketChecks(desk) : [depthCheck(desk, name)]));
}

/** Chosen by what too deep would do, told in the order they are cut and checked: a number is not looked for elsewhere. */
function depths(desk: Desk, setup: SetupId, most: number): readonly KeyNumber[] {
  const own = cavitiesOf(desk, setup);
  const chosen = new Set(byFloor(desk, own).slice(0, Math.max(0, most)));
  return own
    .filter((name) => chosen.has(name))
    .map((name) => {
      const { way } = desk.use.fact(`cavity.${name}.measuring`);
      const title = cutTitle(desk, 'cavities', name);
      const role = way === 'depth' ? 'depth' : 'height';
      return key(say(`machining.key.${way}`, { cavity: title }), desk.limits(`cavity.${name}.measured`, role));
    });
}
