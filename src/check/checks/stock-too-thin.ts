/** The board, at the thinnest the supplier delivers it, carries the part through to its last stage. */
import { boardOf, partsOf } from '../../facts/parts.ts';
import type { Part } from '../../facts/parts.ts';
import { row } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { gap, ideal, scallops, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'stock-too-thin',
  stage: 'derived',
  severity: 'error',
  why: 'Boards at the thin end of a delivery would come off the planer with a rough face, or too thin.',
  mend: 'Pick thicker stock, or give the part less to lose.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'species: red-alder, rough: 1-1/2 in, least-thickness: 1-1/2 in',
    fails: 'species: red-alder, rough: 1-1/2 in, least-thickness: 36.5',
  },
  sketch: section(slab({ top: 5, face: scallops(2, 58, 7, 0.7, 5) }), ideal('M 1 1 H 59'), gap(30, 1, 5.5)),
  run: (bench) => partsOf(bench.subject.spec).flatMap((part) => fault(bench, part)),
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, part: Part): Fault[] {
  const seen = look(facts, (use) => {
    const stock = row(plant.stock, use(boardOf(spec, part).stock), 'plant.stock');
    return {
      rowId: stock['least-thickness'].id,
      resawn: stock.resawn !== undefined,
      least: use.fact(`stock.${part}.delivered`),
      needed: use.fact(`stock.${part}.needed`),
      board: use.fact(`stock.${part}.board`),
      planed: use.fact(`thickness.part.${part}.planed`),
      rough: use.fact(`thickness.part.${part}.rough`),
      removal: use.fact(`least-removal.part.${part}.planed`),
    };
  });
  if (!seen) return [];
  const { rowId, resawn, least, needed, board, planed, rough, removal } = seen;
  if (least.value >= needed.value) return [];
  const thickest = planed.high ?? planed.value;
  const why =
    needed.value > thickest + removal.value
      ? `its rough stage at the thinnest, ${say(rough, rough.low ?? rough.value)}`
      : `${say(planed, thickest)} planed at the thickest + ${say(planed, removal.value)} to clean up`;
  const arrives = resawn ? 'The leaves of this stock come out at' : 'A board of this stock may be only';
  return [
    {
      at: `timber.${part}.stock`,
      what: `The ${part} needs ${say(planed, needed.value)} of rough wood (${why}). ${arrives} ${say(planed, least.value)}${resawn ? '' : ' thick'}.`,
      mend: `Name stock whose boards are at least ${say(planed, board.value)} thick.`,
      against: [
        { at: rowId, text: 'the thinnest board of this stock' },
        { at: `thickness.part.${part}.planed`, text: 'a number the planed thickness comes from' },
      ],
    },
  ];
}
