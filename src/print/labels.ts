/** Labels: a pair for each body, one for its cap and one for its back, to be cut apart, stuck on and written on the wood. */
import { printForms, type Form, type FormsOf } from './forms.ts';
import type { PrintAssets } from './input.ts';
import { identifier, markup } from './markup.ts';
import { pageRule } from './page-rule.ts';
import type { PrintOutput } from './print.ts';
import { qrMarkup } from './qr.ts';
import type { Speech } from './speech.ts';

/** One body. */
export interface BodyLabels {
  /** The number that is written on the wood: of the order, and of the body where there are several. */
  readonly number: string;
  readonly model: string;
  readonly revision: string;
  readonly hand: 'right' | 'left';
  readonly finish: string;
  readonly grade: readonly string[];
  readonly due?: string;
  /** Top first: cap and back, or a slab. */
  readonly parts: readonly ('cap' | 'back' | 'slab')[];
}

export function printLabels(bodies: readonly BodyLabels[], of: FormsOf, assets: PrintAssets): PrintOutput {
  const form: Form = {
    name: 'labels',
    made: (talk, render) => ({
      title: `${talk.phrase('run-label.title')} · ${of.date}`,
      body: render('labels', labelsView(bodies, of, talk)),
    }),
  };
  return printForms([form], of, assets);
}

/** What the code on a label says: the number and the part, so that a cap is not taken for its back. */
export const labelText = (number: string, part: string): string => `${number} ${part}`.toUpperCase();

function labelsView(bodies: readonly BodyLabels[], { plantName, ...foot }: FormsOf, talk: Speech) {
  const page = identifier('labels', talk.language);
  const title = talk.phrase('run-label.title');
  const rule = { model: foot.date, station: '', code: title, status: plantName, ...foot };
  return {
    page,
    pageRule: markup(`<style>${pageRule(page, rule, talk)}</style>`),
    bodies: bodies.map(({ number, model, revision, hand, finish, grade, due, parts }) => ({
      parts: parts.map((part) => ({
        part: talk.phrase(`part.${part}`),
        number,
        qr: qrMarkup(labelText(number, part)),
        model,
        revision,
        left: hand === 'left' ? talk.phrase('hand.left') : null,
        finish: talk.name(finish),
        grade: grade.map((one) => talk.name(one)).join(' · '),
        due: due ?? null,
        paired: parts.length > 1,
      })),
    })),
  };
}
