/** Travellers as pages and sheets for paper: the head stands on every page, a station is never torn over two. */
import type { FormCheck, Traveller, TravellerStation } from '../cards/card.ts';
import { formCheckView } from './form-check-view.ts';
import { draftBar, saidView, type FormPosting } from './form-posting.ts';
import { printForms, type Form, type FormsOf } from './forms.ts';
import type { PrintAssets } from './input.ts';
import { identifier, markup } from './markup.ts';
import { pageRule } from './page-rule.ts';
import type { PrintOutput } from './print.ts';
import type { Speech } from './speech.ts';

export interface PostedTraveller {
  readonly traveller: Traveller;
  readonly posting: FormPosting;
  /** Path of its page and its PDF, without their endings. */
  readonly name: string;
}

export function printTravellers(travellers: readonly PostedTraveller[], of: FormsOf, assets: PrintAssets): PrintOutput {
  const forms = travellers.map((one): Form => ({
    name: one.name,
    made: (talk, render) => ({
      title: [one.traveller.model.text, one.traveller.body ?? one.traveller.order]
        .filter((part) => part !== '')
        .join(' · '),
      body: render('traveller', travellerView(one, of, talk)),
    }),
  }));
  return printForms(forms, of, assets);
}

function travellerView({ traveller, posting, name }: PostedTraveller, { plantName, ...foot }: FormsOf, talk: Speech) {
  const { model, hand, order, pair, finish, grade, quantity, body, stations } = traveller;
  const page = identifier('traveller', name);
  const title = talk.phrase('traveller.title');
  const named = { model: model.text, station: body ?? order, code: '', status: title };
  return {
    page,
    pageRule: markup(`<style>${pageRule(page, { ...named, ...foot }, talk)}</style>`),
    plant: plantName,
    status: draftBar(posting, talk),
    model: model.text,
    revision: talk.phrase('labels.revision', { revision: posting.revision }),
    hand: talk.phrase(`hand.${hand}`),
    leftHand: hand === 'left',
    order,
    pair: pair ?? null,
    paired: pair !== undefined,
    finish: talk.name(finish),
    grade: talk.name(grade),
    quantity: String(quantity),
    several: quantity > 1,
    body: body ?? null,
    stations: stations.map((station, i) => stationView(station, i + 1, posting, talk)),
  };
}

function stationView(
  { name, code, often, checks, marks }: TravellerStation,
  n: number,
  posting: FormPosting,
  talk: Speech,
) {
  const view = (check: FormCheck) => ({
    ...formCheckView(check, talk),
    // What most checks of the station have in common stands at its head.
    apart: check.often.say === often?.say ? null : talk.html(check.often),
  });
  return {
    number: String(n),
    name: talk.name(name.text),
    code,
    ...saidView(posting, code),
    often: often ? talk.html(often) : null,
    marks: marks.map((line) => talk.html(line)),
    readings: checks.filter(({ how }) => how === 'written').map(view),
    looks: checks.filter(({ how }) => how === 'ticked').map(view),
  };
}
