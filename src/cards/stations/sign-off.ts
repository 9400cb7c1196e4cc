/** Sign-off: the machined body, proved before it leaves the department. */
import { pointsOf } from '../../facts/parts.ts';
import { byEye, cautions, key, one, often } from '../common.ts';
import type { Line, Table } from '../card.ts';
import { hardwareTable, partsTried } from '../hardware-table.ts';
import type { Desk } from '../station.ts';
import { leftMap, mapTable } from '../drawing/left-map.ts';
import { neckChecks, neckTables } from '../neck.ts';
import { plan, topPoint } from '../drawing/plan.ts';
import { across, lengthwise } from '../drawing/section.ts';
import { highestPoint } from '../../facts/parts.ts';
import type { Station } from '../station.ts';
import { say } from '../station.ts';

/** How far both cuts of the perimeter may lie apart; by feel where the plant does not say. */
function stepLine(desk: Desk): Line {
  if (desk.use.fact('perimeter.most-step') === undefined) return say('sign-off.check.step');
  return say('sign-off.check.step-most', { step: desk.figure('perimeter.most-step', { decimals: 1, single: true }) });
}

/** Pins in the joint stay where they are: they are no metal to be found. */
function metalLine(desk: Desk): Line {
  const pins = desk.route.parts.includes('cap') && desk.use.fact('tacks.in-body').value > 0;
  if (!pins) return say('sign-off.check.metal');
  return say('sign-off.check.metal-pins', { count: desk.figure('tacks.in-body') });
}

/** What the finished body weighs, where it balances, where it is thinnest. */
function bodyTable(desk: Desk): Table {
  const thinnest = desk.use.fact('body.thinnest');
  const place = thinnest
    ? [
        desk.figure('body.thinnest-x', { single: true }),
        desk.figure('body.thinnest-y', { single: true }),
        desk.figure('body.least-left', { decimals: 1, single: true }),
        desk.figure('body.worst-left', { decimals: 1, single: true, worst: true }),
      ]
    : Array.from({ length: 4 }, () => say('common.none'));
  const columns = ['mass', 'balance-x', 'balance-y', 'thinnest-x', 'thinnest-y', 'left', 'left-worst'];
  return {
    title: say('sign-off.body'),
    columns: columns.map((column) => say(`column.${column}`)),
    rows: [
      [
        desk.figure('body.mass', { decimals: 1 }),
        desk.figure('body.balance.x', { decimals: 0, single: true }),
        desk.figure('body.balance.y', { decimals: 0, single: true }),
        ...place,
      ],
    ],
  };
}

const station: Station = {
  id: 'sign-off',
  on: () => true,
  after: ['machining-back', 'machining-top'],
  card: (desk) => {
    const { spec } = desk.subject;
    const thickest = `thickness.body.machined.${highestPoint(spec)}` as const;
    const goNoGo = desk.gauge('go-no-go').name;
    return {
      keyNumbers: [
        key(say('sign-off.key.machined', { point: topPoint(desk) }), desk.limits(thickest, 'thickness')),
        key(say('sign-off.key.joint'), desk.figure('neck.joint-line', { decimals: 1 })),
        key(say('sign-off.key.scale'), desk.figure(spec.neck.scale)),
      ],
      steps: [
        say('sign-off.step.count'),
        say('sign-off.step.first-piece'),
        say('sign-off.step.go-no-go'),
        say('sign-off.step.look'),
        say('sign-off.step.number'),
        say('sign-off.step.sign'),
      ],
      tools: [
        { role: say('tool.thickness'), name: desk.gauge('thickness').name },
        { role: say('tool.go-no-go'), name: goNoGo },
      ],
      checks: [
        ...pointsOf(spec, 'machined').map((point) => ({
          what: say('sign-off.check.machined', { point: say(`point.${point}`) }),
          limits: desk.limits(`thickness.body.machined.${point}`, 'thickness'),
          gauge: desk.gauge('thickness').name,
          often: often(desk),
          boxes: [one],
        })),
        ...neckChecks(desk, goNoGo),
        byEye(desk, say('sign-off.check.cavities'), goNoGo),
        ...partsTried(desk, goNoGo),
        byEye(desk, stepLine(desk)),
        byEye(desk, say('sign-off.check.tear-out')),
        byEye(desk, metalLine(desk)),
      ],
      whenOut: [say('sign-off.out.any')],
      cautions: cautions(desk, 'lifting'),
      drawings: [
        plan(desk, { caption: say('caption.top'), view: 'top', setup: 'top' }),
        leftMap(desk),
        ...across(desk),
        lengthwise(desk),
      ],
      tables: [
        mapTable(desk),
        bodyTable(desk),
        ...hardwareTable(desk),
        {
          title: say('sign-off.white'),
          columns: [say('column.point'), say('column.machined'), say('column.white'), say('column.removal')],
          rows: pointsOf(spec, 'white').map((point) => [
            say(`point.${point}`),
            desk.limits(`thickness.body.machined.${point}`, 'thickness'),
            desk.span(`thickness.body.white.${point}`, 'thickness'),
            desk.span(`removal.body.white.${point}`, 'thickness'),
          ]),
        },
        ...neckTables(desk),
      ],
      signOff: [say('sign.order')],
    };
  },
  sheet: {
    columns: ['sheet-column.body-out', 'sheet-column.joint'],
    cells: (desk) => [
      desk.limits(`thickness.body.machined.${highestPoint(desk.subject.spec)}`, 'thickness'),
      desk.figure('neck.joint-line', { decimals: 1 }),
    ],
  },
};
export default station;
