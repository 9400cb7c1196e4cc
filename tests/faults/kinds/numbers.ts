/** Numbers: ten times too large or small, less than nothing, nothing, in the other unit, moved, with other limits. */
import { dotted } from '../entries.ts';
import type { Entry } from '../entries.ts';
import type { Fault } from '../fault.ts';
import { faultAt, planted, valued } from '../fault.ts';
import type { Size } from '../quantity.ts';
import { plain, sizeOf, withFirst } from '../quantity.ts';
import type { Sound } from '../sound.ts';
import { unsound } from '../trade.ts';
import { usesOf } from './removed.ts';

interface Slip {
  readonly kind: string;
  readonly text: string;
  /** Wrong whatever the number is for. */
  readonly always?: boolean;
}

export function numberFaults(sound: Sound, entries: readonly Entry[]): Fault[] {
  return entries
    .filter(({ schema, scalar }) => schema.quantity !== undefined && scalar !== undefined)
    .flatMap((entry) => slipsOf(entry).map((slip) => faultOf(sound, entry, slip)));
}

function slipsOf(entry: Entry): Slip[] {
  const text = entry.scalar!;
  const { quantity, positive, whole } = entry.schema;
  const length = quantity === 'length';
  const size = sizeOf(text, 'mm');
  const moves = size && /^\s*-?[\d.]*[1-9]/.test(text);
  const limits = /±|\.\.|\+.*\/-/.test(text);
  return [
    ...(moves ? [{ kind: '× 10', text: withFirst(text, (value) => plain(value * 10)) }] : []),
    ...(moves
      ? [
          {
            kind: '÷ 10',
            text: withFirst(text, (value) => plain(value / 10)),
            always: whole === true && !text.endsWith('0'),
          },
        ]
      : []),
    ...(moves
      ? [{ kind: 'negative', text: withFirst(text, (value) => plain(-value)), always: positive === true }]
      : []),
    ...(moves ? [{ kind: 'zero', text: withFirst(text, () => '0'), always: positive === true }] : []),
    ...(length && moves ? [{ kind: 'other unit of length', text: otherLength(text) }] : []),
    {
      kind: 'unit of another kind',
      text: `${bareText(text)} ${quantity === 'mass' ? 'mm' : 'kg'}`,
      always: quantity !== 'any' || READS_A_QUANTITY.test(dotted(entry)),
    },
    ...(limits ? [{ kind: 'limits removed', text: bareText(text), always: entry.schema.limits === 'needed' }] : []),
    ...(limits && size ? limitSlips(text, size) : []),
    ...(whole ? [{ kind: 'not whole', text: `${text}.5`, always: true }] : []),
    { kind: 'a word for a number', text: 'lots', always: true },
    ...(dotted(entry).endsWith('resolution')
      ? [{ kind: 'resolution × 20', text: withFirst(text, (value) => plain(value * 20)) }]
      : []),
  ];
}

/** The limits crossed; and the number moved by ten times its tolerance, up and down. */
function limitSlips(text: string, { low, high, nominal, unit }: Size): Slip[] {
  const by = unit === 'in' ? 25.4 : 1;
  const tolerance = ((high - low) / 2) * 10;
  const tail = /(mm|in|kPa|%|°C)$/.exec(text)?.[0] ?? '';
  const moved = (to: number): string => withFirst(text, () => plain(to / by));
  return [
    { kind: 'limits crossed', text: `${plain(high / by)}..${plain(low / by)} ${tail}`.trim(), always: true },
    { kind: 'moved up by ten tolerances', text: moved(nominal + tolerance) },
    { kind: 'moved down by ten tolerances', text: moved(nominal - tolerance) },
  ];
}

/** Bare or metric written as inches, inches as millimetres: the commonest slip of the pen. */
const otherLength = (text: string): string => {
  const bare = text.replace(/\s*(mm|in|")/g, '');
  return /in|"/.test(text) ? `${bare} mm` : `${bare} in`;
};

const bareText = (text: string): string => text.replace(/\s*(±|\.\.|\+).*$/, '').replace(/\s*[a-zA-Z%°"/²]+$/, '');

function faultOf(sound: Sound, entry: Entry, { kind, text, always }: Slip): Fault {
  const splices = valued(entry, /[:#%]|^-$/.test(text) && entry.flow ? `'${text}'` : text);
  const must = (): boolean => {
    if (entry.shadowed) return false;
    if (always) return true;
    if (implausible(entry, text, bareUnit(sound, entry))) return true;
    // No air is more than saturated, no board all water, and no more timber ends in blanks than was bought.
    if (entry.schema.quantity === 'fraction' && (sizeOf(text, '%')?.nominal ?? 0) > 100) return true;
    // One piece, or two halves.
    if (dotted(entry) === 'timber.cap.halves' && Number(text) > 2) return true;
    if (kind === 'resolution × 20') return READ_WITH_LIMITS.has(entry.path[1]!);
    return unsound(planted(sound.files, splices), sound.layers).length > 0;
  };
  const also = entry.of === 'plant' && entry.path.length > 2 ? usesOf(sound, entry.path[1]!, entry.path[0]!) : [];
  return faultAt(sound, entry, { kind, splices, must, also });
}

/**
 * Gauges of the sample whose step, made twenty times coarser, leaves fewer than four counts inside limits they read: the
 * caliper 0.2 mm on 16.40 ±0.10, the inch caliper 0.02 in on 17.20 ±0.15, the depth gauge 0.2 mm on 19.0 ±0.2, the
 * moisture meter 2 % on 8.5 ±1, the thermometer 2 °C on 21 ±1, the hygrometer 20 % on 45 ±3, the readout 2 MPa on 5.3 ±0.4.
 */
const READ_WITH_LIMITS = new Set([
  'caliper',
  'caliper-inch',
  'depth-gauge',
  'moisture-meter',
  'thermometer',
  'hygrometer',
  'press-readout',
]);

/** All gauges but one: go and no-go have no unit. */
const READS_A_QUANTITY = /^gauges\.(?!plug-set)/;

/** The unit bare lengths of the file are in: a base and the plant have their own. */
const bareUnit = (sound: Sound, { file }: Entry): string => /^units: (\w+)/m.exec(sound.files[file]!)?.[1] ?? 'mm';

/** Outside what the schema calls plausible, which is said in millimetres. */
function implausible({ schema }: Entry, text: string, bare: string): boolean {
  const [low, high] = (schema.plausible ?? '').split(' .. ').map((end) => Number.parseFloat(end));
  const size = sizeOf(text, bare);
  if (low === undefined || high === undefined || !size) return false;
  return size.nominal < low || size.nominal > high;
}
