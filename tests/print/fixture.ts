/** A card made by hand, with everything a card can hold, and the program's own templates, words and fonts. */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type {
  Arg,
  Card,
  Drawing,
  Figure,
  Limits,
  Line,
  Literal,
  Name,
  Posting,
  StationSheet,
} from '../../src/cards/card.ts';
import type { PrintAssets, PrintFont, PrintInput, RenderedFinding } from '../../src/print/input.ts';
import { loadWords } from '../../src/print/words.ts';

export const line = (say: string, args: Record<string, Arg> = {}): Line => ({ kind: 'line', say, with: args });
export const name = (text: string): Name => ({ kind: 'name', text, fact: 'fixture' });
export const literal = (text: string): Literal => ({ kind: 'literal', of: 'point', text });
export const figure = (text: string, unit: string, second?: Figure['second']): Figure => ({
  kind: 'figure',
  fact: 'fixture',
  text,
  unit,
  ...(second ? { second } : {}),
});
export const limits = (low: string, high: string, unit: string, second?: Limits['second']): Limits => ({
  kind: 'limits',
  fact: 'fixture',
  low,
  high,
  target: low,
  unit,
  ...(second ? { second } : {}),
});

const capLimits = limits('16.30', '16.50', 'mm', { low: '.642', high: '.649', unit: 'in' });
const inLimits = limits('17.60', '18.20', 'mm', { low: '.693', high: '.716', unit: 'in' });
const belt = figure('6.0', 'm/min', { text: '19.7', unit: 'ft/min' });

/** A made-up outline, as a closed run of points in millimetres. */
function ring(width: number, length: number): number[] {
  return Array.from({ length: 48 }, (_, i) => (i / 48) * 2 * Math.PI).flatMap((turn) => [
    Math.round(Math.cos(turn) * width * (1 + 0.12 * Math.cos(2 * turn)) * 50) / 100,
    Math.round(Math.sin(turn) * length * 50) / 100,
  ]);
}

export const plan: Drawing = {
  id: 'plan',
  caption: line('fixture.plan'),
  scale: 5,
  marks: [
    { kind: 'line', line: 'board', points: [-175, -235, 175, -235, 175, 235, -175, 235], closed: true },
    { kind: 'line', line: 'saw-line', points: ring(316, 446), closed: true },
    { kind: 'line', line: 'outline', points: ring(300, 430), closed: true },
    { kind: 'line', line: 'seam', points: [0, -235, 0, 235], closed: false },
    { kind: 'line', line: 'hidden', points: [-30, 60, 30, 60, 30, 100, -30, 100], closed: true },
    { kind: 'circle', line: 'cut', x: 0, y: 200, radius: 5 },
    { kind: 'circle', line: 'cut', x: 0, y: -200, radius: 5 },
    { kind: 'area', hatch: 'removed', points: [-40, -120, 40, -120, 40, -70, -40, -70] },
    { kind: 'label', x: 0, y: -145, text: line('fixture.controls'), anchor: 'middle' },
    {
      kind: 'dimension',
      from: [175, -235],
      to: [175, 235],
      offset: -45,
      text: figure('470', 'mm', { text: '18.50', unit: 'in' }),
    },
    {
      kind: 'dimension',
      from: [-175, 235],
      to: [175, 235],
      offset: 45,
      text: limits('349', '351', 'mm', { low: '13.75', high: '13.81', unit: 'in' }),
    },
    ...[
      [-90, 150],
      [90, 150],
      [-100, 0],
      [100, 0],
      [-90, -150],
      [90, -150],
    ].map(([x = 0, y = 0], i) => ({ kind: 'point', x, y, number: literal(String(i + 1)) }) as const),
  ],
};

export const stack: Drawing = {
  id: 'stack',
  caption: line('fixture.stack'),
  scale: 1,
  marks: [
    { kind: 'area', hatch: 'back', points: [0, 0, 90, 0, 90, 34.4, 0, 34.4] },
    { kind: 'area', hatch: 'glue', points: [0, 34.4, 90, 34.4, 90, 35.2, 0, 35.2] },
    { kind: 'area', hatch: 'cap', points: [0, 35.2, 90, 35.2, 90, 51.6, 0, 51.6] },
    { kind: 'area', hatch: 'slab', points: [0, -6, 90, -6, 90, -2, 0, -2] },
    { kind: 'line', line: 'glue', points: [0, 34.8, 90, 34.8], closed: false },
    { kind: 'line', line: 'centre', points: [45, -8, 45, 54], closed: false },
    { kind: 'label', x: 20, y: 44, text: name('cap'), anchor: 'middle' },
    { kind: 'dimension', from: [90, 0], to: [90, 34.4], offset: -8, text: limits('34.30', '34.50', 'mm') },
    { kind: 'dimension', from: [90, 34.4], to: [90, 35.2], offset: -34, text: figure('0.05', 'mm') },
    {
      kind: 'dimension',
      from: [0, 51.6],
      to: [90, 51.6],
      offset: 6,
      text: figure('90.0', 'mm', { text: '3.54', unit: 'in' }),
    },
  ],
};

