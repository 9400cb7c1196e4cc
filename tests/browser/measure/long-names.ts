/** Data with every name three times as long, as another plant may have them: `Neck pickup` → `Neck pickup Neck pickup Neck pickup`. */

/** A code stays: it is short wherever it is used. So does a sentence: it is no name. */
const stays = (text: string): boolean =>
  (/\d/.test(text) && !text.includes(' ')) || /[.;]/.test(text) || text.trim() === '';

export const longer = (text: string): string => (stays(text) ? text : `${text} ${text} ${text}`);

/** The same with every `{ kind: 'name', text }` in it longer. */
export function withLongNames<T>(data: T): T {
  return changed(data) as T;
}

function changed(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(changed);
  if (typeof data !== 'object' || data === null) return data;
  const made: Record<string, unknown> = Object.fromEntries(
    Object.entries(data).map(([key, value]) => [key, changed(value)]),
  );
  return made['kind'] === 'name' ? { ...made, text: longer(String(made['text'])) } : made;
}
