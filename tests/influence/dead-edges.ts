/** Edges of the graph that no value tried here shows to matter, each kind with why it is there all the same. */
export const deadEdges: readonly { readonly reason: string; readonly edges: readonly string[] }[] = [];