export function richCard(change: Partial<Card> = {}): Card {
  return {
    key: { model: 'tarn', hand: 'right', finishes: ['amber-shaded', 'blue-clear'], station: 'sizing' },
    model: name('Tarn'),
    station: name('Sizing, wide belt'),
    handLine: line('fixture.right-hand'),
    finishNames: [name('amber shaded'), name('blue clear')],
    decides: name('department lead'),
    keyNumbers: [
      { label: line('fixture.out'), value: capLimits },
      { label: line('fixture.in'), value: inLimits },
      { label: line('fixture.belt'), value: belt },
      { label: line('fixture.passes'), value: figure('4', '') },
      {
        label: line('fixture.grits'),
        value: { kind: 'series', items: [figure('0.60', 'mm'), figure('0.40', 'mm'), figure('0.10', 'mm')] },
      },
    ],
    steps: [
      line('fixture.step-take', { pair: name('both halves of one pair') }),
      line('fixture.step-measure', { limits: inLimits }),
      line('fixture.step-feed', { belt }),
      line('fixture.step-first', {
        grits: { kind: 'series', items: [name('80'), name('100')] },
        depth: figure('0.60', 'mm', { text: '.024', unit: 'in' }),
      }),
      line('fixture.step-turn'),
      line('fixture.step-last', { depth: figure('0.10', 'mm', { text: '.004', unit: 'in' }) }),
      line('fixture.step-check', { limits: capLimits, taper: figure('0.10', 'mm', { text: '.004', unit: 'in' }) }),
    ],
    tools: [
      { role: line('fixture.machine'), name: name('Wide belt B2') },
      { role: line('fixture.gauge'), name: name('Dial calliper 0.05 mm, No. 14') },
      { role: line('fixture.belts'), name: { kind: 'series', items: [name('P80'), name('P100'), name('P120')] } },
    ],
    checks: [
      {
        what: line('fixture.check-thickness'),
        limits: capLimits,
        gauge: name('Dial calliper 0.05 mm'),
        often: line('fixture.first-and-tenth'),
        boxes: ['1', '2', '3', '4', '5', '6'].map(literal),
      },
      {
        what: line('fixture.check-taper'),
        limits: limits('0.00', '0.10', 'mm', { low: '.000', high: '.003', unit: 'in' }),
        gauge: name('Dial calliper 0.05 mm'),
        often: line('fixture.every'),
        boxes: [literal('')],
      },
      {
        what: line('fixture.check-face'),
        gauge: line('fixture.by-eye'),
        often: line('fixture.every'),
        boxes: [literal('')],
      },
    ],
    whenOut: [line('fixture.out-thick'), line('fixture.out-thin')],
    cautions: [
      { signal: 'warning', line: line('fixture.warn-hands') },
      { signal: 'caution', line: line('fixture.caution-dust') },
    ],
    drawings: [plan, stack],
    tables: [
      {
        title: line('fixture.table'),
        columns: [line('fixture.col-point'), line('fixture.col-limits'), line('fixture.col-note')],
        rows: Array.from({ length: 40 }, (_, i) => [literal(String(i + 1)), capLimits, name(`lot ${i + 1}`)]),
      },
    ],
    permits: [],
    notes: [name('The pair stays together: same order, same face up.')],
    signOff: [line('fixture.signed-first'), line('fixture.signed-marks')],
    ...change,
  };
}

