/** Browsers that may be on this machine, in the order in which they are tried. */
import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Environment variables that matter here: PLATEN_BROWSER, PATH, HOME, XDG_CACHE_HOME, program folders on Windows. */
export type Environment = Readonly<Record<string, string | undefined>>;

export interface Candidate {
  /** For a person: a path, or what it is. */
  readonly label: string;
  /** Path of the program; a throw says why it can't be had. */
  readonly locate: () => Promise<string>;
  /** 'shell' for the small browser made for printing, true for a full one without its window. */
  readonly headless: 'shell' | true;
  /** Folder of libraries it should look into first. */
  readonly libraries?: () => Promise<string>;
}

const commands = [
  'chromium-headless-shell',
  'chrome-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
];

const macPlaces = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];

const windowsPlaces = [
  'Chromium/Application/chrome.exe',
  'Google/Chrome/Application/chrome.exe',
  'Microsoft/Edge/Application/msedge.exe',
];

/** A browser of which only the path is known; its name tells whether it is the small one. */
export function browserAt(path: string): Candidate {
  return {
    label: path,
    locate: () => Promise.resolve(path),
    headless: /headless[-_]shell/i.test(path) ? 'shell' : true,
  };
}

/** Browsers found on the search path and in the usual places of this system. */
export function installedBrowsers(environment: Environment, platform: NodeJS.Platform = process.platform): Candidate[] {
  const folders = (environment['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  const onPath = commands.flatMap((command) => folders.map((folder) => join(folder, command)).find(isProgram) ?? []);
  return [...onPath, ...usualPlaces(environment, platform).filter(isProgram)].map(browserAt);
}

function usualPlaces(environment: Environment, platform: NodeJS.Platform): string[] {
  if (platform === 'darwin') return macPlaces;
  if (platform !== 'win32') return [];
  const roots = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => environment[name] ?? []);
  return roots.flatMap((root) => windowsPlaces.map((place) => join(root, place)));
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
