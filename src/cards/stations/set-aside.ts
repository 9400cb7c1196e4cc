/**
 * The rack for what is out: which ways lead back from each station, who decides, what else a part may serve, and the tag that
 * hangs on a piece until then. No body passes it on its way.
 */
import { boardOf } from '../../facts/parts.ts';
import type { Part } from '../../facts/parts.ts';
import { serves } from '../../facts/serves.ts';
import type { Piece } from '../../facts/serves.ts';
import { cautions, partName } from '../common.ts';
import type { Arg, Table } from '../card.ts';
import { allReworks } from '../reworks.ts';
import type { Desk, Station } from '../station.ts';
import { say } from '../station.ts';

const station: Station = {
  id: 'set-aside',
  aside: true,
  on: () => true,
  after: [],
  card: (desk) => ({
    keyNumbers: [],
    steps: ['stop', 'tag', 'rack', 'decide', 'back', 'scrap'].map((step) =>
      say(`set-aside.step.${step}`, step === 'scrap' ? { who: desk.name(desk.row.decides) } : {}),
    ),
    tools: [],
    checks: [],
    whenOut: [say('set-aside.out.untagged')],
    cautions: cautions(desk, 'lifting'),
    drawings: [],
    tables: [...allReworks(desk), ...tag(desk)],
    signOff: [say('set-aside.sign.tag')],
  }),
  sheet: {
    columns: ['set-aside.column.cap', 'set-aside.column.back'],
    cells: (desk, others) => [servedBy(desk, ['cap'], others), servedBy(desk, ['back', 'slab'], others)],
  },
};
export default station;

/** Filled in where it is found, and by whoever decides. It stays on the piece. */
function tag(desk: Desk): readonly Table[] {
  const write = say('running.write-long');
  const form = (title: string, ids: readonly string[]): Table => ({
    place: 'form',
    title: say(`set-aside.${title}`, {
      model: desk.name(desk.subject.spec.title),
      hand: say(`hand.${desk.subject.hand}`),
    }),
    columns: [say('set-aside.column.what'), say('set-aside.column.written')],
    rows: ids.map((id) => [say(`set-aside.tag.${id}`), write]),
  });
  return [
    form('tag-found', ['order', 'piece', 'found-at', 'out', 'limit', 'reading', 'gauge', 'held', 'date']),
    form('tag-decided', ['way', 'as-far', 'again', 'finish', 'decided', 'measured']),
  ];
}

/** Models whose part can be made of this one, as sized: thinner, no larger, of the same wood. */
function servedBy(desk: Desk, parts: readonly Part[], others: readonly Desk[]): Arg {
  const part = parts.find((one) => desk.route.parts.includes(one));
  if (!part) return say('common.none');
  const own = sizeOf(desk, part);
  const found = others.flatMap((other): Arg[] => {
    const same = parts.find((one) => other.route.parts.includes(one));
    const size = same && sizeOf(other, same);
    if (!same || !size || !serves(own, size)) return [];
    const limits = other.span(`thickness.part.${same}.sized`, 'thickness');
    return [say('set-aside.serves', { model: other.name(other.subject.spec.title), part: partName(same), limits })];
  });
  return found.length === 0 ? say('set-aside.serves-none') : { kind: 'series', items: found };
}

function sizeOf({ subject: { spec }, use }: Desk, part: Part): Piece {
  const { species, sawn } = boardOf(spec, part);
  return {
    wood: `${use(species)} ${sawn ? use(sawn) : ''}`,
    pieces: use.fact(`blank.${part}.pieces`).value,
    lengthNm: use.fact('blank.length').value,
    widthNm: use.fact('blank.width').value,
    thickNm: use.fact(`thickness.part.${part}.sized`).value,
    model: use(spec.model),
  };
}
