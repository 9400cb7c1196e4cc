/** Forms printed beside the cards: for control charts, travellers, first-piece reports. What joins cards and print for them. */
import type { Compiled, Printed } from './compile.ts';
import { textsOf, wished } from './plant-texts.ts';
import type { PrintWish } from './plant-texts.ts';
import { loadAssets } from './assets.ts';
import type { MadeCard } from './cards/card.ts';
import { chartSheets } from './cards/charts.ts';
import { firstPieceOf } from './cards/first-piece.ts';
import { travellerOf } from './cards/traveller.ts';
import type { Order } from './cards/traveller.ts';
import { inOrder, renderFinding } from './findings/render.ts';
import type { Host } from './host/host.ts';
import { printCharts } from './print/charts.ts';
import { printFirstPieces } from './print/first-piece.ts';
import type { FormPosting } from './print/form-posting.ts';
import type { FormsOf } from './print/forms.ts';
import type { PrintAssets } from './print/input.ts';
import { identifier } from './print/markup.ts';
import type { PrintOutput } from './print/print.ts';
import { printTravellers } from './print/traveller.ts';
import type { PostedTraveller } from './print/traveller.ts';

/** The cards of one model, and what is laid over a form that is made from them. */
export interface FormCards {
  readonly cards: readonly MadeCard[];
  readonly posting: FormPosting;
}

type Checked = Pick<Compiled, 'checked' | 'models'>;

type Refused = { readonly refused: string };

/** Chart forms of these models: for all stations, or for one. */
export function printChartForms(
  host: Host,
  compiled: Checked,
  on: string,
  station?: string,
  wish: PrintWish = {},
): Printed {
  const sheets = compiled.models.flatMap(({ cards, hands }) =>
    cards
      .filter(({ card }) => station === undefined || card.key.station === station)
      .flatMap(({ card }) => {
        const { subject, facts } = hands.find((one) => one.subject.hand === card.key.hand)!;
        return chartSheets(card, subject, facts);
      }),
  );
  return printWith(host, compiled, on, (of, assets) => printCharts({ sheets, ...of }, assets), wish);
}

/** The traveller of an order with its name among files; or why there is none. */
export function travellerFor(
  { cards, posting }: FormCards,
  compiled: Compiled,
  order: Order,
): PostedTraveller | Refused {
  const traveller = travellerOf(cards, compiled.checked.workspace.plant, order);
  if ('refused' in traveller) return traveller;
  const { model } = cards[0]!.card.key;
  const parts = [model, ...(order.hand === 'left' ? ['left'] : []), order.number === '' ? 'blank' : order.number];
  return { traveller, posting, name: identifier(...parts) };
}

export const printTravellerForms = (
  host: Host,
  compiled: Compiled,
  travellers: readonly PostedTraveller[],
  on: string,
): Printed => printWith(host, compiled, on, (of, assets) => printTravellers(travellers, of, assets));

/** First-piece reports of a model: of all its stations and hands, or of those asked for. */
export function printFirstPieceForms(
  host: Host,
  compiled: Compiled,
  { cards, posting }: FormCards,
  on: string,
  asked: { readonly station?: string; readonly hand?: string } = {},
): Printed | Refused {
  const { plant } = compiled.checked.workspace;
  const reports = cards.flatMap((made) => firstPieceOf(made, plant) ?? []);
  const hands = [...new Set(reports.map(({ key }) => key.hand))];
  if (asked.hand !== undefined && !hands.some((hand) => hand === asked.hand))
    return { refused: `It is not made ${asked.hand}-handed. There is: ${hands.join(', ')}.` };
  const stations = [...new Set(reports.map(({ key }) => key.station))];
  if (asked.station !== undefined && !stations.includes(asked.station))
    return { refused: `No first piece is measured at "${asked.station}". There is: ${stations.join(', ')}.` };
  const wanted = reports.filter(
    ({ key }) => key.station === (asked.station ?? key.station) && key.hand === (asked.hand ?? key.hand),
  );
  return printWith(host, compiled, on, (of, assets) =>
    printFirstPieces(
      wanted.map((report) => ({ report, posting })),
      of,
      assets,
    ),
  );
}

/** With the templates, the words and the paper of this workspace; mistakes in them shown at their places. */
export function printWith(
  host: Host,
  { checked }: Pick<Compiled, 'checked'>,
  date: string,
  print: (of: FormsOf, assets: PrintAssets) => PrintOutput,
  wish: PrintWish = {},
): Printed {
  const plant = wished(textsOf(checked.workspace.plant), wish);
  const { assets, findings, texts: own } = loadAssets(host, plant);
  const { name, paper } = plant;
  const output = print({ plantName: name, paper, date }, assets);
  const texts = new Map([...checked.workspace.texts, ...own]);
  const shown = inOrder([...findings, ...output.findings]).map((finding) => renderFinding(finding, texts));
  return { ...output, findings: shown };
}
