/**
 * Path syntax: a text to its commands with their numbers, nothing yet made absolute.
 * Source of the grammar: W3C, SVG 2, 9.3.9 'The grammar for path data', with exponents as in CSS numbers.
 * Unlike a browser, which draws up to the first mistake, this refuses the whole text: half an outline is a wrong body.
 */

/** A mistake in a path: offset of the character in the text, what is wrong, what would mend it. */
export interface PathProblem {
  readonly ok: false;
  readonly at: number;
  readonly what: string;
  readonly mend: string;
}

export interface PathCommand {
  /** One letter, upper case where absolute. */
  readonly letter: string;
  /** As many as the command takes; flags are 0 or 1. */
  readonly numbers: readonly number[];
  /** Offset of the letter, or of the first number where the letter is implied. */
  readonly at: number;
}

/** Numbers a command takes: n for a number, f for a flag. */
const TAKES: Readonly<Record<string, string>> = {
  M: 'nn',
  L: 'nn',
  H: 'n',
  V: 'n',
  C: 'nnnnnn',
  S: 'nnnn',
  Q: 'nnnn',
  T: 'nn',
  A: 'nnnffnn',
  Z: '',
};

const SPACE = /[\t\n\f\r ]*/y;
const COMMA = /[\t\n\f\r ]*(,?)[\t\n\f\r ]*/y;
const NUMBER = /[+-]?(?:\d*\.\d+|\d+)(?:[eE][+-]?\d+)?/y;

/** No coordinate of a body is further out than this; a larger one is a slip, and would cost memory to flatten. */
const LARGEST_MM = 100_000;

/** Commands of the text in order, repeats written out (a second pair after M is an L). */
export function readCommands(text: string): { readonly ok: true; readonly commands: PathCommand[] } | PathProblem {
  const commands: PathCommand[] = [];
  let at = skip(SPACE, text, 0);
  if (at === text.length) return problem(0, 'the path is empty', 'write a path that begins with M x y');
  while (at < text.length) {
    const letter = text.charAt(at);
    const takes = TAKES[letter.toUpperCase()];
    if (takes === undefined) return notACommand(text, at);
    if (commands.length === 0 && letter.toUpperCase() !== 'M') {
      return problem(at, 'the path does not begin with M', 'begin with M x y, the point to start from');
    }
    const group = readRepeats(text, at, letter, takes);
    if (!group.ok) return group;
    commands.push(...group.commands);
    at = group.end;
  }
  return { ok: true, commands };
}

type Repeats = { readonly ok: true; readonly commands: PathCommand[]; readonly end: number } | PathProblem;

function readRepeats(text: string, start: number, letter: string, takes: string): Repeats {
  let at = skip(SPACE, text, start + 1);
  if (takes === '') return { ok: true, commands: [{ letter, numbers: [], at: start }], end: at };
  const commands: PathCommand[] = [];
  for (;;) {
    const group = readNumbers(text, at, letter, takes);
    if (!group.ok) return group;
    const first = commands.length === 0;
    commands.push({ letter: first ? letter : repeatOf(letter), numbers: group.numbers, at: first ? start : at });
    at = skip(SPACE, text, group.end);
    if (/[+\-.\d]/.test(text.charAt(at))) continue;
    if (text.charAt(at) !== ',') return { ok: true, commands, end: at };
    const comma = at;
    at = skip(COMMA, text, at);
    if (!/[+\-.\d]/.test(text.charAt(at))) {
      return problem(comma, 'a comma with no number after it', 'take the comma out, or write the number it waits for');
    }
  }
}

function repeatOf(letter: string): string {
  return letter === 'M' ? 'L' : letter === 'm' ? 'l' : letter;
}

type Numbers = { readonly ok: true; readonly numbers: number[]; readonly end: number } | PathProblem;

function readNumbers(text: string, start: number, letter: string, takes: string): Numbers {
  const numbers: number[] = [];
  let at = start;
  for (const kind of takes) {
    if (numbers.length > 0) at = skip(COMMA, text, at);
    const end = kind === 'f' ? endOfFlag(text, at) : skip(NUMBER, text, at);
    if (end === at) return missing(text, at, letter, kind);
    const value = Number(text.slice(at, end));
    if (Math.abs(value) > LARGEST_MM) {
      return problem(at, 'a number too large for any body', 'check the decimal point; paths are in millimetres');
    }
    if (text.charAt(end) === '.' && !/\d/.test(text.charAt(end + 1)) && kind === 'n') {
      return problem(at, 'a number that ends in a point', 'write the missing digits, or take the point out');
    }
    numbers.push(value);
    at = end;
  }
  return { ok: true, numbers, end: at };
}

function endOfFlag(text: string, at: number): number {
  const char = text.charAt(at);
  return char === '0' || char === '1' ? at + 1 : at;
}

function missing(text: string, at: number, letter: string, kind: string): PathProblem {
  const takes = `${letter} takes ${SPOKEN[letter.toUpperCase()]}`;
  if (kind === 'f') return problem(at, 'the flag of an arc is neither 0 nor 1', takes);
  if (at < text.length && !/[A-Za-z,]/.test(text.charAt(at))) {
    return problem(at, `'${text.charAt(at)}' where ${letter} needs a number`, takes);
  }
  return problem(at, `a number of ${letter} is missing`, takes);
}

const SPOKEN: Readonly<Record<string, string>> = {
  M: 'x y',
  L: 'x y',
  H: 'x',
  V: 'y',
  C: 'x1 y1 x2 y2 x y',
  S: 'x2 y2 x y',
  Q: 'x1 y1 x y',
  T: 'x y',
  A: 'radius-x radius-y angle large-flag sweep-flag x y',
};

function notACommand(text: string, at: number): PathProblem {
  const char = text.charAt(at);
  if (/[+\-.\d]/.test(char)) {
    return problem(at, 'a number that belongs to no command', 'write the command it belongs to before it');
  }
  return problem(at, `'${char}' is not a path command`, 'commands are M L H V C S Q T A Z, in capitals or small');
}

function skip(pattern: RegExp, text: string, at: number): number {
  // A copy, as a sticky pattern remembers where it stopped.
  const sticky = new RegExp(pattern);
  sticky.lastIndex = at;
  return at + (sticky.exec(text)?.[0].length ?? 0);
}

function problem(at: number, what: string, mend: string): PathProblem {
  return { ok: false, at, what, mend };
}
