/** What a user names on a command line, opened as a side of a comparison; or a word to the user and an exit code. */
import { compileAll } from '../compile.ts';
import type { Checked, Compiled } from '../compile.ts';
import {
  kindOfFile,
  placeOfFile,
  sideInForce,
  sideOfCompile,
  stateOfRelease,
  withFile,
  withPlant,
} from '../comparing.ts';
import type { OpenedSide } from '../comparing.ts';
import { offer } from '../findings/nearest.ts';
import type { Host } from '../host/host.ts';
import { folderAndName } from '../host/paths.ts';
import { busy } from './busy.ts';
import type { Common, Io } from './io.ts';
import { EXIT } from './io.ts';
import { opened } from './opened.ts';
import type { Opened } from './opened.ts';

export interface Sides {
  readonly old: OpenedSide;
  readonly new: OpenedSide;
  /** The workspace: its plant's words, paper and languages are those of the notice. */
  readonly checked: Checked;
  readonly host: Host;
  readonly on: string;
}

/** Without a second name: that model, or all, as released against as its spec stands. */
export function openSides(
  first: string | undefined,
  second: string | undefined,
  options: Common,
  io: Io,
): Sides | number {
  const ledger = opened(options, io);
  if (!ledger) return EXIT.errors;
  const { host, on } = ledger;
  const own = busy(io, 'Checking', () => compileAll(host, on));
  const desk: Desk = { ledger, own, io };
  if (first === undefined && ledger.known.length === 0) {
    io.err('Nothing was released yet: name two states to compare.\n');
    return EXIT.usage;
  }
  const [from, to] = second === undefined ? inForceAnd(first, desk) : [first!, second];
  const [old, now] = [openSide(from, desk), openSide(to, desk)];
  if (typeof old === 'number') return old;
  if (typeof now === 'number') return now;
  return { old: only(old, first, second), new: only(now, first, second), checked: own.checked, host, on };
}

interface Desk {
  readonly ledger: Opened;
  readonly own: Compiled;
  readonly io: Io;
}

/** The release in force of a model and the model itself; of none, all of either. */
function inForceAnd(model: string | undefined, { ledger }: Desk): readonly [string, string] {
  if (model === undefined) return ['released', '.'];
  const of = ledger.known.findLast(({ released }) => released.model === model && released.standing.is === 'current');
  return [of ? `${model}@${of.released.revision}` : `${model}@`, model];
}

/** A catalogue held against one model is that model of it. */
function only(opened: OpenedSide, first: string | undefined, second: string | undefined): OpenedSide {
  const one = [first, second].find(
    (name) => name !== undefined && /^[a-z0-9-]+(?:@|$)/.test(name) && name !== 'released',
  );
  const id = one?.split('@')[0];
  const models = opened.side.models.filter((model) => model.id === id);
  const { plant: _, ...side } = opened.side;
  return models.length === 0 || opened.side.models.length === 1 ? opened : { ...opened, side: { ...side, models } };
}

function openSide(name: string, desk: Desk): OpenedSide | number {
  if (name === 'released') return sideInForce(desk.ledger);
  if (/\.ya?ml$/i.test(name)) return openFile(name, desk);
  if (name === '.')
    return sideOfCompile(
      name,
      desk.own,
      desk.own.models.map(({ id }) => id),
      true,
    );
  if (/[/\\]|^\.+$/.test(name)) return openFolder(name, desk);
  return name.includes('@') ? openRelease(name, desk) : openModel(name, desk);
}

function openModel(name: string, { own, io }: Desk): OpenedSide | number {
  const ids = own.models.map(({ id }) => id);
  if (ids.includes(name)) return sideOfCompile(name, own, [name], false);
  io.err(`There is no model "${name}". ${offer(name, ids)}\n`);
  return EXIT.usage;
}

function openRelease(name: string, { ledger, io }: Desk): OpenedSide | number {
  const all = ledger.known.map(({ record }) => ({ name: `${record.model}@${record.revision}`, record }));
  const found = all.find((one) => one.name === name);
  if (found) return { side: { name, models: [stateOfRelease(found.record)] }, errors: [] };
  if (name.endsWith('@'))
    io.err(`No release of ${name.slice(0, -1)} is in force: there is nothing to hold it against.\n`);
  else {
    const known = all.map((one) => one.name);
    io.err(`${name} was never released. ${offer(name, known)}\n`);
  }
  return EXIT.usage;
}

function openFile(name: string, { ledger, io }: Desk): OpenedSide | number {
  const { folder, name: base } = folderAndName(name);
  const bytes = io.host(folder).read(base);
  if (!bytes) {
    io.err(`There is no file ${name}.\n`);
    return EXIT.usage;
  }
  const kind = kindOfFile(bytes);
  const { host, on } = ledger;
  const compiled = busy(io, `Checking ${name}`, () => compileAll(withFile(host, base, bytes), on));
  const ids = kind === 'plant' ? compiled.models.map(({ id }) => id) : [kind.model];
  return sideOfCompile(name, compiled, ids, kind === 'plant', placeOfFile(base, kind));
}

/** A workspace of its own; or a folder with the files of a plant, under which this workspace's models are built. */
function openFolder(name: string, { ledger, io }: Desk): OpenedSide | number {
  const folder = io.host(name);
  const { host, on } = ledger;
  const files = folder.list('').filter((path) => /^[^/]+\.ya?ml$/.test(path));
  const workspace = folder.list('models').some((path) => path.endsWith('.yaml'));
  if (!workspace && files.length === 0) {
    io.err(`${name} holds neither a workspace (models/) nor the files of a plant.\n`);
    return EXIT.usage;
  }
  const plant = () => withPlant(host, new Map(files.map((path) => [path, folder.read(path)!])));
  const compiled = busy(io, `Checking ${name}`, () => compileAll(workspace ? folder : plant(), on));
  return sideOfCompile(
    name,
    compiled,
    compiled.models.map(({ id }) => id),
    true,
  );
}
