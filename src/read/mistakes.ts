/** The mistakes that reading can find: permanent ids in the trade's words, why each matters on the floor, how it is mended. */
import type { Example, Finding, Kind, Note, Place, Severity } from '../findings/finding.ts';

const mistakes = {
  'file-unreadable': {
    why: 'What cannot be read cannot be checked, and a card printed from half a file is worse than none.',
    mend: 'Mend the line named, or the one before it: an indent, a colon, a quote or a bracket is off.',
    example: { file: 'models/tarn.yaml', passes: 'title: Tarn', fails: 'title: Tarn: Tern' },
  },
  'file-missing': {
    why: 'Numbers that should come from that file would be missing on every card.',
    mend: 'Name a file that is there.',
    example: { file: 'models/tarn.yaml', passes: 'based-on: base/bolt-on', fails: 'based-on: base/bolt-no' },
  },
  'not-in-the-schema': {
    why: 'A word nobody reads is a number nobody cuts by: what you meant by it reaches no card.',
    mend: 'Write the word as the schema has it, or take the line out.',
    example: { file: 'models/tarn.yaml', passes: 'title: Tarn', fails: 'title: Tarn\nfinnish: none' },
  },
  'not-given': {
    why: 'A station would get a card with a gap where this number belongs.',
    mend: 'Give it, in the model or in the file it is based on.',
    example: { file: 'models/tarn.yaml', passes: 'line: arched\n', fails: '' },
  },
  'wrong-form': {
    why: 'What stands here cannot be taken for what is asked, so no number can be made from it.',
    mend: 'Write it in the form the schema asks for.',
    example: { file: 'models/tarn.yaml', passes: 'revision: C', fails: 'revision: c' },
  },
  'not-a-choice': {
    why: 'Only these have a meaning at the stations; another word would be passed over.',
    mend: 'Take one of the choices.',
    example: { file: 'models/tarn.yaml', passes: 'match: book', fails: 'match: boook' },
  },
  'given-twice': {
    why: 'Two numbers for one thing: one station would go by the first and the next by the second.',
    mend: 'Keep one of the two.',
    example: { file: 'models/tarn.yaml', passes: 'title: Tarn\n', fails: 'title: Tarn\ntitle: Tern\n' },
  },
  'number-unreadable': {
    why: 'A number that can be read two ways will be, at two stations.',
    mend: 'Write it plainly: 12.50, 3/64 in, 16.40 ±0.10.',
    example: { file: 'models/tarn.yaml', passes: 'depth: 19.0 ±0.2', fails: 'depth: 19,0 ±0.2' },
  },
  'unit-unknown': {
    why: 'Wood is cut by the number and the unit together; a guess at the unit can be off 25 times.',
    mend: 'Write a unit of the right kind.',
    example: { file: 'models/base/bolt-on.yaml', passes: 'scale: 622', fails: 'scale: 622 kg' },
  },
  'limits-missing': {
    why: 'Without limits nobody at the gauge can say whether a piece is in or out.',
    mend: 'Write the limits after the number.',
    example: { file: 'models/tarn.yaml', passes: 'depth: 19.0 ±0.2', fails: 'depth: 19.0' },
  },
  'not-positive': {
    why: 'Nothing can be cut to a size of zero or less.',
    mend: 'Look for a slipped sign, digit or limit.',
    example: { file: 'models/plant/plant.yaml', passes: 'trim-line: 2.5', fails: 'trim-line: -2.5' },
  },
  'not-whole': {
    why: 'Pieces, halves and pulses are counted; a part of one cannot be made.',
    mend: 'Give a whole number.',
    example: { file: 'models/tarn.yaml', passes: 'pieces: 2', fails: 'pieces: 2.5' },
  },
  'no-such-name': {
    why: 'The card would name a thing that is not there, and somebody would take the next best.',
    mend: 'Write the name as its row has it, or add the row.',
    example: { file: 'models/tarn.yaml', passes: 'hardware: pot-long', fails: 'hardware: pot-lang' },
  },
  'defined-twice': {
    why: 'Two rows of one name: which of them a card shows would be chance.',
    mend: 'Keep one of the two, or give one another name.',
  },
  'based-on-loop': {
    why: 'Files that start from each other never end: nothing can be taken over from either.',
    mend: 'Break the ring: one file has to start from nothing.',
    example: { file: 'models/base/bolt-on.yaml', passes: 'units: mm\n', fails: 'units: mm\nbased-on: tarn\n' },
  },
  'id-is-not-file-name': {
    why: 'Cards, orders and releases go by the id; two names for one model get mixed up on a post.',
    mend: 'Call the model as its file is called.',
    example: { file: 'models/tarn.yaml', passes: 'model: tarn', fails: 'model: tern' },
  },
  'readings-unreadable': {
    severity: 'caution',
    why: 'Readings nobody can read say nothing about what the station holds.',
    mend: 'Mend the first line of the file, or the line named, and save it as CSV.',
    example: { file: 'models/readings/sizing.csv', passes: 'reading,unit', fails: 'measured,unit' },
  },
  'reading-unclear': {
    severity: 'caution',
    why: 'A reading that is not understood counts for nothing: the spread of the station is taken from the others alone.',
    mend: 'Write the cell as its column asks.',
    example: { file: 'models/readings/sizing.csv', passes: '16.43', fails: '16.4.3' },
  },
} as const satisfies Record<string, { severity?: Severity; why: string; mend: string; example?: Example }>;

export type MistakeId = keyof typeof mistakes;

export interface Mistake {
  readonly place: Place;
  readonly what: string;
  readonly mend: string;
  readonly notes?: readonly Note[];
  readonly about?: readonly string[];
  readonly cause?: string;
}

/** An error wherever a card could be wrong by it. */
const severityOf = (id: MistakeId): Severity => {
  const kind: { readonly severity?: Severity; readonly why: string } = mistakes[id];
  return kind.severity ?? 'error';
};

/** A finding of reading. */
export function mistake(id: MistakeId, { place, what, mend, notes = [], about = [], cause }: Mistake): Finding {
  const own = { id, severity: severityOf(id), place, what, why: mistakes[id].why, mend, notes, about };
  return cause === undefined ? own : { ...own, cause };
}

/** All of them, for the reference page. */
export const mistakeKinds: readonly Kind[] = Object.entries(mistakes).map(([id, kind]) => ({
  id,
  stage: 'spec',
  ...kind,
  severity: severityOf(id as MistakeId),
}));
