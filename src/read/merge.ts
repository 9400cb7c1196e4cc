/**
 * `based-on`: how a model takes over what another file says. The rules, also in README:
 *
 * - maps merge key by key, the model's own value before the base's;
 * - lists whose items all have an `id` merge item by item, by that id; any other list is replaced whole;
 * - `remove: [name, …]` in a map drops those keys of the base; `remove: yes` in an item with an id drops that item;
 * - every value keeps the place where it was written, so a trace leads to the line of the base.
 */
import type { Finding } from '../findings/finding.ts';
import { offer } from '../findings/nearest.ts';
import { mistake } from './mistakes.ts';
import type { Entry, ListNode, MapNode, Node } from './node.ts';
import { textAt } from './node.ts';

export function merge(base: Node, own: Node, findings: Finding[]): Node {
  if (base.kind === 'map' && own.kind === 'map') return mergeMaps(base, own, findings);
  if (base.kind === 'list' && own.kind === 'list' && hasIds(base) && hasIds(own)) return mergeById(base, own, findings);
  return own;
}

function mergeMaps(base: MapNode, own: MapNode, findings: Finding[]): MapNode {
  const entries = new Map<string, Entry>(base.entries);
  for (const name of removed(own)) {
    if (entries.delete(name.text)) continue;
    const known = base.entries.keys();
    findings.push(
      mistake('no-such-name', {
        place: name.place,
        what: `There is no "${name.text}" to remove: the file this one is based on does not have it.`,
        mend: offer(name.text, known),
      }),
    );
  }
  for (const [key, entry] of own.entries) {
    if (key === 'remove') continue;
    const under = entries.get(key);
    entries.set(key, under ? { key: entry.key, value: merge(under.value, entry.value, findings) } : entry);
  }
  return { kind: 'map', place: own.place, entries };
}

function removed(own: MapNode) {
  const list = own.entries.get('remove')?.value;
  return list?.kind === 'list' ? list.items.filter((item) => item.kind === 'scalar') : [];
}

const hasIds = (list: ListNode): boolean => list.items.every((item) => textAt(item, 'id') !== undefined);

function mergeById(base: ListNode, own: ListNode, findings: Finding[]): ListNode {
  const items = new Map(base.items.map((item) => [textAt(item, 'id')!, item]));
  for (const item of own.items) {
    const id = textAt(item, 'id')!;
    const under = items.get(id);
    if (textAt(item, 'remove') === 'yes') items.delete(id);
    else items.set(id, under ? merge(under, item, findings) : item);
  }
  return { kind: 'list', place: own.place, items: [...items.values()] };
}
