/** platen code CODE: what the code on a print means today. */
import type { Command } from 'commander';
import { compileAll } from '../../compile.ts';
import { nearest } from '../../findings/nearest.ts';
import type { Released } from '../../releases.ts';
import { answerTo } from '../../release/answer.ts';
import type { Answer } from '../../release/answer.ts';
import { startText } from '../../release/entries.ts';
import type { ReleasedCard } from '../../release/record.ts';
import { busy } from '../busy.ts';
import type { Common, Io } from '../io.ts';
import { opened } from '../opened.ts';
import { EXIT } from '../io.ts';

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('code')
    .description('say what the code on a card means: current, in run-out, superseded, held, withdrawn, draft, unknown')
    .argument('<code>', 'the code as printed')
    .option('--json', 'as JSON')
    .action((code: string, options: Common & { json?: boolean }) => done(answer(code, options, io)));
}

/** 0 only where bodies may be made by the card. */
function answer(code: string, options: Common & { json?: boolean }, io: Io): number {
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const { on } = ledger;
  const { known, state } = ledger;
  const released = answerTo(code, known, state, []);
  // Only a code that was never released may be a draft: the specs are compiled for nothing else.
  const found = released.is === 'unknown' ? answerTo(code, known, state, draftsOf(options, io, on)) : released;
  if (options.json) io.out(`${JSON.stringify({ code, on, answer: found.is, text: textOf(found, ledger, code) })}\n`);
  else io.out(`${textOf(found, ledger, code)}\n`);
  return found.is === 'current' || found.is === 'run-out' ? EXIT.good : EXIT.errors;
}

const draftsOf = (options: Common, io: Io, on: string): readonly string[] =>
  busy(io, 'Compiling', () => compileAll(io.host(options.root), on)).models.flatMap(({ cards }) =>
    cards.map((card) => card.code),
  );

function textOf(found: Answer, { known }: Released, code: string): string {
  const card = (one: ReleasedCard, title: string) =>
    `${one.station}, ${title}${one.key.hand === 'left' ? ', left hand' : ''}`;
  switch (found.is) {
    case 'current':
    case 'run-out':
    case 'held': {
      const { hanging } = found;
      const { from, to } = hanging.range;
      const range = [
        ...(from ? [`for bodies ${startText(from)}`] : []),
        ...(to ? [`not for bodies ${startText(to)}`] : []),
      ];
      const what = `${card(hanging.card, hanging.title)}: content since revision ${hanging.since}`;
      const deviations = hanging.deviations.map(
        ({ now, was, until }) => `For a while ${now} instead of ${was}, until ${until}.`,
      );
      const of = [what, ...range].join('; ');
      if (found.is === 'held') {
        const why = hanging.holds.map(
          ({ held, lot, reason, name, on }) =>
            `${lot === undefined ? held : `${held} ${lot}`} is held since ${on}: ${reason} (${name}).`,
        );
        return [`HELD, do not use. ${of}.`, ...why].join(' ');
      }
      const head =
        found.is === 'current' ? 'CURRENT.' : `RUN-OUT until ${hanging.until}: only to finish what was begun on it.`;
      return [`${head} ${of}.`, ...deviations].join(' ');
    }
    case 'coming':
      return `NOT YET: ${card(found.card, found.of.record.title)}, revision ${found.of.released.revision}, is for bodies ${startText(found.from)}.`;
    case 'superseded':
      return `SUPERSEDED by revision ${found.by}, do not use: ${card(found.card, found.of.record.title)}. ${found.instead.length > 0 ? `In its place hangs ${found.instead.join(' and ')}.` : 'Nothing hangs in its place.'}`;
    case 'withdrawn':
      return `WITHDRAWN, do not use: ${card(found.card, found.of.record.title)}. ${found.reason}`;
    case 'draft':
      return 'DRAFT, not for the floor: it was never released.';
    case 'unknown': {
      const near = nearest(
        code.toUpperCase(),
        new Set(known.flatMap(({ record }) => record.cards.map((one) => one.code))),
      );
      return `UNKNOWN, do not use: no card ever had this code.${near === undefined ? '' : ` Did you mean ${near}?`}`;
    }
  }
}
