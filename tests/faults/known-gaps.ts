export const knownGaps: readonly { readonly reason: string; readonly ids: readonly string[] }[] = [];
