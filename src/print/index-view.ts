/** The landing page and the page of a model that has no valid card, as their templates see them. */
import type { Speech } from './speech.ts';
import { hasErrors, type PostedCard, type PrintInput, type PrintedModel, type RenderedFinding } from './input.ts';
import { cardName } from './names.ts';

export function indexView(input: PrintInput, talk: Speech) {
  const stations = input.route
    .map((id) => ({ id, name: stationName(input, id) }))
    .filter(({ name }) => name !== undefined);
  const all = [...input.findings, ...input.models.flatMap((model) => model.findings)].map(findingView);
  return {
    plant: input.plantName,
    date: input.date,
    models: input.models.map(({ id, title, revision }) => ({ id, title, revision, href: `models/${id}/index.html` })),
    stations: stations.map(({ id, name }) => ({
      name: talk.name(name ?? id),
      href: hasCards(input, id) ? `stations/${id}/index.html` : null,
      sheet: input.sheets.some(({ sheet }) => sheet.station.id === id) ? `stations/${id}/sheet.html` : null,
      cells: input.models.map((model) => cellView(model, id)),
    })),
    findings: all,
    errors: String(all.filter((finding) => finding.severity === 'error').length),
    cautions: String(all.filter((finding) => finding.severity === 'caution').length),
  };
}

/** The cards of a model at a station; a model in error has none, whatever was handed over. */
function cellView(model: PrintedModel, station: string) {
  const cards = hasErrors(model) ? [] : model.cards.filter(({ card }) => card.key.station === station);
  return {
    error: hasErrors(model),
    cards: cards.map(({ card, posting }) => ({
      code: posting.code,
      left: card.key.hand === 'left',
      href: `models/${model.id}/${cardName(card.key, model.cards)}.html`,
    })),
  };
}

function stationName(input: PrintInput, id: string): string | undefined {
  const sheet = input.sheets.find(({ sheet }) => sheet.station.id === id);
  if (sheet) return sheet.sheet.station.name.text;
  return cardsAt(input, id)[0]?.card.station.text;
}

function hasCards(input: PrintInput, station: string): boolean {
  return cardsAt(input, station).length > 0;
}

function cardsAt(input: PrintInput, station: string): PostedCard[] {
  const valid = input.models.filter((model) => !hasErrors(model));
  return valid.flatMap((model) => model.cards).filter(({ card }) => card.key.station === station);
}

export function noValidCardView(model: PrintedModel, input: PrintInput) {
  return {
    plant: input.plantName,
    date: input.date,
    model: model.title,
    revision: model.revision,
    findings: model.findings.toSorted((a, b) => rank(a) - rank(b)).map(findingView),
  };
}

function rank(finding: RenderedFinding): number {
  return finding.severity === 'error' ? 0 : 1;
}

/** `severityWord` is the id of the sentence that says how bad it is. */
function findingView(finding: RenderedFinding) {
  return { ...finding, severityWord: `severity.${finding.severity}` };
}
