/** The cards a form is made from: those in force, or of a model that was never released those of its spec, as a draft. */
import { compileAll, isError } from '../compile.ts';
import type { Compiled } from '../compile.ts';
import type { FormCards } from '../forms.ts';
import { cardsForOrder } from '../release/for-order.ts';
import { busy } from './busy.ts';
import type { Common, Io } from './io.ts';
import { EXIT } from './io.ts';
import { opened } from './opened.ts';
import type { Opened } from './opened.ts';
import { pick } from './pick.ts';

export interface FormSource extends FormCards {
  readonly ledger: Opened;
  readonly compiled: Compiled;
}

/** Or the exit code, with a word to the user. `order`: empty where none is known. */
export function formCards(model: string, order: string, options: Common, io: Io): FormSource | number {
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const { host, on, known } = ledger;
  const compiled = busy(io, 'Checking', () => compileAll(host, on));
  const found = pick([model], compiled.models, io)?.[0];
  if (!found) return EXIT.usage;
  const inForce = cardsForOrder(model, order, on, ledger);
  if (inForce) {
    const { cards, revision, said } = inForce;
    return { ledger, compiled, cards, posting: { revision, status: 'released', said } };
  }
  if (known.some(({ released }) => released.model === model)) {
    const of = order === '' ? '' : ` for order ${order}`;
    io.err(`No release of ${model} is in force${of} on ${on}: see platen posted.\n`);
    return EXIT.errors;
  }
  if (found.findings.some(isError) || found.cards.length === 0) {
    io.err(`Has errors, see platen check: ${model}.\n`);
    return EXIT.errors;
  }
  return {
    ledger,
    compiled,
    cards: found.cards,
    posting: { revision: found.revision, status: 'draft', said: new Map() },
  };
}
