/** How sure a published value is: read in the text, computed again, only remembered, or in dispute between sources. */
export type Certainty = 'seen' | 'recomputed' | 'seen+recomputed' | 'memory' | 'memory+recomputed' | 'unverified';
