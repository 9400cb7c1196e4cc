/** First-piece reports as pages and sheets for paper: a file for each model, hand and machine, a report for each station there. */
import type { FirstPieceReport } from '../cards/card.ts';
import { formCheckView } from './form-check-view.ts';
import { draftBar, saidView, type FormPosting } from './form-posting.ts';
import { printForms, type Form, type FormsOf } from './forms.ts';
import type { PrintAssets } from './input.ts';
import { identifier, markup } from './markup.ts';
import { pageRule } from './page-rule.ts';
import type { PrintOutput } from './print.ts';
import type { Speech } from './speech.ts';

export interface PostedReport {
  readonly report: FirstPieceReport;
  readonly posting: FormPosting;
}

/** `folder`: where they lie, with its slash. */
export function printFirstPieces(
  reports: readonly PostedReport[],
  of: FormsOf,
  assets: PrintAssets,
  folder = '',
): PrintOutput {
  const forms = [...new Set(reports.map(nameOf))].map((name): Form => {
    const group = reports.filter((one) => nameOf(one) === name);
    const { model, machine, station } = group[0]!.report;
    return {
      name: `${folder}${name}`,
      made: (talk, render) => ({
        title: `${model.text} · ${talk.name((machine?.name ?? station).text)}`,
        body: group.map((one) => render('first-piece', reportView(one, of, talk))).join('\n'),
      }),
    };
  });
  return printForms(forms, of, assets);
}

const nameOf = ({ report: { key, machine } }: PostedReport): string =>
  `${key.model}/${machine?.id ?? key.station}${key.hand === 'left' ? '-left' : ''}`;

function reportView({ report, posting }: PostedReport, { plantName, ...foot }: FormsOf, talk: Speech) {
  const { key, model, station, machine, handLine, code, setUp, cutters, gauges, checks, accepts, whenOut } = report;
  const page = identifier('first-piece', key.model, key.hand, key.station);
  const title = talk.phrase('first-piece-report.title');
  const named = { model: model.text, station: talk.name(station.text), code, status: title };
  return {
    page,
    pageRule: markup(`<style>${pageRule(page, { ...named, ...foot }, talk)}</style>`),
    plant: plantName,
    status: draftBar(posting, talk),
    said: saidView(posting, code),
    model: model.text,
    revision: talk.phrase('labels.revision', { revision: posting.revision }),
    hand: handLine ? talk.html(handLine) : null,
    leftHand: key.hand === 'left',
    station: talk.name(station.text),
    machine: machine ? talk.name(machine.name.text) : null,
    code,
    setUp: setUp.map(({ what, must }) => ({ what: talk.html(what), must: talk.html(must) })),
    cutters: cutters
      ? {
          columns: cutters.columns.map((column) => talk.html(column)),
          // What is to be written in is left empty: a box has the room, a row of dashes is in the way.
          rows: cutters.rows.map((row) =>
            row.map((cell) => (cell.kind === 'line' && WRITE.has(cell.say) ? null : talk.html(cell))),
          ),
        }
      : null,
    gauges: gauges.map((gauge) => talk.name(gauge.text)),
    checks: checks.map((check) => formCheckView(check, talk)),
    accepts: accepts ? talk.html(accepts) : null,
    whenOut: whenOut.map((line) => talk.html(line)),
    decides: talk.name(report.decides.text),
  };
}

const WRITE: ReadonlySet<string> = new Set(['running.write', 'running.write-long']);
