/** Contrast of text to its ground, as WCAG 2.2 defines it, in colour and as a mono printer makes it. */
import type { Colour, TextRun } from './texts.ts';

/** Success criterion 1.4.6, level AAA. */
export const LEAST_CONTRAST = 7;

type Rgb = readonly [number, number, number];

export function contrastOf({ colour, ground }: TextRun, print: (rgb: Rgb) => Rgb = (rgb) => rgb): number {
  const behind = ground.toReversed().reduce<Rgb>((below, above) => over(above, below), [255, 255, 255]);
  const [a, b] = [luminance(print(over(colour, behind))), luminance(print(behind))];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** The lesser of both ways to make grey of a colour: the weights of screens (ITU-R BT.709) and those of older printers (BT.601). */
export const monoContrastOf = (text: TextRun): number =>
  Math.min(contrastOf(text, grey(0.2126, 0.7152, 0.0722)), contrastOf(text, grey(0.299, 0.587, 0.114)));

export function tooFaint(texts: readonly TextRun[]): string[] {
  return texts.flatMap((text) => {
    const at = `${text.where}: ${text.text}`;
    const [colour, mono] = [contrastOf(text), monoContrastOf(text)];
    return [
      ...(colour < LEAST_CONTRAST ? [`contrast ${colour.toFixed(1)}:1: ${at}`] : []),
      ...(mono < LEAST_CONTRAST ? [`contrast ${mono.toFixed(1)}:1 in mono: ${at}`] : []),
      ...(text.groundKept ? [] : [`its ground is left out where ink is saved: ${at}`]),
    ];
  });
}

const grey =
  (red: number, green: number, blue: number) =>
  (rgb: Rgb): Rgb => {
    const level = rgb[0] * red + rgb[1] * green + rgb[2] * blue;
    return [level, level, level];
  };

const over = ([red, green, blue, alpha]: Colour, below: Rgb): Rgb => {
  const mix = (above: number, under: number) => above * alpha + under * (1 - alpha);
  return [mix(red, below[0]), mix(green, below[1]), mix(blue, below[2])];
};

/** WCAG 2.2, relative luminance. */
function luminance(rgb: Rgb): number {
  const [red, green, blue] = rgb.map((channel) => {
    const part = channel / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
