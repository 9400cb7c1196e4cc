import { encode } from 'uqr';
import { markup, type Markup } from './markup.ts';

/** Side of the printed square with its quiet zone, in millimetres: modules of some 0.6 mm, read from a photo of the print. */
const SIDE_MM = 18;

/** A QR code as one path, its quiet zone of four modules included. */
export function qrMarkup(text: string): Markup {
  const { data, size } = encode(text, { ecc: 'M', border: 4 });
  const path = data.map((row, y) => darkRuns(row, y)).join('');
  return markup(
    `<svg class="qr" xmlns="http://www.w3.org/2000/svg" width="${SIDE_MM}mm" height="${SIDE_MM}mm" ` +
      `viewBox="0 0 ${size} ${size}" role="img" aria-label="QR" shape-rendering="crispEdges">` +
      `<rect width="${size}" height="${size}" fill="#fff"/><path d="${path}" fill="#000"/></svg>`,
  );
}

function darkRuns(row: readonly boolean[], y: number): string {
  let path = '';
  for (let x = 0; x < row.length; x++) {
    if (!row[x]) continue;
    const from = x;
    while (row[x + 1]) x++;
    const length = x - from + 1;
    path += `M${from} ${y}h${length}v1h-${length}z`;
  }
  return path;
}
