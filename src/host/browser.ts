/** Finds a browser that really starts, and starts it. The only file that loads puppeteer, and only when paper is wanted. */
import type { Browser } from 'puppeteer';
import { browserAt, installedBrowsers, type Candidate, type Environment } from './browser-candidates.ts';
import { packagedBrowsers } from './browser-packaged.ts';
import type { NoPrinter } from './host.ts';
import { errorLine } from './paths.ts';

/** A browser, and the way to start the same one again. */
export interface Running {
  readonly browser: Browser;
  readonly launch: () => Promise<Browser>;
}

const flags = [
  '--disable-gpu',
  // Letters as wide as the font has them: hinting sets each to whole pixels.
  '--font-render-hinting=none',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  // No name is ever looked up, not even for a hint that isn't a request.
  '--host-resolver-rules=MAP * ~NOTFOUND',
];

const startMs = 30_000;
/** A browser that answers nothing for so long is taken for dead. */
const answerMs = 60_000;

const help =
  'No browser for PDF: install Chromium or Chrome, or set PLATEN_BROWSER to the path of one. HTML cards need none.';

/**
 * The first browser that starts, running, and the way to start it again. PLATEN_BROWSER names the one to use (then no
 * other is tried: another browser means other pages), or 'none' for no browser at all.
 */
export async function openBrowser(environment: Environment): Promise<Running | NoPrinter> {
  const tried: string[] = [];
  for (const candidate of candidates(environment)) {
    try {
      return await start(candidate, environment);
    } catch (error) {
      tried.push(`${candidate.label}: ${whyNot(error)}`);
    }
  }
  return { missing: missing(environment), tried };
}

/** What the browser said, without the pointer to the driver's manual. */
function whyNot(error: unknown): string {
  return errorLine(error)
    .replace(/\s*stderr:\s*TROUBLESHOOTING:.*|\s*TROUBLESHOOTING:.*/, '')
    .slice(0, 300);
}

function missing(environment: Environment): string {
  const named = environment['PLATEN_BROWSER'];
  if (named === undefined || named === '') return help;
  if (named === 'none') return 'No browser for PDF: PLATEN_BROWSER is set to none. HTML cards need none.';
  return `No browser for PDF: PLATEN_BROWSER is set to ${named}, which does not start. HTML cards need none.`;
}

function candidates(environment: Environment): Candidate[] {
  const named = environment['PLATEN_BROWSER'];
  if (named === 'none') return [];
  if (named !== undefined && named !== '') return [browserAt(named)];
  return [...packagedBrowsers(environment), ...installedBrowsers(environment)];
}

/** With the browser's sandbox; without it only as root, where it refuses to start, or where the system doesn't allow one. */
async function start(candidate: Candidate, environment: Environment): Promise<Running> {
  const executablePath = await candidate.locate();
  const libraries = await candidate.libraries?.();
  const { default: puppeteer } = await import('puppeteer');
  const startWith = (extra: readonly string[]): Promise<Running> =>
    startEitherWay(({ pipe }) =>
      puppeteer.launch({
        executablePath,
        headless: candidate.headless,
        args: [...flags, ...extra],
        env: libraries === undefined ? { ...environment } : withLibraries(environment, libraries),
        pipe,
        timeout: startMs,
        protocolTimeout: answerMs,
      }),
    );
  if (process.getuid?.() === 0) return startWith(['--no-sandbox']);
  try {
    return await startWith([]);
  } catch (error) {
    // The pages are the program's own, with scripts and network off: printing them without the sandbox is the lesser evil.
    if (!/sandbox/i.test(errorLine(error))) throw error;
    return startWith(['--no-sandbox']);
  }
}

/**
 * Over a pipe first: such a browser ends with this process, however that ends. Over a socket next: some wrapper scripts
 * close pipes, and only there does a failure carry what the browser said.
 */
async function startEitherWay(launch: (how: { readonly pipe: boolean }) => Promise<Browser>): Promise<Running> {
  const overPipe = async (): Promise<Browser> => deafToPipes(await launch({ pipe: true }));
  try {
    return { browser: await overPipe(), launch: overPipe };
  } catch {
    const overSocket = (): Promise<Browser> => launch({ pipe: false });
    return { browser: await overSocket(), launch: overSocket };
  }
}

/** A browser that is killed resets its pipes, sometimes after the driver has let go of them: that error must not end this process. */
function deafToPipes(browser: Browser): Browser {
  for (const pipe of browser.process()?.stdio ?? []) pipe?.on('error', () => undefined);
  return browser;
}

function withLibraries(environment: Environment, folder: string): Record<string, string | undefined> {
  const path = [folder, environment['LD_LIBRARY_PATH'] ?? ''].filter((each) => each !== '').join(':');
  return { ...environment, LD_LIBRARY_PATH: path };
}
