// The pictures in out/samples/ that README shows: one of each station, of the demo catalogue as it is now. `npm run samples`.
import { createCanvas } from '@napi-rs/canvas';
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

const root = join(import.meta.dirname, '..');
const DPI = 90;
/** What a picture is of stays the same from day to day. */
const DAY = '2026-11-25';
const scratch = mkdtempSync(join(tmpdir(), 'samples-'));
const platen = (...line) =>
  execFileSync(process.execPath, [join(root, '.dist/cli/main.js'), ...line, '--on', DAY], { cwd: root });

/** Sixteen greys are enough for a print in black, and a sixth of the bytes: git keeps every one of these. */
function greyPng({ width, height, data }) {
  const stride = Math.ceil(width / 2);
  const rows = Buffer.alloc(height * (stride + 1));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = 4 * (y * width + x);
      const level = Math.round((0.299 * data[at] + 0.587 * data[at + 1] + 0.114 * data[at + 2]) / 17);
      rows[y * (stride + 1) + 1 + (x >> 1)] |= x % 2 === 0 ? level << 4 : level;
    }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([4, 0, 0, 0, 0], 8);
  const chunk = (type, bytes) => {
    const body = Buffer.concat([Buffer.from(type), bytes]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(bytes.length);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, sum]);
  };
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

async function picture(pdf, page, name) {
  const document = await getDocument({ data: new Uint8Array(readFileSync(pdf)), verbosity: 0 }).promise;
  const shown = await document.getPage(page);
  const viewport = shown.getViewport({ scale: DPI / 72 });
  const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
  const canvasContext = canvas.getContext('2d');
  canvasContext.fillStyle = '#fff';
  canvasContext.fillRect(0, 0, canvas.width, canvas.height);
  await shown.render({ canvas, canvasContext, viewport }).promise;
  writeFileSync(
    join(root, 'out/samples', `${name}.png`),
    greyPng(canvasContext.getImageData(0, 0, canvas.width, canvas.height)),
  );
  await document.destroy();
}

rmSync(join(root, 'out/samples'), { recursive: true, force: true });
mkdirSync(join(root, 'out/samples'));
// Tarn passes every station but chambering; voe is hollow.
platen('cards', 'tarn', 'voe', '--out', join(scratch, 'cards'));
const cards = join(scratch, 'cards/cards/models');
for (const file of readdirSync(join(cards, 'tarn')).filter((name) => /^[a-z-]+\.pdf$/.test(name))) {
  const station = file.replace('.pdf', '');
  if (station !== 'tarn' && !station.endsWith('-left')) await picture(join(cards, 'tarn', file), 1, station);
}
await picture(join(cards, 'voe/chambering.pdf'), 1, 'chambering');
await picture(join(cards, 'tarn/machining-top.pdf'), 3, 'machining-top-plan');
platen('cards', 'tarn', '--station', 'press', '--language', 'es', '--out', join(scratch, 'es'));
await picture(join(scratch, 'es/cards/models/tarn/press.pdf'), 1, 'press-es');
platen('traveller', 'tarn', '--order', '2101', '--finish', 'amber-shaded', '--out', join(scratch, 'traveller'));
await picture(join(scratch, 'traveller/cards/tarn-2101.pdf'), 1, 'traveller');
platen('first-piece', 'tarn', '--station', 'machining-top', '--hand', 'right', '--out', join(scratch, 'first'));
await picture(join(scratch, 'first/cards/tarn/router.pdf'), 1, 'first-piece');
// The crown lowered, in a workspace of its own where the model as it is was released.
const floor = join(scratch, 'floor');
cpSync(join(root, 'models'), join(floor, 'models'), { recursive: true });
const there = (...line) => platen(...line, '--root', floor);
there('release', 'tarn', '--reason', 'First', '--name', 'M. Orre');
const spec = join(floor, 'models/tarn.yaml');
const lowered = readFileSync(spec, 'utf8')
  .replace('revision: C', 'revision: D')
  .replace('machined: { crown: 49.60', 'machined: { crown: 49.20')
  .replace('white: { crown: 49.20', 'white: { crown: 48.80');
writeFileSync(spec, lowered);
there('diff', 'tarn', '--pdf', join(scratch, 'notice.pdf'));
await picture(join(scratch, 'notice.pdf'), 1, 'change-notice');
there('cards', 'tarn', '--station', 'machining-top', '--out', join(scratch, 'changed'));
await picture(join(scratch, 'changed/cards/models/tarn/machining-top.pdf'), 1, 'machining-top-changed');
// The demo list of a day, of all models, released.
for (const model of readdirSync(join(root, 'models')).flatMap((file) => /^(.+)\.yaml$/.exec(file)?.[1] ?? []))
  if (model !== 'tarn') there('release', model, '--reason', 'First', '--name', 'M. Orre');
writeFileSync(spec, readFileSync(join(root, 'models/tarn.yaml')));
try {
  there('run', 'models/orders/monday.csv', '--out', join(scratch, 'run'));
} catch (error) {
  // 1: lines of the list are refused, and told on the sheet.
  if (error.status !== 1) throw error;
}
const sheets = join(scratch, 'run/cards');
await picture(join(sheets, 'run-sheet.pdf'), 1, 'run-sheet');
await picture(join(sheets, 'run-sheet.pdf'), 2, 'run-sequence');
await picture(join(sheets, 'labels.pdf'), 1, 'run-labels');
rmSync(scratch, { recursive: true, force: true });
