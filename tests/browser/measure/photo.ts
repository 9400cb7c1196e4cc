/** A photo of a print, made up: turned, seen aslant, smaller, out of focus, unevenly lit. Grey from 0 to 255. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly grey: Float32Array;
}

/** Of 300 dots to the inch of the drawn page the photo shows 160: a picture of the whole sheet in two and a half million dots. */
const SMALLER = 160 / 300;
/** How much nearer one side is than the other, over the whole width. */
const ASLANT = 0.12;
/** Light at the darkest corner, of that at the brightest. */
const DARKEST = 0.45;

/** `turn` in degrees. */
export function photographed(picture: Picture, turn: number): Picture {
  return blurred(lit(taken(picture, (turn * Math.PI) / 180)));
}

/** Each point of the photo looks back at the point of the print that it shows. */
function taken(picture: Picture, turn: number): Picture {
  // Room for the corners of what is turned.
  const [width, height] = [picture.width, picture.height].map((side) => Math.ceil(1.15 * SMALLER * side)) as [
    number,
    number,
  ];
  const grey = new Float32Array(width * height).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [right, down] = [x - width / 2, y - height / 2];
      const nearer = SMALLER * (1 + (ASLANT * right) / width);
      const [dx, dy] = [right / nearer, down / nearer];
      const fromX = picture.width / 2 + dx * Math.cos(turn) + dy * Math.sin(turn);
      const fromY = picture.height / 2 - dx * Math.sin(turn) + dy * Math.cos(turn);
      grey[y * width + x] = between(picture, fromX, fromY);
    }
  return { width, height, grey };
}

function lit({ width, height, grey }: Picture): Picture {
  return {
    width,
    height,
    grey: grey.map((level, i) => {
      const across = (i % width) / width;
      const down = Math.floor(i / width) / height;
      return level * (DARKEST + ((1 - DARKEST) * (across + down)) / 2);
    }),
  };
}

/** Out of focus by one and a half points each way: three boxes of three make nearly a bell. */
function blurred(picture: Picture): Picture {
  let of = picture;
  for (let round = 0; round < 2; round++) of = boxed(boxed(of, 1), of.width);
  return of;
}

function boxed({ width, height, grey }: Picture, step: number): Picture {
  const at = (i: number) => grey[Math.min(Math.max(i, 0), grey.length - 1)]!;
  return { width, height, grey: grey.map((level, i) => (at(i - step) + level + at(i + step)) / 3) };
}

/** White where the print ends. */
function between({ width, height, grey }: Picture, x: number, y: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  if (left < 0 || top < 0 || left + 1 >= width || top + 1 >= height) return 255;
  const [right, down] = [x - left, y - top];
  const at = (dx: number, dy: number) => grey[(top + dy) * width + left + dx]!;
  return (at(0, 0) * (1 - right) + at(1, 0) * right) * (1 - down) + (at(0, 1) * (1 - right) + at(1, 1) * right) * down;
}
