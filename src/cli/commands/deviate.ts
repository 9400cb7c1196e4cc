/** platen deviate MODEL FACT: other limits for a while, in bold on the card beside those they stand for; it ends by itself. */
import { InvalidArgumentError } from 'commander';
import type { Command } from 'commander';
import { checkAll } from '../../compile.ts';
import { offer } from '../../findings/nearest.ts';
import { enter } from '../../release/enter.ts';
import { hangingOn } from '../../release/wall.ts';
import { parseQuantity } from '../../units/parse.ts';
import { formatLimits } from '../../units/format.ts';
import { kindName } from '../../units/describe.ts';
import type { Kind } from '../../units/quantity.ts';
import { findUnit } from '../../units/unit.ts';
import { day } from '../day.ts';
import type { Common, Io } from '../io.ts';
import { opened } from '../opened.ts';
import { EXIT } from '../io.ts';
import { peopleOf, signed } from '../ledger-options.ts';
import type { Signed } from '../ledger-options.ts';

interface Options extends Common, Signed {
  readonly to?: string;
  readonly until?: string;
  readonly count?: number;
}

/** More boxes to tick do not fit on a card. */
const MOST_BODIES = 60;

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('deviate')
    .description('other limits for a while, until a day or for a count of bodies')
    .argument('<model>', 'id of a model')
    .argument('<fact>', 'what has the limits, as platen trace and the chart forms call it')
    .option('--to <limits>', 'the limits for that time, as in 16.25..16.50 mm')
    .option('--until <date>', 'the last day', day)
    .option('--count <bodies>', 'for so many bodies at most', count)
    .option('--reason <text>', 'why')
    .option('--name <name>', 'who, as the plant writes it')
    .action((model: string, fact: string, options: Options) => done(deviate(model, fact, options, io)));
}

function count(text: string): number {
  if (/^[1-9]\d?$/.test(text) && Number(text) <= MOST_BODIES) return Number(text);
  throw new InvalidArgumentError(`It is a number of bodies, ${MOST_BODIES} at most.`);
}

function deviate(model: string, fact: string, options: Options, io: Io): number {
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const { host, on } = ledger;
  const refuse = (text: string): number => {
    io.err(`${text}\n`);
    return EXIT.usage;
  };
  const own = hangingOn(ledger.known, ledger.state).filter((one) => one.model === model);
  if (own.length === 0) return refuse(`No card of "${model}" hangs on ${on}: only a released card can deviate.`);
  const limits = own.flatMap(({ card }) => card.limits);
  const found = limits.find((one) => one.fact === fact);
  if (!found)
    return refuse(
      `No card of ${model} has limits of "${fact}". ${offer(
        fact,
        limits.map((one) => one.fact),
      )}`,
    );
  if (options.until === undefined) return refuse('Give the last day: --until YYYY-MM-DD. A deviation ends by itself.');
  if (options.until < on) return refuse(`${options.until} is past: a deviation holds from the day it is entered.`);
  const now = limitsText(options.to, found.text);
  if ('wrong' in now) return refuse(now.wrong);
  const by = signed(options, peopleOf(checkAll(host, on)), io);
  if (!by) return EXIT.usage;
  const done = enter(host, () => ({
    act: 'deviation',
    on,
    ...by,
    model,
    fact,
    was: found.text,
    now: now.text,
    until: options.until!,
    ...(options.count === undefined ? {} : { count: options.count }),
  }));
  if ('failed' in done) {
    io.err(`${done.failed}\n`);
    return EXIT.errors;
  }
  const cards = own
    .filter(({ card }) => card.limits.some((one) => one.fact === fact && one.text === found.text))
    .map(({ card }) => card.code);
  io.out(
    `${found.what}: ${now.text} instead of ${found.text} until ${options.until}. Post anew: ${cards.join(', ')}.\n`,
  );
  return EXIT.good;
}

/** Sizes of wood. What can hurt somebody – a pressure, a speed, a time under the field – has no other limits than its own. */
const MAY_DEVIATE: readonly Kind[] = ['length', 'angle', 'fraction', 'mass'];

/** In the unit of the card and as fine as it is there. */
function limitsText(to: string | undefined, was: string): { readonly text: string } | { readonly wrong: string } {
  const unit = findUnit(was.slice(was.lastIndexOf('\u00a0') + 1));
  if (!unit) return { wrong: `The limits of the card, ${was}, cannot be read back.` };
  if (!MAY_DEVIATE.includes(unit.kind))
    return {
      wrong: `Limits of ${kindName(unit.kind)} do not deviate: they keep people from harm. Change the spec and release it.`,
    };
  if (to === undefined) return { wrong: 'Give the limits: --to 16.25..16.50.' };
  const parsed = parseQuantity(to, { kind: unit.kind, defaultUnit: unit.id });
  if (!parsed.ok) return { wrong: `${parsed.problem.text} ${parsed.problem.mend}` };
  const decimals = (/\.(\d+)/.exec(was)?.[1] ?? '').length;
  const step = unit.toBase(1) / 10 ** decimals;
  const printed = formatLimits(parsed.quantity, { unit: unit.id, step });
  if (!printed.ok) return { wrong: printed.text };
  // A dash beside a minus sign misleads.
  const between = /^[-−]/.test(printed.low) ? '\u00a0to\u00a0' : '–';
  return { text: `${printed.low}${between}${printed.high}\u00a0${printed.unit}` };
}