const SENTENCES = `
fixture:
  plan: Cap from above, points to measure
  stack: How the blank is made up
  controls: cut later
  right-hand: Right hand
  out: Cap thickness out
  in: Cap thickness in
  belt: Feed
  passes: Passes
  grits: Taken off per grit
  step-take: Take {pair}; keep them in order.
  step-measure: Measure in the middle of each edge. In limits {limits}; thicker goes back to the planer.
  step-feed: Set the feed to {belt}, the belt running empty.
  step-first: Grits {grits}, {depth} off each pass, glue face down first.
  step-turn: Turn over after every pass; end grain leads, halves side by side.
  step-last: Last grit, {depth} off each face.
  step-check: Measure at the numbered points. {limits}, taper at most {taper}.
  machine: Machine
  gauge: Gauge
  belts: Belts
  check-thickness: Thickness at the numbered points
  check-taper: Largest less smallest
  check-face: Glue face clean, no burn, no chatter
  by-eye: by eye, lamp from the side
  first-and-tenth: first piece and every tenth
  every: every piece
  out-thick: Too thick - one more pass of the last grit, then measure again.
  out-thin: Too thin - set aside with a red tag; never pack it up with glue.
  warn-hands: Keep hands clear of the infeed. Never feed a piece shorter than the machine's least length.
  caution-dust: Dust - extraction on before the belt. No gloves, loose sleeves or jewellery.
  table: Settings by lot
  col-point: No.
  col-limits: Limits
  col-note: Lot
  signed-first: First piece measured
  signed-marks: Marks written again on end grain
`;

export const posting: Posting = { revision: 'C', status: 'draft', date: '2026-11-25', code: '7KQM-2FXD' };

export const finding: RenderedFinding = {
  id: 'chain-open',
  severity: 'error',
  where: 'models/tarn.yaml:14:12',
  excerpt: '14 |   body: { machined: 49.40 }\n   |                     ^^^^^',
  what: 'Machined 49.40 leaves less than white needs.',
  why: 'The sander would go through.',
  mend: 'Raise machined, or lower white.',
  permits: [],
  notes: [{ where: 'models/tarn.yaml:15:9', text: 'white is given here' }],
};

export const sheet: StationSheet = {
  station: { id: 'sizing', name: name('Sizing, wide belt') },
  columns: [line('fixture.in'), line('fixture.out'), line('fixture.belt')],
  rows: [{ key: richCard().key, model: name('Tarn'), cells: [inLimits, capLimits, belt] }],
};

export function input(cards: readonly Card[] = [richCard()], change: Partial<PrintInput> = {}): PrintInput {
  return {
    models: [
      { id: 'tarn', title: 'Tarn', revision: 'C', cards: cards.map((card) => ({ card, posting })), findings: [] },
    ],
    sheets: [{ sheet, posting }],
    plantName: 'Heron Lane Works',
    paper: 'A4',
    languagesAt: () => ['en'],
    date: '2026-11-25',
    kinds: [],
    pictures: new Map(),
    route: ['planing', 'sizing'],
    findings: [],
    ...change,
  };
}

const templatesFolder = join(import.meta.dirname, '..', '..', 'templates');

export function ownTemplates(): Map<string, string> {
  const names = readdirSync(templatesFolder, { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.hbs'),
  );
  return new Map(names.toSorted().map((path) => [path, readFileSync(join(templatesFolder, path), 'utf8')]));
}

export function fontBytes(of: 'next' | 'mono', weight: 400 | 700): Uint8Array {
  const pack = `@fontsource/atkinson-hyperlegible-${of}`;
  const file = `${pack}/files/atkinson-hyperlegible-${of}-latin-${weight}-normal.woff2`;
  return readFileSync(createRequire(import.meta.url).resolve(file));
}

export function fonts(): PrintFont[] {
  return (['next', 'mono'] as const).flatMap((of) =>
    ([400, 700] as const).map((weight) => ({
      family: of === 'next' ? 'Atkinson Hyperlegible Next' : 'Atkinson Hyperlegible Mono',
      weight,
      file: `atkinson-hyperlegible-${of}-${weight}.woff2`,
      bytes: fontBytes(of, weight),
    })),
  );
}

export function ownWords() {
  const own = readFileSync(join(templatesFolder, 'words', 'en.yaml'), 'utf8');
  return loadWords('templates/words/en.yaml', new TextEncoder().encode(`${own}${SENTENCES}`));
}

export function assets(change: Partial<PrintAssets> = {}): PrintAssets {
  return {
    templates: ownTemplates(),
    words: ownWords().words,
    others: [],
    css: readFileSync(join(templatesFolder, 'print.css'), 'utf8'),
    fonts: fonts(),
    ...change,
  };
}
