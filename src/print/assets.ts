/** Style and fonts: linked from the pages of the tree, carried inside the shell that PDFs are printed from. */
import type { PrintAssets } from './input.ts';

/** print.css as it lies in the tree, its fonts beside it. */
export function linkedCss(assets: PrintAssets): string {
  return `${fontFaces(assets, (font) => encodeURIComponent(font.file))}\n${assets.css}`;
}

/** The same with the fonts inside. */
export function carriedCss(assets: PrintAssets): string {
  return `${fontFaces(assets, ({ bytes }) => `data:font/woff2;base64,${Buffer.from(bytes).toString('base64')}`)}\n${assets.css}`;
}

/** The rules for a drawing in a file of its own; `root`: the way to the root of the tree. */
export function drawingStyle(assets: PrintAssets, root = '../../'): string {
  return `<style>${fontFaces(assets, (font) => `${root}assets/${encodeURIComponent(font.file)}`)}</style>`;
}

function fontFaces(assets: PrintAssets, address: (font: PrintAssets['fonts'][number]) => string): string {
  return assets.fonts
    .map(
      (font) =>
        `@font-face{font-family:'${font.family}';font-weight:${font.weight};font-style:normal;` +
        `src:url(${address(font)}) format('woff2')}`,
    )
    .join('\n');
}
