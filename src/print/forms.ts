/** Forms on paper, whatever they are: a page and a PDF each, style and fonts beside them. */
import type { Finding } from '../findings/finding.ts';
import { carriedCss, linkedCss } from './assets.ts';
import type { Paper, PrintAssets } from './input.ts';
import { markup } from './markup.ts';
import { relative } from './names.ts';
import type { PrintOutput, PrintSheet } from './print.ts';
import { speech, type Speech } from './speech.ts';
import { templateSet, type Render } from './templates.ts';

/** What stands on forms besides their own. */
export interface FormsOf {
  readonly plantName: string;
  readonly paper: Paper;
  /** YYYY-MM-DD the print is made for. */
  readonly date: string;
  /** Each page carries its style and fonts: it is a file that is sent about. */
  readonly carried?: true;
}

export interface Form {
  /** Path of its page and its PDF, without their endings. */
  readonly name: string;
  readonly made: (talk: Speech, render: Render) => MadeForm;
}

export interface MadeForm {
  readonly title: string;
  readonly body: string;
  /** A drawing that is a file of its own beside the page. */
  readonly svg?: string;
}

export function printForms(
  forms: readonly Form[],
  { plantName, paper, carried }: FormsOf,
  assets: PrintAssets,
): PrintOutput {
  const findings = new Map<string, Finding>();
  const tell = (finding: Finding) => findings.set([finding.id, finding.place.file, finding.what].join('\n'), finding);
  const talk = speech(assets.words, tell);
  const render = templateSet(assets.templates, assets.words, tell);
  const files = new Map<string, string | Uint8Array>();
  const sheets: PrintSheet[] = [];
  const document = (title: string, style: string, body: string) =>
    render('document', {
      language: talk.language,
      title,
      plant: plantName,
      style: markup(style),
      home: null,
      body: markup(body),
    });
  for (const { name, made } of forms) {
    const { title, body, svg } = made(talk, render);
    if (svg !== undefined) files.set(`${name}.svg`, `${svg}\n`);
    const link = carried
      ? `<style>${carriedCss(assets)}</style>`
      : `<link rel="stylesheet" href="${relative(`${name}.html`, 'assets/print.css')}">`;
    files.set(`${name}.html`, document(title, link, body));
    sheets.push({ name: `${name}.pdf`, title, body, paper });
  }
  files.set('assets/print.css', linkedCss(assets));
  for (const font of assets.fonts) files.set(`assets/${font.file}`, font.bytes);
  const shell = document(plantName, `<style>${carriedCss(assets)}</style>`, '');
  return { files, shell, sheets, piles: [], findings: [...findings.values()] };
}
