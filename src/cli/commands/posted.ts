/** platen posted: what must hang at each station today, and what to take down. */
import type { Command } from 'commander';
import type { Start } from '../../release/entries.ts';
import { downOn, hangingOn } from '../../release/wall.ts';
import type { Down, Hanging } from '../../release/wall.ts';
import { offer } from '../../findings/nearest.ts';
import type { Common, Io } from '../io.ts';
import { opened } from '../opened.ts';
import { EXIT } from '../io.ts';

interface Options extends Common {
  readonly station?: string;
  readonly json?: boolean;
}

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('posted')
    .description('list what must hang at each station, and what to take down')
    .option('--station <station>', 'only that station')
    .option('--json', 'as JSON')
    .action((options: Options) => done(posted(options, io)));
}

function posted(options: Options, io: Io): number {
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const { on } = ledger;
  const { known, state } = ledger;
  const at = ({ card }: { card: Hanging['card'] }) =>
    options.station === undefined || card.key.station === options.station;
  const up = hangingOn(known, state);
  const down = downOn(known, state);
  const stations = [...new Set([...up, ...down].map(({ card }) => card.key.station))];
  if (options.station !== undefined && !stations.includes(options.station)) {
    io.err(`No released card is of station "${options.station}". ${offer(options.station, stations)}\n`);
    return EXIT.usage;
  }
  const [hanging, falling] = [up.filter(at), down.filter(at)];
  if (options.json) io.out(`${JSON.stringify(asJson(hanging, falling, on), undefined, 2)}\n`);
  else io.out(asText(hanging, falling, on));
  return EXIT.good;
}

function asText(up: readonly Hanging[], down: readonly Down[], on: string): string {
  if (up.length + down.length === 0) return `Nothing is released by ${on}.\n`;
  const stations = [...new Map([...up, ...down].map(({ card }) => [card.key.station, card.station])).entries()];
  const lines = stations.flatMap(([id, name]) => [
    name,
    ...up.filter(({ card }) => card.key.station === id).map((one) => `  ${hangLine(one)}`),
    ...down.filter(({ card }) => card.key.station === id).map((one) => `  ${downLine(one)}`),
  ]);
  return `On ${on}:\n${lines.join('\n')}\n`;
}

const nameOf = (title: string, hand: string): string => (hand === 'left' ? `${title}, left hand` : title);

function hangLine({ card, title, since, range, until, holds, deviations }: Hanging): string {
  const notes = [
    `content since ${since}`,
    ...(range.from ? [`for bodies ${begin(range.from)}`] : []),
    ...(range.to ? [`not for bodies ${begin(range.to)}`] : []),
    ...(until ? [`run-out until ${until}`] : []),
    ...holds.map(({ held, lot, reason }) => `HELD: ${lot === undefined ? held : `${held} ${lot}`} (${reason})`),
    ...deviations.map(({ now, was, until: last }) => `for a while ${now} instead of ${was}, until ${last}`),
  ];
  return `hang  ${card.code}  ${nameOf(title, card.key.hand)}: ${notes.join('; ')}`;
}

const begin = (start: Start): string =>
  'date' in start ? `begun from ${start.date} on` : `from order ${start.order} on`;

const downLine = ({ card, title, revision, why, by }: Down): string =>
  `pull  ${card.code}  ${nameOf(title, card.key.hand)}: ${revision} is ${why}${by === undefined ? '' : ` by ${by}`}`;

const asJson = (up: readonly Hanging[], down: readonly Down[], on: string) => ({
  on,
  hang: up.map(({ card, model, since, range, until, holds, deviations, of }) => ({
    station: card.key.station,
    model,
    hand: card.key.hand,
    code: card.code,
    release: of.released.revision,
    since,
    range,
    ...(until === undefined ? {} : { until }),
    holds,
    deviations,
  })),
  pull: down.map(({ card, revision, why, by }) => ({
    station: card.key.station,
    model: card.key.model,
    hand: card.key.hand,
    code: card.code,
    release: revision,
    why,
    ...(by === undefined ? {} : { by }),
  })),
});
